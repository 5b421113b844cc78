package calc

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// open loads a page's link and wants no problem in it.
func open(t *testing.T, slug, fragment string) *Form {
	t.Helper()
	p, ok := PageOf(slug)
	require.True(t, ok)
	f := Load(p, fragment)
	require.Empty(t, f.Problems())
	return f
}

// out returns a figure's full value.
func out(t *testing.T, f *Form, id string) float64 {
	t.Helper()
	for _, figure := range allFigures(f.Report()) {
		if figure.ID == id {
			return figure.Value
		}
	}
	require.Fail(t, "no figure out-"+id)
	return 0
}

// part returns a part as text; empty if it is not there.
func part(f *Form, id string) string {
	for _, p := range f.Report().Parts {
		if p.ID == id {
			return Report{Parts: []Part{p}}.String()
		}
	}
	return ""
}

// Heron got another feeder: the numbers of the demo scenario, worked out by
// hand: 76.266.. mm fed of 80, so 538.0·80/76.266.. and 3200 over it.
func TestHeronFromEitherConvention(t *testing.T) {
	const test = "&asked=80&mark=105&rest=28.7,28.9,28.6&angle=1.8&micro=16&gears=pairs&driving=12&driven=54"
	for name, setting := range map[string]string{
		"steps per mm":           "steps=538.0",
		"travel per motor turn":  "as=turn&turn=5.947955390334573",
		"travel per output turn": "as=output&output=26.765799256505577",
	} {
		t.Run(name, func(t *testing.T) {
			f := open(t, "measure", "v=1&"+setting+test)
			assert.InEpsilon(t, 564.3356643, out(t, f, "steps"), 1e-9)
			assert.InEpsilon(t, 5.670384139, out(t, f, "turn"), 1e-9)
			assert.InEpsilon(t, 25.51672862, out(t, f, "output"), 1e-9)
			assert.InEpsilon(t, 8.1222270, out(t, f, "diameter"), 1e-7)
			assert.InEpsilon(t, 76.2666666667, out(t, f, "mean"), 1e-11)
			assert.InEpsilon(t, 0.152752523165, out(t, f, "spread"), 1e-11)
			assert.InEpsilon(t, -4.66666666667, out(t, f, "error"), 1e-11)
			for _, shown := range []string{"564.34 steps/mm", "5.6704 mm/rev", "25.517 mm/rev"} {
				assert.Contains(t, f.Report().String(), shown)
			}
		})
	}
}

func TestMeasureReadsCommaAndPoint(t *testing.T) {
	f := open(t, "measure", "v=1&steps=538.0&asked=80&mark=105")
	for row, text := range []string{"28,7", "28.9", "28,6 mm"} {
		f.Set("rest", row, text)
	}
	assert.Empty(t, f.Problems())
	assert.InEpsilon(t, 564.3356643, out(t, f, "steps"), 1e-9)
	assert.Contains(t, f.Fragment(), "rest=28.7,28.9,28.6%20mm")
	assert.Equal(t, "28,7", f.Text("rest", 0), "what was typed stays as it was typed")
}

func TestMeasureSaysWhatIsMissing(t *testing.T) {
	f := open(t, "measure", "")
	assert.Contains(t, part(f, "missing"), "steps, asked, mark, rest")
	f = open(t, "measure", "v=1&steps=538&asked=80&mark=105")
	assert.Contains(t, part(f, "missing"), "new setting: rest\n")
	f = open(t, "measure", "v=1&axis=rotary&as=turn&turndeg=4")
	assert.Contains(t, part(f, "missing"), "askeddeg, turned")
	f = open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7")
	assert.Contains(t, part(f, "conventions"), "travel per motor turn: angle, micro")
	assert.Contains(t, part(f, "conventions"), "travel per output turn: angle, micro, gears")
	f = open(t, "measure", "v=1&as=turn&turn=5.9&asked=80&mark=105&rest=28.7&angle=1.8&gears=pairs&driving=12")
	assert.Contains(t, part(f, "conventions"), "steps per mm: micro")
	assert.Contains(t, part(f, "conventions"), "output turn: driving, driven")
	f = open(t, "measure", "v=1&as=turn&turn=5.9&asked=80&mark=105&rest=28.7&gears=ratio")
	assert.Contains(t, part(f, "conventions"), "output turn: ratio")
}

