package calibrate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/report"
)

// Heron got a new extruder: the numbers of the demo scenario, worked out by
// hand: 76.266.. mm fed of 80, so 538.0·80/76.266.. and 3200 over it. The ± is of √((4.3027·s/√3)² + R²),
// s 0.15275 mm, R 0.05630 mm of two steps of 0.05 mm and a caliper good to ± 0.05 mm, of which 76.27/105 acts.
func TestHeronFromEitherConvention(t *testing.T) {
	const test = "&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&angle=1.8&micro=16&gears=pairs&driving=12&driven=54"
	for name, setting := range map[string]string{
		"steps per mm":           "steps=538.0",
		"travel per motor turn":  "as=turn&turn=5.947955390334573",
		"travel per output turn": "as=output&output=26.765799256505577",
	} {
		t.Run(name, func(t *testing.T) {
			f := calctest.Open(t, "measure", "v=1&"+setting+test)
			assert.InEpsilon(t, 564.3356643, calctest.Out(t, f, "steps"), 1e-9)
			assert.InEpsilon(t, 5.670384139, calctest.Out(t, f, "turn"), 1e-9)
			assert.InEpsilon(t, 25.51672862, calctest.Out(t, f, "output"), 1e-9)
			assert.InEpsilon(t, 8.1222270, calctest.Out(t, f, "diameter"), 1e-7)
			assert.InEpsilon(t, 76.2666666667, calctest.Out(t, f, "mean"), 1e-11)
			assert.InEpsilon(t, 0.152752523165, calctest.Out(t, f, "spread"), 1e-11)
			assert.InEpsilon(t, -4.66666666667, calctest.Out(t, f, "error"), 1e-11)
			for _, shown := range []string{"564.3 ± 2.8 steps/mm", "5.670 ± 0.029 mm/rev", "25.52 ± 0.13 mm/rev", "−4.67 ± 0.48%", "4.19 to 5.15% too little (95% confidence)"} {
				assert.Contains(t, f.Report().String(), shown)
			}
		})
	}
}

func TestMeasureReadsCommaAndPoint(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538.0&asked=80&mark=105")
	for row, text := range []string{"28,7", "28.9", "28,6 mm"} {
		f.Set("rest", row, text)
	}
	assert.Empty(t, f.Problems())
	assert.InEpsilon(t, 564.3356643, calctest.Out(t, f, "steps"), 1e-9)
	assert.Contains(t, f.Fragment(), "rest=28.7,28.9,28.6%20mm")
	assert.Equal(t, "28,7", f.Text("rest", 0), "what was typed stays as it was typed")
}

func TestMeasureSaysWhatIsMissing(t *testing.T) {
	f := calctest.Open(t, "measure", "")
	assert.Contains(t, calctest.Part(f, "missing"), "steps, asked, mark, rest")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105")
	assert.Contains(t, calctest.Part(f, "missing"), "new setting: rest\n")
	f = calctest.Open(t, "measure", "v=1&axis=rotary&as=turn&turndeg=4")
	assert.Contains(t, calctest.Part(f, "missing"), "askeddeg, turned")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7")
	assert.Contains(t, calctest.Part(f, "conventions"), "travel per motor turn: angle, micro")
	assert.Contains(t, calctest.Part(f, "conventions"), "travel per output turn: angle, micro, gears")
	f = calctest.Open(t, "measure", "v=1&as=turn&turn=5.9&asked=80&mark=105&rest=28.7&angle=1.8&gears=pairs&driving=12")
	assert.Contains(t, calctest.Part(f, "conventions"), "steps per mm: micro")
	assert.Contains(t, calctest.Part(f, "conventions"), "output turn: driving, driven")
	f = calctest.Open(t, "measure", "v=1&as=turn&turn=5.9&asked=80&mark=105&rest=28.7&gears=ratio")
	assert.Contains(t, calctest.Part(f, "conventions"), "output turn: ratio")
}

