package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/plan"
	"striderule/calc/report"
)

const heating = "M104 S300 E{value}"

// offered are the texts of a report that can be copied, and brought the templates before
// those that cannot.
func offered(f *form.Form) (texts, brought []string) {
	for _, p := range f.Report().Parts {
		for _, b := range p.Blocks {
			switch b := b.(type) {
			case report.Brought:
				if b.State == report.Accepted {
					continue
				}
				for _, l := range b.All {
					brought = append(brought, l.Text)
				}
			case report.Code:
				if !b.Brought {
					texts = append(texts, b.Text)
				}
			}
		}
	}
	return texts, brought
}

func TestTemplateOfALinkIsNotOffered(t *testing.T) {
	f := calc.Load(calibrate.Page, heron+"&line="+link.Escape(heating))
	texts, brought := offered(f)
	assert.Empty(t, texts)
	assert.Equal(t, []string{heating}, brought)
	assert.Equal(t, []report.TemplateText{{Key: "line", Label: "Command for your controller", Text: heating}}, f.Brought())
	assert.Contains(t, f.Report().String(), "Came with the link, to be read before it is sent: Command for your controller: "+heating)

	f.Accept("line", "M92 E{value}")
	assert.Len(t, f.Brought(), 1, "another text was accepted")
	f.Accept("line", heating)
	texts, brought = offered(f)
	assert.Equal(t, []string{"M104 S300 E564.3", "M104 S300 E538"}, texts)
	assert.Empty(t, brought)
	assert.Empty(t, f.Brought())
	assert.Equal(t, []report.TemplateText{{Key: "line", Label: "Command for your controller", Text: heating}}, f.Own())

	f.Set("rest", 0, "28.6")
	texts, _ = offered(f)
	assert.Len(t, texts, 2, "it stays accepted while others are typed")
}

func TestSuggestedTemplateNeedsNoAccepting(t *testing.T) {
	f := calc.Load(calibrate.Page, calibrate.Page.Example)
	texts, brought := offered(f)
	assert.Equal(t, []string{"M92 E564.3", "M92 E538"}, texts)
	assert.Empty(t, brought)
	assert.Empty(t, f.Own(), "nor need it be kept")
}

func TestTypedTemplateIsOffered(t *testing.T) {
	f := calc.Load(calibrate.Page, heron)
	f.Set("line", 0, heating)
	texts, brought := offered(f)
	assert.Len(t, texts, 2)
	assert.Empty(t, brought)
	assert.Equal(t, []report.TemplateText{{Key: "line", Label: "Command for your controller", Text: heating}}, f.Own())
}

// Who changes a stranger's line has not read it for that: only one that is begun anew is
// the person's own.
func TestChangedTemplateOfALink(t *testing.T) {
	for typed, own := range map[string]bool{
		heating + " P1": false, "M104 S30 E{value}": false, "": true, " ": true, "M": true, "M92 E{value}": true,
	} {
		f := calc.Load(calibrate.Page, heron+"&line="+link.Escape(heating))
		f.Set("line", 0, typed)
		f.Set("line", 0, "M851 E{value}")
		texts, brought := offered(f)
		assert.Equal(t, own, len(texts) == 2, "%q", typed)
		assert.Equal(t, own, len(brought) == 0, "%q", typed)
	}
}

// An undo in the field brings back what was typed over.
func TestTemplateThatAnUndoBringsBack(t *testing.T) {
	f := calc.Load(calibrate.Page, heron+"&line="+link.Escape(heating))
	f.Set("line", 0, "")
	f.Set("line", 0, heating)
	assert.Len(t, f.Brought(), 1)
	f.Set("line", 0, "M92 E{value}")
	f.Set("line", 0, heating+" P1")
	assert.Len(t, f.Brought(), 1)
	f.Accept("line", heating+" P1")
	f.Set("line", 0, "")
	f.Set("line", 0, heating+" P1")
	assert.Empty(t, f.Brought(), "accepted before")
}

func TestTemplateThatAChoiceBringsBack(t *testing.T) {
	f := calc.Load(calibrate.Page, heron+"&linetravel="+link.Escape(strings.ReplaceAll(heating, "E", "X")))
	f.Set("axis", 0, "travel")
	for row, moved := range []string{"79.5", "79.4", "79.45"} { // there is a line only where something is to be set
		f.Set("moved", row, moved)
	}
	texts, brought := offered(f)
	assert.Empty(t, texts)
	assert.Equal(t, []string{"M104 S300 X{value}"}, brought)
}