func TestMeasureRemainingBeyondTheMark(t *testing.T) {
	p, _ := PageOf("measure")
	f := Load(p, "v=1&steps=538&asked=80&mark=105&rest=28.7,120")
	require.Len(t, f.Problems(), 1)
	says := f.ProblemAt("rest", 1)
	assert.Contains(t, says, "Remaining in run 2: “120 mm” is not less than the mark, 105 mm")
	assert.Nil(t, f.Report().Answer, "no answer from the other run alone")
	assert.Empty(t, part(f, "runs"))
	assert.NotEmpty(t, part(f, "how"), "what does not depend on it stays")
}

func TestMeasureDirections(t *testing.T) {
	says := func(moved string) string {
		f := open(t, "measure", "v=1&axis=travel&steps=80&asked=100&moved="+moved)
		return f.Report().Answer.Says.String()
	}
	assert.Contains(t, says("98"), "moved 98 mm where 100 mm was asked: 2 % too little")
	assert.Contains(t, says("101,102"), "1.5 % too much")
	assert.Contains(t, says("100"), "exactly right")
	f := open(t, "measure", "v=1&axis=rotary&stepsdeg=80&askeddeg=360&turned=358")
	assert.Contains(t, f.Report().Answer.Says.String(), "turned 358° where 360° was asked")
}

func TestMeasureDoubts(t *testing.T) {
	doubts := func(entries string) string { return part(open(t, "measure", "v=1&steps=538&"+entries), "runs") }
	assert.Contains(t, doubts("asked=80&mark=105&rest=28.7"), "at least three")
	assert.NotContains(t, doubts("asked=80&mark=105&rest=28.7,28.8"), "at least three")
	assert.Contains(t, doubts("asked=80&mark=105&rest=24,27"), "differ among themselves")
	assert.Contains(t, doubts("asked=80&mark=80&rest=3,3"), "run into the drive")
	assert.Contains(t, doubts("asked=80&mark=105&rest=65,65"), "more than a fifth off")
	assert.NotContains(t, doubts("asked=80&mark=105&rest=28.7,28.8"), "a fifth")
	assert.Contains(t, doubts("axis=travel&asked=80&moved=79,79"), "fixed offset")
}