func TestMeasureRemainingBeyondTheMark(t *testing.T) {
	p, _ := calc.PageOf("measure")
	f := calc.Load(p, "v=1&steps=538&asked=80&mark=105&rest=28.7,120")
	require.Len(t, f.Problems(), 1)
	says := f.ProblemAt("rest", 1)
	assert.Contains(t, says, "Remaining in run 2: “120 mm” isn't less than the mark, 105 mm")
	assert.Nil(t, f.Report().Answer, "no answer from the other run alone")
	assert.Empty(t, calctest.Part(f, "runs"))
	assert.NotEmpty(t, calctest.Part(f, "how"), "what does not depend on it stays")
}

func TestMeasureDoubts(t *testing.T) {
	doubts := func(entries string) string {
		return calctest.Part(calctest.Open(t, "measure", "v=1&steps=538&"+entries), "runs")
	}
	assert.Contains(t, doubts("asked=80&mark=105&rest=28.7"), "make at least three")
	assert.Contains(t, doubts("asked=80&mark=105&rest=28.7,28.8"), "Two runs give only a rough idea of the scatter")
	assert.Contains(t, doubts("asked=80&mark=105&rest=28.7,28.8,28.7"), "Choose your measuring tool")
	assert.NotContains(t, doubts("asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.8,28.7"), "Choose your measuring tool")
	grave := func(entries string) string {
		s := ""
		for _, n := range calctest.Open(t, "measure", "v=1&steps=538&"+entries).Report().Answer.Notes {
			s += n.Line.String() + "\n"
		}
		return s
	}
	assert.Contains(t, grave("asked=80&mark=80&rest=3,3"), "go into the extruder")
	assert.Contains(t, grave("asked=80&mark=105&rest=65,65"), "more than 20% off")
	assert.Empty(t, grave("asked=80&mark=105&rest=28.7,28.8"))
	assert.Contains(t, doubts("axis=travel&asked=80&moved=79,79,79"), "fixed offset")
	assert.Contains(t, grave("axis=travel&asked=80&tool=rule&moved=79,79,79"), "below your tool's resolution")
	assert.Contains(t, grave("asked=80&mark=105&rest=25,25,25&tool=caliper-0.05"), "Hand-made marks are rarely that consistent")
	assert.NotContains(t, doubts("asked=80&mark=105&rest=25,25,25&tool=caliper-0.05"), "below your tool's resolution", "once is enough")
}

func TestMeasureOutlierIsPointedOutAndStays(t *testing.T) {
	const fed = "v=1&steps=538&asked=80&read=fed&tool=caliper-0.05&fed=76.3,76.2,76.4,76.3,71.3,76.2"
	f := calctest.Open(t, "measure", fed)
	assert.Contains(t, f.Report().String(), "Run 5 is an outlier")
	all := calctest.Out(t, f, "mean")
	f.Set("aside", 4, "yes")
	assert.Contains(t, f.Fragment(), "&aside=,,,,yes")
	assert.InDelta(t, 76.28, calctest.Out(t, f, "mean"), 1e-9)
	assert.Less(t, all, 75.5, "it counted until the person left it out")
	assert.Contains(t, calctest.Part(f, "runs"), "5, left out | 71.3", "and it stays on view")
	assert.NotContains(t, f.Report().String(), "outlier")
	again := calctest.Open(t, "measure", f.Fragment())
	assert.Equal(t, f.Report(), again.Report())
}

func TestMeasureOneStepIsNoOutlier(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&tool=caliper-0.1&fed=76.3,76.3,76.3,76.3,76.3,76.4")
	assert.NotContains(t, f.Report().String(), "outlier")
}