func TestTemplateThatIsPutRight(t *testing.T) {
	f := calc.Load(calibrate.Page, heron+"&line="+link.Escape("M104 S300\u202e M92 E{value}"))
	require.Contains(t, f.ProblemAt("line", 0), "“M104 S300‹U+202E› M92 E{value}” isn't all printable ASCII")
	texts, brought := offered(f)
	assert.Empty(t, texts)
	assert.Empty(t, brought, "what is made of it is withheld")
	f.Set("line", 0, "M104 S300 M92 E{value}")
	texts, brought = offered(f)
	assert.Empty(t, texts)
	assert.Len(t, brought, 1)
}

func TestMovesOfALink(t *testing.T) {
	f := calc.Load(plan.Page, plan.Page.Example+"&begin=M302%20P1&stop=M0&finish=M500%20P2")
	texts, brought := offered(f)
	assert.Empty(t, texts)
	assert.Equal(t, []string{"M302 P1", "M500 P2"}, brought, "M0 is a suggestion")
	f.Accept("finish", "M302 P1")
	assert.Len(t, f.Brought(), 2, "accepted for another field")
	f.Accept("begin", "M302 P1")
	texts, brought = offered(f)
	assert.Empty(t, texts, "each line is accepted by itself")
	assert.Equal(t, []string{"M500 P2"}, brought)
	f.Accept("finish", "M500 P2")
	texts, _ = offered(f)
	assert.Len(t, texts, 1)
}

// What was accepted can be told, and taken back.
func TestAcceptingIsTakenBack(t *testing.T) {
	f := calc.Load(calibrate.Page, heron+"&line="+link.Escape(heating))
	f.Accept("line", heating)
	assert.Contains(t, f.Report().String(), "Came with the link, and was accepted: Command for your controller: "+heating)
	f.Set("rest", 0, "28.6")
	assert.Contains(t, f.Report().String(), "and was accepted")
	f.TakeBack("line")
	texts, brought := offered(f)
	assert.Empty(t, texts)
	assert.Equal(t, []string{heating}, brought)
	assert.NotContains(t, f.Report().String(), "and was accepted")
	f.TakeBack("line")
	f.Set("line", 0, "M92 E{value}")
	f.TakeBack("line")
	texts, _ = offered(f)
	assert.Len(t, texts, 2, "there is nothing to take back")

	f = calctest.Load(t, "measure", heron)
	f.Set("line", 0, heating)
	assert.NotContains(t, f.Report().String(), "and was accepted", "it was typed")
	f.TakeBack("line")
	texts, _ = offered(f)
	assert.Len(t, texts, 2)
}

// Signs that hide a text, turn it round or break the line, and look-alikes.
func TestTemplatesArePrintableASCII(t *testing.T) {
	for _, odd := range []string{"\u202e", "\u200b", "\u00ad", "\ufeff", "\U000e0041", "М", "é", "\u00a0", "\ufffd"} {
		f := calc.Load(plan.Page, plan.Page.Example+"&stop="+link.Escape("M0 ; wait"+odd+"G1 Z-20"))
		assert.Contains(t, f.ProblemAt("stop", 0), "printable ASCII", "%U", []rune(odd))
		f = calc.NewForm(plan.Page)
		f.Set("stop", 0, "M0"+odd+"G28")
		assert.Contains(t, f.ProblemAt("stop", 0), "printable ASCII", "typed: %U", []rune(odd))
	}
	for _, breaks := range []string{"\n", "\r", "\u0085", "\u2028", "\u2029", "\v", "\f", "\x00"} {
		f := calc.NewForm(plan.Page)
		f.Set("stop", 0, "M0"+breaks+"G28")
		assert.Equal(t, "M0 G28", f.Text("stop", 0), "%q", breaks)
		f = calc.Load(plan.Page, plan.Page.Example+"&stop="+link.Escape("M0"+breaks+"G28"))
		assert.Regexp(t, `^M0 ?G28$`, f.Text("stop", 0), "%q", breaks)
		for _, p := range f.Report().Parts {
			for _, b := range p.Blocks {
				if code, ok := b.(report.Code); ok {
					assert.NotRegexp(t, `(?m)^G28`, code.Text)
				}
			}
		}
	}
}

// Whatever a link holds, nothing made of its templates is offered before it is accepted.
func TestNoTemplateOfALinkIsOffered(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.OneOf(rapid.String(), rapid.StringMatching(`[ -~]{1,60}`)).Draw(t, "text")
		f := calc.Load(plan.Page, plan.Page.Example+"&"+rapid.SampledFrom([]string{"begin", "move", "stop", "finish"}).Draw(t, "key")+"="+link.Escape(text+"{length}"))
		texts, brought := offered(f)
		if len(brought) > 0 {
			assert.Empty(t, texts)
		}
		for _, text := range texts {
			assert.NotContains(t, text, "{length}")
		}
	})
}
