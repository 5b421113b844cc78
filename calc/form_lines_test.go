package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/plan"
	"striderule/calc/report"
)

// codes are the texts of a report that are marked as to be sent, also those that are not
// offered yet.
func codesOf(f *form.Form) (all []string) {
	for _, p := range f.Report().Parts {
		for _, b := range p.Blocks {
			if code, ok := b.(report.Code); ok {
				all = append(all, code.Text)
			}
		}
	}
	return all
}

// A line that came with a link holds one command, of signs that show what they do.
func TestLineThatALinkMayNotBring(t *testing.T) {
	for line, why := range map[string]string{
		"M104 S300 M92 E{value}":    "holds more than one command: M104, M92",
		"m92 E{value} m104 S300":    "holds more than one command: m92, m104",
		"M92E{value}M104S300":       "holds more than one command: M92, M104",
		"M92 E{value} M 104 S300":   "holds more than one command: M92, M 104",
		"M92 E{value} M{value}":     "has {value} twice",
		"T1 M92 E{value}":           "holds more than one command: T1, M92",
		"M92 E{value} $H":           "holds more than one command: M92, $H",
		"M104 S300 ; M92 E{value}":  "holds “;”",
		"M92 E{value} (slow)":       "holds “(”",
		"M92 E{value} # x":          "holds “#”",
		"M92 E{value}*71":           "holds “*”",
		"!M92 E{value}":             "holds “!”",
		"M92 E{value} {length}":     "holds “{”",
		"M92 E{value} X{value}":     "has {value} twice",
		"M92 E{value}0":             "beside {value}",
		"M92 E{value}.5":            "beside {value}",
		"M92 E{value}e3":            "beside {value}",
		"M92 E5{value}":             "beside {value}",
		"M92 E-{value}":             "beside {value}",
		"M92 E- {value}":            "beside {value}",
		"M92 E0.{value}":            "beside {value}",
		"M92 E{value} 5":            "beside {value}",
		"M92 E{value}\\nM104 S300":  "holds “\\”",
		"M92 E{value} && M104 S300": "holds “&”",
	} {
		f := calc.Load(calibrate.Page, heron+"&line="+link.Escape(line))
		assert.Empty(t, codesOf(f), "%s: nothing is made of it", line)
		apply := calctest.Part(f, "apply")
		assert.Contains(t, apply, "Came with the link, not to be accepted: Command for your controller: "+line)
		assert.Contains(t, apply, why)
		assert.Contains(t, calctest.Part(f, "persist"), "Set the new one: 564.3", "the rest is there: "+line)

		// Typed here, the same line is doubted at most.
		f = calctest.Load(t, "measure", heron)
		f.Set("line", 0, line)
		assert.Len(t, codesOf(f), 2, line)
		if strings.Contains(why, "more than one") || strings.Contains(why, "beside") {
			assert.Contains(t, calctest.Part(f, "apply"), "Check: “"+line+"”", line)
			assert.Contains(t, calctest.Part(f, "apply"), why)
		}
	}
}

func TestLineThatALinkMayBring(t *testing.T) {
	for _, line := range []string{"M92 E{value}", "M92 T1 E{value} P2", "$100={value}", "name = {value}", "\"e\": {value},", "set_steps axis=E value={value}", "N10 M92 E {value}"} {
		f := calc.Load(calibrate.Page, heron+"&line="+link.Escape(line))
		assert.Len(t, codesOf(f), 2, line)
		assert.NotContains(t, calctest.Part(f, "apply"), "Check: ", line)
	}
}

// What is typed here is only doubted; what is right is not.
func TestOwnLineIsDoubted(t *testing.T) {
	for _, c := range []struct{ slug, sheet, key, line, why string }{
		{"measure", heron, "line", "M500 ; M92 E{value}", "has {value} only behind the “;”"},
		{"measure", heron, "line", "M92 E{value}93", "beside {value}"},
		{"measure", heron, "line", "M92 X{value}", "names the axis X"},
		{"measure", heron, "line", "M92 X80 E{value}", "names the axis X"},
		{"measure", heron, "line", "M92 E{value} ; steps of 2026", ""},
		{"measure", heron, "line", "M92 e{value}", ""},
		{"measure", "v=1&axis=travel&steps=80&asked=100&moved=99.1,99.2,99.1", "linetravel", "M92 E{value}", "names the axis E"},
		{"measure", "v=1&axis=travel&steps=80&asked=100&moved=99.1,99.2,99.1", "linetravel", "M92 X{value} Y{value}", ""},
		{"measure", "v=1&axis=rotary&stepsdeg=10&askeddeg=360&turned=350,350.1,349.9", "linerotary", "M92 X{value}", "names the axis X"},
		{"measure", "v=1&axis=rotary&stepsdeg=10&askeddeg=360&turned=350,350.1,349.9", "linerotary", "M92 C{value}", ""},
		{"measure", "v=1&as=turn&turn=5.948&asked=80&mark=105&rest=28.7,28.9,28.6", "entry", "e: {value} x: 5", ""},
		{"plan", plan.Page.Example, "move", "G1 {axis}{length} F6000", "has no {speed}"},
		{"plan", plan.Page.Example, "move", "G1 X{length} F{speed}", "names the axis X"},
		{"plan", plan.Page.Example, "move", "G1 {axis}{length} Z-20 F{speed}", "names the axis Z"},
		{"plan", plan.Page.Example, "move", "G1 {axis}{length}0 F{speed}", "beside {length}"},
		{"plan", plan.Page.Example, "move", "G1 {axis}{length} F{speed}0", "beside {speed}"},
		{"plan", plan.Page.Example, "move", "G1 {axis}{length}{speed}", "beside {length}"},
		{"plan", plan.Page.Example, "move", "G1 E{length} F{speed}", ""},
		{"plan", plan.Page.Example, "stop", "M0 G28", "more than one command: M0, G28"},
		{"plan", plan.Page.Example, "stop", "G4 S45", ""},
		{"plan", plan.Page.Example, "begin", "M83 ; G28", ""},
	} {
		f := calctest.Load(t, c.slug, c.sheet)
		f.Set(c.key, 0, c.line)
		require.Empty(t, f.ProblemAt(c.key, 0), c.line)
		text := calctest.Part(f, "apply") + calctest.Part(f, "moves")
		if c.why == "" {
			assert.NotContains(t, text, "Check: “"+c.line, c.line)
			continue
		}
		assert.Contains(t, text, "Check: “"+c.line+"”", c.line)
		assert.Contains(t, text, c.why, c.line)
		assert.NotEmpty(t, codesOf(f), "%s: it is offered", c.line)
	}
}