func TestMeasureRatioReading(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&tool=caliper-0.05&fed=40.1,40,40.1")
	assert.Contains(t, calctest.Part(f, "ratio"), "A 0.9° motor is configured as 1.8°. Check the step angle")
	assert.Contains(t, calctest.Part(f, "ratio"), "explanations fit")
	assert.Equal(t, "Look for a mistake first", calctest.Verdict(f).Title)
	assert.Contains(t, calctest.Part(f, "persist"), "Set the new one: 1076 steps/mm")
	double := calctest.Open(t, "measure", "v=1&as=turn&turn=5.948&asked=80&read=fed&tool=caliper-0.05&fed=40.1,40,40.1")
	assert.Contains(t, calctest.Part(double, "apply"), "If there is no mistake", "the full steps are an entry of their own there")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&tool=caliper-0.05&fed=17.8,17.8,17.7&gears=pairs&driving=12&driven=54")
	assert.Contains(t, calctest.Part(f, "ratio"), "The gear pair 12 → 54 teeth is left out")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&tool=caliper-0.05&fed=30.2,30.1,30.2&counted=volume")
	assert.Contains(t, calctest.Part(f, "ratio"), "2.85 mm, but you're using 1.75 mm")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&tool=caliper-0.05&fed=76.3,76.1,76.4")
	assert.Empty(t, calctest.Part(f, "ratio"))
	f = calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=80&askeddeg=360&turned=180,180.1,180")
	assert.Contains(t, calctest.Part(f, "ratio"), "0.9° motor")
	// 2 mm taken for 2.032 mm: a belt's pitch, which only a travel axis has.
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&asked=360&moved=354.33,354.34,354.33")
	assert.Contains(t, calctest.Part(f, "ratio"), "belt")
	f = calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=80&askeddeg=360&turned=354.33,354.34,354.33")
	assert.NotContains(t, calctest.Part(f, "ratio"), "belt")
}

func TestMeasureSlip(t *testing.T) {
	// 0.2 % more is lost with each mm/s; at no speed 0.4 % are missing.
	f := calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&tool=caliper-0.02&at=1mm/s,1mm/s,3mm/s,3mm/s,6mm/s,6mm/s&fed=99.42,99.38,99.03,98.98,98.42,98.38")
	assert.InDelta(t, -0.2, calctest.Out(t, f, "slope"), 0.01)
	assert.InDelta(t, 415/0.996, calctest.Out(t, f, "steps"), 0.3)
	assert.Contains(t, calctest.Part(f, "speeds"), "that's slip.")
	assert.Contains(t, calctest.Part(f, "speeds"), "Don't correct slip with steps/mm")
	assert.InDelta(t, (0.5-0.4)/0.2, calctest.Out(t, f, "holds"), 0.1, "with the setting left as it is")
	assert.Equal(t, "Measure more – and there is slip", calctest.Verdict(f).Title, "0.4 % is within 0.5 %, the 0.6 % of the slowest runs are not")
	assert.Contains(t, calctest.Part(f, "next"), "Feed no faster than 0.51 mm/s (31 mm/min)")
	assert.Contains(t, calctest.Part(f, "next"), "To cure slip")
	// With 0.05 % for each mm/s, and 0.1 % at no speed, all of the interval is within 0.5 %.
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&tool=caliper-0.02&at=1mm/s,1mm/s,3mm/s,3mm/s,6mm/s,6mm/s&fed=99.86,99.84,99.76,99.74,99.61,99.59")
	assert.Equal(t, "Leave it – but there is slip", calctest.Verdict(f).Title)
	assert.InDelta(t, (0.5-0.1)/0.05, calctest.Out(t, f, "holds"), 1e-6)
	// Where more is missing at any speed than is acceptable, no speed holds the setting.
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&tool=caliper-0.02&at=1mm/s,1mm/s,3mm/s,3mm/s,6mm/s,6mm/s&fed=99.36,99.24,98.97,98.83,98.36,98.24")
	assert.Equal(t, "Measure more – and there is slip", calctest.Verdict(f).Title)
	assert.Zero(t, calctest.Out(t, f, "holds"))
	assert.NotContains(t, calctest.Part(f, "next"), "Feed no faster")

	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,60,180,180,180,300,300,300&fed=99.42,99.38,99.40,99.41,99.38,99.40,97.1,97.0,97.05")
	assert.Contains(t, calctest.Part(f, "speeds"), "then slips")
	// The means at 1 and 3 mm/s are 99.4 and 99.39667 mm: half of their distance farther back 99.40167.
	assert.InEpsilon(t, 415*100/99.4016666667, calctest.Out(t, f, "steps"), 1e-9, "from the two slowest speeds")
	assert.Contains(t, calctest.Part(f, "speeds"), "taken from the line through the two slowest speeds")
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,180,180&fed=99.42,99.38,99.41,99.38")
	assert.Contains(t, calctest.Part(f, "speeds"), "no visible difference")
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,60&fed=99.4,99.3,99.4")
	assert.Contains(t, calctest.Part(f, "impossible"), "All runs are at the same speed")
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,180&fed=99.4,99.3")
	assert.Contains(t, calctest.Part(f, "impossible"), "Too few runs: make at least three")
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&fed=99.4")
	assert.Contains(t, calctest.Part(f, "missing"), "at\n")
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,180,180,300,300&fed=99,99.01,99.5,99.51,100,100.02")
	assert.Contains(t, calctest.Part(f, "speeds"), "It feeds more at higher speed")

	// An error that grows, on no straight line, is no slip either.
	f = calctest.Open(t, "measure", "v=1&steps=415&trial=speeds&asked=100&read=fed&at=60,60,180,180,360,360&fed=98.42,98.38,99.01,98.98,99.42,99.38&tool=caliper-0.02")
	assert.Equal(t, "Change it", calctest.Verdict(f).Title)
	assert.Contains(t, calctest.Part(f, "speeds"), "It feeds more at higher speed")
	assert.Contains(t, calctest.Part(f, "speeds"), "taken from the line at zero speed")
	for _, says := range []string{"then slips", "correct slip", "cure slip"} {
		assert.NotContains(t, f.Report().String(), says)
	}
}