func TestMeasureApply(t *testing.T) {
	f := open(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&line=M92%20E%7Bvalue%7D")
	apply := part(f, "apply")
	assert.Contains(t, apply, "The line: M92 E564.336\n")
	assert.Contains(t, apply, "To undo it: M92 E538\n")
	assert.Contains(t, apply, "until the controller restarts")
	assert.Contains(t, apply, "start-up script")
	f.Set("line", 0, "M92 E")
	assert.Contains(t, f.ProblemAt("line", 0), "has no {value}")
	assert.Empty(t, part(f, "apply"))
	assert.NotNil(t, f.Report().Answer, "the value does not depend on the line")
	f.Set("line", 0, "")
	assert.Contains(t, part(f, "apply"), "ready to send: line")

	f = open(t, "measure", "v=1&as=turn&turn=5.948&asked=80&mark=105&rest=28.7&entry=travel%20per%20turn:%20%7Bvalue%7D%20mm")
	assert.Contains(t, part(f, "apply"), "travel per turn: 5.67291 mm")
	assert.Contains(t, part(f, "apply"), "restart the controller")
	f.Set("entry", 0, "5.67")
	assert.Contains(t, f.ProblemAt("entry", 0), "has no {value}")
	f.Set("entry", 0, "")
	assert.Contains(t, part(f, "apply"), "ready to send: entry")
}

func TestMeasureNext(t *testing.T) {
	f := open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7&path=open")
	assert.InDelta(t, 25, out(t, f, "expect"), 1e-12)
	assert.Contains(t, part(f, "next"), "25 mm should remain")
	assert.Contains(t, part(f, "next"), "Put back the guard")
	f = open(t, "measure", "v=1&steps=538&asked=80&read=fed&fed=76")
	assert.InDelta(t, 80, out(t, f, "expect"), 1e-12)
	assert.NotContains(t, part(f, "next"), "Put back the guard", "a hot test leaves it in place")
	f = open(t, "measure", "v=1&steps=538&asked=80&marks=each&eachmark=105.1,104.9&rest=28.7,28.6")
	assert.InDelta(t, 80, out(t, f, "expect"), 1e-12)
	f = open(t, "measure", "v=1&axis=travel&steps=80&asked=80&moved=79")
	assert.NotContains(t, part(f, "next"), "retraction")
}

// Each way to make the test brings its own steps and cautions.
func TestMeasureHowTo(t *testing.T) {
	how := func(entries string) string { return part(open(t, "measure", "v=1&"+entries), "how") }
	hot := how("speed=90")
	assert.Contains(t, hot, "burn skin")
	assert.Contains(t, hot, "Feed speed: 1.5 mm/s")
	assert.Contains(t, hot, "counts in mm/min: 90 mm/min")
	assert.NotContains(t, hot, "That is fast")
	tube := how("path=open&drive=tube")
	assert.Contains(t, tube, "Bowden")
	assert.Contains(t, tube, "flush")
	assert.Contains(t, tube, "Feed cold only")
	assert.NotContains(t, tube, "burn skin")
	assert.Contains(t, how("path=open"), "open the way below the drive")
	assert.Contains(t, how("path=open&read=fed"), "measure the piece")
	assert.Contains(t, how("read=fed"), "went in")
	assert.Contains(t, how("speed=5mm/s"), "That is fast")
	assert.NotContains(t, how("path=open&speed=5mm/s"), "That is fast")
	assert.Contains(t, how("path=open&speed=15mm/s"), "That is fast")
	travel := how("axis=travel")
	assert.Contains(t, travel, "Z well away from the bed")
	assert.NotContains(t, travel, "filament")
	assert.Contains(t, how("axis=rotary"), "graduated disc")
	for _, all := range []string{hot, tube, travel} {
		assert.Contains(t, all, "instructions for your machine go first")
		assert.Contains(t, all, "hand near the stop")
		assert.Contains(t, all, "three runs at least")
	}
}

func TestMeasureFiftyRuns(t *testing.T) {
	f := open(t, "measure", "v=1&axis=travel&steps=80&asked=100&moved="+strings.TrimSuffix(strings.Repeat("99,", 50), ","))
	assert.InEpsilon(t, 80*100/99.0, out(t, f, "steps"), 1e-12)
	assert.InDelta(t, 99, out(t, f, "moved-50"), 1e-12)
	assert.Zero(t, out(t, f, "spread"))
	p, _ := PageOf("measure")
	g := Load(p, "v=1&axis=travel&steps=80&asked=100&moved="+strings.TrimSuffix(strings.Repeat("99,", 51), ","))
	require.Len(t, g.Problems(), 1)
	assert.Contains(t, g.Problems()[0].Says, "the link has 51 values, 50 are read")
}

func TestMeasureInInches(t *testing.T) {
	mm := open(t, "measure", "v=1&axis=travel&steps=80&asked=190.5&moved=190.1")
	in := open(t, "measure", "v=1&axis=travel&steps=2032%20steps/in&asked=7.5in&moved=190.1")
	assert.InEpsilon(t, out(t, mm, "steps"), out(t, in, "steps"), 1e-14)
	assert.Contains(t, in.Fragment(), "asked=7.5in", "it stays as typed")
}