// Of a move that came with a link the same is doubted before it is accepted.
func TestMoveOfALinkIsDoubted(t *testing.T) {
	f := calctest.Load(t, "plan", plan.Page.Example+"&move="+link.Escape("G1 X{length} F6000"))
	moves := calctest.Part(f, "moves")
	assert.Contains(t, moves, "Came with the link, to be read before it is sent: Line for a move: G1 X{length} F6000")
	assert.Contains(t, moves, "has no {speed}")
	assert.Contains(t, moves, "names the axis X")
}

// What the page writes by itself needs no accepting where it is typed, either: for that axis.
func TestBuiltinLinesNeedNoAccepting(t *testing.T) {
	builtin := "&begin=M83&move=" + link.Escape("G1 {axis}{length} F{speed}") + "&stop=M0&finish=M82"
	blank, typed := calctest.Load(t, "plan", plan.Page.Example), calctest.Load(t, "plan", plan.Page.Example+builtin)
	assert.Equal(t, calctest.Part(blank, "moves"), calctest.Part(typed, "moves"))
	texts, brought := offered(typed)
	assert.Len(t, texts, 1)
	assert.Empty(t, brought)

	linear := "v=1&axis=travel&letter=x&from=0&to=200&tool=caliper-0.05"
	texts, _ = offered(calctest.Load(t, "plan", linear+"&begin=G91&finish=G90"))
	require.Len(t, texts, 1)
	_, brought = offered(calctest.Load(t, "plan", linear+"&begin=M83"))
	assert.Equal(t, []string{"M83"}, brought, "it is none for a linear axis: its moves would be absolute")
}

// The page does not say what a line does that is not its own.
func TestRemarksBehindCustomLines(t *testing.T) {
	f := calctest.Load(t, "plan", plan.Page.Example)
	own := codesOf(f)[0]
	assert.Contains(t, own, "M83 ; moves are relative from here on\n")
	assert.NotContains(t, own, "custom")
	f.Set("begin", 0, "M302 P1")
	f.Set("move", 0, "FEED {length} AT {speed}")
	f.Set("stop", 0, "WAIT")
	f.Set("finish", 0, "M500")
	text := codesOf(f)[0]
	assert.Contains(t, text, "\nM302 P1 ; custom line before the first move\n")
	assert.Contains(t, text, " ; custom line: run 1 of ")
	assert.Contains(t, text, "\nWAIT ; custom line: mark the filament at ")
	assert.True(t, strings.HasSuffix(text, "\nM500 ; custom line after the last move"), text)
	for _, line := range strings.Split(text, "\n") {
		assert.True(t, strings.HasPrefix(line, "; ") || strings.Contains(line, " ; custom line"), line)
	}
}

// The old number in a line of several commands undoes no more than the setting.
func TestUndoOfALineOfSeveralCommands(t *testing.T) {
	f := calctest.Load(t, "measure", heron)
	f.Set("line", 0, "M92 E{value}")
	assert.Contains(t, calctest.Part(f, "apply"), "To undo it: M92 E538")
	f.Set("line", 0, "M302 P1 M92 E{value}")
	assert.NotContains(t, calctest.Part(f, "apply"), "To undo it")
	assert.Contains(t, calctest.Part(f, "apply"), "The same line with the old number: M302 P1 M92 E538")
}

// What nobody here has accepted is in no post of somebody here.
func TestPostsLeaveOutWhatNobodyAccepted(t *testing.T) {
	f := calctest.Load(t, "measure", heron+"&line="+link.Escape("M851 E{value}"))
	assert.NotContains(t, form.Post(f, form.PlainPost, "x"), "M851")
	f.Accept("line", "M851 E{value}")
	assert.Contains(t, form.Post(f, form.PlainPost, "x"), "Command for your controller: M851 E{value}")
}

// The page's own lines are what it takes from a link, too.
func TestSuggestedLinesAreNotDoubted(t *testing.T) {
	n := 0
	for _, p := range calc.Pages {
		for _, field := range p.New().Fields() {
			line, ok := field.Template()
			if !ok {
				continue
			}
			for _, text := range field.Suggest {
				n++
				require.NoError(t, line.Set(text))
				says, refused := line.Doubts("", true)
				assert.Empty(t, says)
				assert.False(t, refused)
			}
		}
	}
	assert.Equal(t, 10, n)
}