func TestMeasureSeveralLengths(t *testing.T) {
	// measured = 0.2 + 0.996·commanded
	f := calctest.Open(t, "measure", "v=1&axis=travel&steps=81&trip=lengths&want=20,20,100,100,180,180&moved=20.13,20.11,99.81,99.79,179.49,179.47&tool=caliper-0.02")
	assert.InDelta(t, 0.2, calctest.Out(t, f, "offset"), 0.005)
	assert.InDelta(t, 81/0.996, calctest.Out(t, f, "steps"), 0.01)
	assert.Contains(t, calctest.Part(f, "lengths"), "There's a fixed offset")
	assert.Equal(t, report.Change, calctest.Verdict(f).Kind)
	assert.NotEmpty(t, calctest.Part(f, "why"))
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=lengths&want=20,60,100&moved=20.01,60,100.01")
	assert.Contains(t, calctest.Part(f, "lengths"), "no visible fixed offset")
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=lengths&want=20,20,20&moved=20.01,20,20.01")
	assert.Contains(t, calctest.Part(f, "impossible"), "All runs are of the same length")
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=lengths")
	assert.Contains(t, calctest.Part(f, "missing"), "want, moved")
}

func TestMeasureFromBothSides(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=sides&target=10,10,100,100,190,190&up=10.04,10.05,100.04,100.03,190.05,190.04&down=9.96,9.95,99.96,99.97,189.96,189.95")
	assert.InDelta(t, 0.09, calctest.Out(t, f, "reversal"), 1e-9)
	assert.InDelta(t, 80, calctest.Out(t, f, "steps"), 0.01)
	assert.Contains(t, calctest.Part(f, "sides"), "Backlash isn't a steps/mm error")
	assert.Equal(t, report.Leave, calctest.Verdict(f).Kind)
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=sides&target=10,100,190&up=10,100,190&down=9.9,99.9")
	assert.Contains(t, calctest.Part(f, "impossible"), "from both sides")
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=sides&target=10,100&up=10,100&down=9.9,99.9")
	assert.Contains(t, calctest.Part(f, "impossible"), "Too few targets: approach at least three")
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=sides&target=10,100,190&up=190,100,10&down=190,100,10")
	assert.Contains(t, calctest.Part(f, "impossible"), "The positions go down as the targets go up: check the sign.")
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&trip=sides")
	assert.Contains(t, calctest.Part(f, "missing"), "target, up, down")
}

