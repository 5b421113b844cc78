package calc_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/plan"
	"striderule/calc/report"
)

// aCommand is a word that a controller may take for a command, however it is written.
var aCommand = regexp.MustCompile(`(?i)[GM] *[0-9]+|^ *T *[0-9]+|\$`)

// Signs that do not show, and those that part, hide or work out something.
var (
	odd   = regexp.MustCompile(`[^ -~]`)
	hides = regexp.MustCompile(`[()#\\*/%!?@&|<>~^\x60{}\[\]]`)
)

// checkLines requires that each line of a text to be sent holds one command and nothing that
// hides another.
func checkLines(t require.TestingT, code report.Code) {
	if code.File == "" {
		require.NotContains(t, code.Text, "\n")
	}
	for _, line := range strings.Split(code.Text, "\n") {
		require.NotRegexp(t, odd, line)
		command, remark, _ := strings.Cut(line, ";")
		require.LessOrEqual(t, len(aCommand.FindAllString(command, -1)), 1, "%q", line)
		require.NotRegexp(t, hides, command, "%q", line)
		require.NotContains(t, remark, "{")
	}
}

// Whatever a link holds, no text marked as to be sent holds a second command, a line break or
// an invisible character: neither as it comes nor after accepting all that can be accepted.
func FuzzLines(f *testing.F) {
	for _, key := range []string{"line", "linetravel", "linerotary", "entry", "begin", "move", "stop", "finish"} {
		for _, line := range []string{"M92 E{value}", "M104 S300", "G1 {axis}{length} F{speed}", "M0\nG28", "M0\u2028G28", "M92\u200b X{value}0", "M5 ; {value}", "T1 {length}M3", "m 3 (x) $H", "name = {value}", "G{length}", "G4 S60"} {
			f.Add(key, line, "")
			f.Add(key, line, "&axis=travel&as=turn&begin=M83&finish=")
		}
	}
	f.Add("line", "80", "&line=M104")
	f.Add("asked", "80", "&line=M104%0AM3&linetravel=x")
	f.Fuzz(func(t *testing.T, key, line, more string) {
		with := "&" + link.Escape(key) + "=" + link.Escape(line) + more
		var sheet *form.Form
		if slices.Contains([]string{"begin", "move", "stop", "finish", "single", "speed"}, key) {
			sheet = calc.Load(plan.Page, "v=1&tool=caliper-0.05&asked=50&runs=2"+with)
		} else {
			sheet = calc.Load(calibrate.Page, "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9"+with)
		}
		var asked []report.TemplateText
		for round := range 2 { // as it came, and accepted
			for _, p := range sheet.Report().Parts {
				for _, b := range p.Blocks {
					if code, ok := b.(report.Code); ok {
						checkLines(t, code)
						require.False(t, code.Brought && round > 0, "accepted, and still not offered")
					}
					if b, ok := b.(report.Brought); ok && b.State == report.ToAccept {
						asked = append(asked, b.All...)
					}
				}
			}
			if len(asked) == 0 {
				break
			}
			for _, l := range asked {
				sheet.Accept(l.Key, l.Text)
			}
		}
	})
}