func TestMeasureSecondRound(t *testing.T) {
	again := func(rest string) *form.Form {
		return calctest.Open(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&restagain="+rest)
	}
	f := again("25.0,25.1,25.0,25.1")
	assert.Equal(t, "Done: the change worked", calctest.Verdict(f).Title, "the second round has the headline")
	assert.Contains(t, calctest.Part(f, "apply"), "What was applied")
	assert.InDelta(t, -0.0625, calctest.Out(t, f, "then"), 1e-6)
	assert.InEpsilon(t, 564.3356643, calctest.Out(t, f, "steps"), 1e-9, "the first round stays what it was")
	f = again("28.8,28.7,28.9")
	assert.Equal(t, "Still off after the change", calctest.Verdict(f).Title)
	assert.Contains(t, calctest.Part(f, "again"), "Is the new value really in use?")
	f = again("21,21.1,21")
	assert.NotContains(t, calctest.Part(f, "again"), "really in use")
	f = again("25.4")
	assert.Contains(t, calctest.Verdict(f).Title, "Not sure yet")
	assert.Empty(t, calctest.Part(again(""), "again"))
}

func TestMeasureTwoInstruments(t *testing.T) {
	const test = "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05"
	one := calctest.Open(t, "measure", test)
	two := calctest.Open(t, "measure", test+"&marktool=rule")
	assert.Greater(t, calctest.Out(t, two, "combined"), calctest.Out(t, one, "combined"))
	assert.Contains(t, calctest.Part(two, "why"), "Tool resolution, mark")
	own := calctest.Open(t, "measure", test+"&marktool=own&markstep=1&marklimits=0.2") // a rule is good to that
	assert.InEpsilon(t, calctest.Out(t, two, "combined"), calctest.Out(t, own, "combined"), 1e-12)
	limits := calctest.Open(t, "measure", test+"&limits=0.3")
	assert.Greater(t, calctest.Out(t, limits, "combined"), calctest.Out(t, one, "combined"))
	assert.Contains(t, calctest.Part(limits, "why"), "Tool accuracy")
}

func TestMeasureLots(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05")
	found := 0
	for _, p := range f.Report().Parts {
		for _, b := range p.Blocks {
			if lots, ok := b.(report.Lots); ok {
				found++
				m, err := lots.Start()
				require.NoError(t, err)
				for !m.Step(10_000) {
				}
				drawn, err := m.Result()
				require.NoError(t, err)
				assert.Equal(t, 200_000, drawn.Draws)
				// The interval, and what lots of the same distributions say, worked out apart.
				assert.InDelta(t, -5.146168955, lots.Low, 1e-8)
				assert.InDelta(t, -4.187164378, lots.High, 1e-8)
				assert.InDelta(t, -5.144813907, drawn.Low, 0.01)
				assert.InDelta(t, -4.188519426, drawn.High, 0.01)
				// Who opens the same sheet sees the same lots.
				assert.InDelta(t, -5.147390665, drawn.Low, 1e-6)
				assert.InDelta(t, -4.185235635, drawn.High, 1e-6)
			}
		}
	}
	assert.Equal(t, 1, found)
}

func TestMeasureApply(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&line=M92%20E%7Bvalue%7D")
	apply := calctest.Part(f, "apply")
	assert.Contains(t, apply, "Send this: M92 E564.3\n", "rounded to below a tenth of ± 2.8")
	assert.Contains(t, apply, "To undo it: M92 E538\n")
	assert.Contains(t, calctest.Part(f, "persist"), "the next restart brings the old value back")
	assert.Contains(t, calctest.Part(f, "touches"), "A start-up script, macro or profile that still sets 538 steps/mm: change it to 564.3 steps/mm")
	f.Set("line", 0, "M92 E")
	assert.Contains(t, f.ProblemAt("line", 0), "has no {value}")
	assert.Empty(t, calctest.Part(f, "apply"))
	assert.NotNil(t, f.Report().Answer, "the value does not depend on the line")
	f.Set("line", 0, "")
	assert.Contains(t, calctest.Part(f, "apply"), "a command ready to copy: line")

	f = calctest.Open(t, "measure", "v=1&as=turn&turn=5.948&asked=80&mark=105&rest=28.7,28.9,28.6&entry=travel%20per%20turn:%20%7Bvalue%7D%20mm")
	assert.Contains(t, calctest.Part(f, "apply"), "travel per turn: 5.670 mm")
	assert.Contains(t, calctest.Part(f, "persist"), "restart the controller")
	f.Set("entry", 0, "5.67")
	assert.Contains(t, f.ProblemAt("entry", 0), "has no {value}")
	f.Set("entry", 0, "")
	assert.Contains(t, calctest.Part(f, "apply"), "a config line ready to copy: entry")
}

// An example is of the axis that is set: who copies it must not set another.
func TestMeasureExampleIsOfItsAxis(t *testing.T) {
	for key, c := range map[string]struct{ entries, example string }{
		"line":       {"line=M92", "as in M92 E{value}."},
		"linetravel": {"axis=travel&linetravel=M92", "as in M92 X{value}."},
		"linerotary": {"axis=rotary&linerotary=M92", "as in M92 A{value}."},
		"entry":      {"as=turn&entry=5.67", "as in name = {value}."},
	} {
		assert.Contains(t, calctest.Load(t, "measure", "v=1&"+c.entries).ProblemAt(key, 0), c.example)
	}
}

func TestMeasureNext(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.8,28.7&path=open")
	assert.InDelta(t, 25, calctest.Out(t, f, "expect"), 1e-12)
	assert.Less(t, calctest.Out(t, f, "low"), 25.0)
	assert.Greater(t, calctest.Out(t, f, "high"), 25.0)
	assert.Contains(t, calctest.Part(f, "next"), "about 25 mm should remain")
	assert.Contains(t, calctest.Part(f, "next"), "Turn cold-extrusion protection back on")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&fed=76,76.1,76.1")
	assert.InDelta(t, 80, calctest.Out(t, f, "expect"), 1e-12)
	assert.NotContains(t, calctest.Part(f, "next"), "Turn cold-extrusion protection back on", "a hot test leaves it in place")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&marks=each&eachmark=105.1,104.9,105&rest=28.7,28.6,28.6")
	assert.InDelta(t, 80, calctest.Out(t, f, "expect"), 1e-12)
	f = calctest.Open(t, "measure", "v=1&axis=travel&steps=80&asked=80&moved=79,79.01,79")
	assert.NotContains(t, calctest.Part(f, "next"), "retraction")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7")
	assert.Contains(t, calctest.Part(f, "next"), "at least three runs")
	f = calctest.Open(t, "measure", "v=1&steps=400&asked=80&read=fed&fed=86,82,87&tool=caliper-0.01&tol=2")
	assert.Contains(t, calctest.Part(f, "next"), "vary by about 5.3 mm,", "no more digits than about has")
}

// The second round belongs to a test of one length: after another one the check is a sheet of its own.
func TestMeasureChecksWhereThereIsRoom(t *testing.T) {
	for _, test := range []string{
		"trial=speeds&asked=100&read=fed&at=60,60,180,180,360,360&fed=97.42,97.38,97.41,97.38,97.4,97.38",
		"axis=travel&trip=lengths&want=20,20,100,100,180,180&moved=20.23,20.21,101.01,100.99,181.79,181.77",
		"axis=travel&trip=sides&target=10,100,190,10,100,190&up=10.04,101.04,192.05,10.05,101.05,192.05&down=9.96,100.96,191.96,9.97,100.97,191.97",
	} {
		f := calctest.Open(t, "measure", "v=1&steps=81&tool=caliper-0.02&"+test)
		require.Equal(t, report.Change, calctest.Verdict(f).Kind)
		again, _ := f.Field("asideagain")
		require.False(t, f.Visible(again, 0))
		assert.NotContains(t, calctest.Part(f, "next"), "Check runs after the change")
		assert.Contains(t, calctest.Part(f, "next"), "on a new sheet")
	}
	f := calctest.Open(t, "measure", "v=1&steps=80&asked=100&read=fed&fed=97.42,97.38,97.41")
	assert.Contains(t, calctest.Part(f, "next"), "Check runs after the change")
}

// Nothing stands between a number and its degrees, also where both are put together as text.
func TestMeasureWritesDegreesAlike(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&axis=rotary&as=turn&turndeg=4&askeddeg=90&turned=91.4,91.4,91.39&angle=1.8&micro=16")
	assert.Contains(t, calctest.Part(f, "persist"), "Set the new one: 4.06207°/rev.")
	assert.Contains(t, calctest.Part(f, "touches"), "still sets 4°/rev: change it to 4.06207°/rev.")
}

// Each way to make the test brings its own steps and cautions.
func TestMeasureHowTo(t *testing.T) {
	how := func(entries string) string { return calctest.Part(calctest.Open(t, "measure", "v=1&"+entries), "how") }
	hot := how("speed=90")
	assert.Contains(t, hot, "will burn you")
	assert.Contains(t, hot, "Feed speed: 1.5 mm/s")
	assert.Contains(t, hot, "F value: 90 mm/min")
	assert.NotContains(t, hot, "That's fast")
	tube := how("path=open&drive=tube")
	assert.Contains(t, tube, "Bowden")
	assert.Contains(t, tube, "Feed cold only")
	assert.NotContains(t, tube, "will burn you")
	assert.Contains(t, how("path=open"), "take the extruder off the hot end")
	assert.Contains(t, how("path=open&read=fed"), "measure the piece")
	assert.Contains(t, how("read=fed"), "went in")
	assert.Contains(t, how("speed=5mm/s"), "That's fast")
	assert.NotContains(t, how("path=open&speed=5mm/s"), "That's fast")
	assert.Contains(t, how("path=open&speed=15mm/s"), "That's fast")
	travel := how("axis=travel")
	assert.Contains(t, travel, "Z well away from the bed")
	assert.NotContains(t, travel, "filament")
	assert.Contains(t, how("axis=rotary"), "graduated disc")
	for _, all := range []string{hot, tube, travel} {
		assert.Contains(t, all, "manual comes first")
		assert.Contains(t, all, "hand near the off switch")
		assert.Contains(t, all, "at least three runs")
	}
}

func TestMeasureFiftyRuns(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&axis=travel&steps=80&asked=100&moved="+strings.TrimSuffix(strings.Repeat("99,", 50), ","))
	assert.InEpsilon(t, 80*100/99.0, calctest.Out(t, f, "steps"), 1e-12)
	assert.InDelta(t, 99, calctest.Out(t, f, "moved-50"), 1e-12)
	assert.Zero(t, calctest.Out(t, f, "spread"))
	p, _ := calc.PageOf("measure")
	g := calc.Load(p, "v=1&axis=travel&steps=80&asked=100&moved="+strings.TrimSuffix(strings.Repeat("99,", 51), ","))
	require.Len(t, g.Problems(), 1)
	assert.Contains(t, g.Problems()[0].Says, "the link has 51 values; 50 are read")
}

func TestMeasureInInches(t *testing.T) {
	mm := calctest.Open(t, "measure", "v=1&axis=travel&steps=80&asked=190.5&moved=190.1")
	in := calctest.Open(t, "measure", "v=1&axis=travel&steps=2032%20steps/in&asked=7.5in&moved=190.1")
	assert.InEpsilon(t, calctest.Out(t, mm, "steps"), calctest.Out(t, in, "steps"), 1e-14)
	assert.Contains(t, in.Fragment(), "asked=7.5in", "it stays as typed")
}

// A single run looks better known than three, as it shows no scatter: it
// settles nothing, in either round.
func TestMeasureOneRunSettlesNothing(t *testing.T) {
	for _, rest := range []string{"28.7", "25"} {
		f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest="+rest)
		a := f.Report().Answer
		assert.Equal(t, report.MeasureMore, a.Verdict.Kind)
		assert.Zero(t, a.U)
		assert.Contains(t, a.Verdict.Says.String(), "One run can't show the scatter")
		assert.NotContains(t, a.Verdict.Says.String(), "confidence")
	}
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6&restagain=25")
	assert.Equal(t, "Not sure yet: add check runs", f.Report().Answer.Verdict.Title)
}

// Once the change is seen to be right, the value to keep is the headline, with
// what the error is now.
func TestMeasureDoneSaysWhatToKeep(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6&restagain=25.1,24.9,25.05")
	a := f.Report().Answer
	require.NotNil(t, a.Keep)
	assert.Equal(t, "Confirmed: steps per mm", a.Keep.Label)
	assert.Equal(t, "564.3 steps/mm", a.Keep.String())
	assert.Contains(t, a.Says.String(), "After the change the error is −0.02 ± 0.27%", "with the scatter of both rounds: 0.1307 mm, of four degrees of freedom")
	f = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6&restagain=28.8,28.7,28.6")
	assert.Nil(t, f.Report().Answer.Keep)
}

// At the number of runs that was planned the verdict asks for 95 % on one side, the interval
// leaves 2.5 % on either:
// where they part, the sentence says how sure it is.
func TestMeasureSaysHowSureItIs(t *testing.T) {
	const test = "v=1&steps=415&asked=100&mark=120&rest=21.4,23,24&tool=caliper-0.05"
	a := calctest.Open(t, "measure", test).Report().Answer
	assert.Equal(t, report.MeasureMore, a.Verdict.Kind, "it may be looked at again")
	assert.Regexp(t, `^It fed between 6\.1% too little and 0\.5\d?% too much \(95% confidence\)\. These readings can't tell`, a.Verdict.Says.String())
	a = calctest.Open(t, "measure", test+"&planned=3").Report().Answer
	assert.Equal(t, report.Change, a.Verdict.Kind)
	assert.Regexp(t, `^It fed between 6\.1% too little and 0\.5\d?% too much \(95% confidence\)\. One end of that is within your acceptable error of ± 0\.5%, but the error itself is most likely beyond it \(9[5-7]\.\d% confidence\)\.$`, a.Verdict.Says.String())
	a = calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05").Report().Answer
	assert.Contains(t, a.Verdict.Says.String(), "That's more than your acceptable error")
}

// What is sent is what the headline shows.
func TestMeasureSendsWhatItShows(t *testing.T) {
	f := calctest.Open(t, "measure", "v=1&steps=415&asked=100&mark=120&rest=21.5,22,22.5&tool=caliper-0.05&line=M92%20E%7Bvalue%7D")
	number, _, _ := strings.Cut(f.Report().Answer.String(), " ")
	assert.Contains(t, calctest.Part(f, "apply"), "Send this: M92 E"+number+"\n")
}
