package plan_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/form"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/plan"
	"striderule/calc/report"
)

// A travel is what a machine does with the lines of a plan.
type travel struct {
	relative      bool
	at, low, high float64
	path, longest float64
	runs          []float64 // the moves that are called a run
	waits         int
}

// follow moves a simulated axis along lines; it understands what plans are
// made of and nothing else.
func follow(t require.TestingT, lines, letter string, from float64) travel {
	m := travel{at: from, low: from, high: from}
	for line := range strings.Lines(lines) {
		code, remark, _ := strings.Cut(strings.TrimSpace(line), ";")
		words := strings.Fields(code)
		if len(words) == 0 {
			continue
		}
		switch words[0] {
		case "M83", "G91":
			m.relative = true
		case "M82", "G90":
			m.relative = false
		case "M0":
			m.waits++
		case "G1":
			require.Len(t, words, 3, line)
			require.True(t, m.relative, line)
			require.True(t, strings.HasPrefix(words[1], letter) && strings.HasPrefix(words[2], "F"), line)
			v, err := strconv.ParseFloat(words[1][len(letter):], 64)
			require.NoError(t, err)
			m.at += v
			m.low, m.high = min(m.low, m.at), max(m.high, m.at)
			m.path += math.Abs(v)
			m.longest = max(m.longest, math.Abs(v))
			if strings.Contains(remark, " run ") {
				m.runs = append(m.runs, v)
			}
		default:
			require.Fail(t, "not a known line", line)
		}
	}
	return m
}

func planOf(t require.TestingT, fragment string) *form.Form {
	f := calc.Load(plan.Page, fragment)
	require.Empty(t, f.Problems(), fragment)
	return f
}

func movesOf(f *form.Form) string {
	for _, p := range f.Report().Parts {
		for _, b := range p.Blocks {
			if c, ok := b.(report.Code); ok {
				return c.Text
			}
		}
	}
	return ""
}

func figureOf(t require.TestingT, f *form.Form, id string) float64 {
	for _, x := range f.Report().Figures() {
		if x.ID == id {
			return x.Value
		}
	}
	require.Fail(t, "no figure", id)
	return 0
}

// The moves do what the figures say, never leave the range, end where they
// began, and put absolute moves back.
func TestPlanMovesStayInRange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.IntRange(-100, 100).Draw(t, "from")
		to := from + rapid.IntRange(40, 500).Draw(t, "room")
		trip := rapid.SampledFrom([]string{"one", "lengths", "sides"}).Draw(t, "trip")
		f := planOf(t, "v=1&axis=travel&trip="+trip+"&tool=own&step=0.01&from="+strconv.Itoa(from)+"&to="+strconv.Itoa(to)+"&runs="+strconv.Itoa(rapid.IntRange(2, 8).Draw(t, "runs")))
		m := follow(t, movesOf(f), "X", float64(from))
		assert.GreaterOrEqual(t, m.low, float64(from)-1e-6)
		assert.LessOrEqual(t, m.high, float64(to)+1e-6)
		assert.InDelta(t, float64(from), m.at, 1e-6, "it ends where it began")
		assert.False(t, m.relative, "absolute moves are back")
		if trip != "sides" {
			assert.Len(t, m.runs, int(figureOf(t, f, "runs")))
		}
	})
}

func TestPlanFeedMovesAreWhatTheFiguresSay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fragment := "v=1&trial=" + rapid.SampledFrom([]string{"one", "speeds"}).Draw(t, "trial") + "&tool=caliper-0.02&asked=" + strconv.Itoa(rapid.IntRange(10, 120).Draw(t, "asked"))
		single := rapid.IntRange(0, 60).Draw(t, "single")
		if single > 0 {
			fragment += "&single=" + strconv.Itoa(single)
		}
		f := planOf(t, fragment)
		m := follow(t, movesOf(f), "E", 0)
		assert.InDelta(t, figureOf(t, f, "filament"), m.path, 1e-6)
		assert.Len(t, m.runs, int(figureOf(t, f, "runs")))
		assert.Equal(t, m.waits, len(m.runs)+1, "one wait to mark, one after each run")
		assert.False(t, m.relative)
		if single > 0 {
			assert.LessOrEqual(t, m.longest, float64(single))
		}
		assert.Greater(t, figureOf(t, f, "mark"), figureOf(t, f, "length"), "the mark never enters the drive")
	})
}

func TestPlanOwnLines(t *testing.T) {
	f := planOf(t, "v=1&tool=caliper-0.02&asked=60&runs=2&speed=1.5mm/s&begin=G91&move=FEED%20%7Baxis%7D%20BY%20%7Blength%7D%20AT%20%7Bspeed%7D&stop=WAIT&finish=G90")
	lines := movesOf(f)
	assert.Contains(t, lines, "\nG91 ; moves are relative")
	assert.Contains(t, lines, "\nFEED E BY 60 AT 90 ; custom line: run 2 of 2\n")
	assert.Contains(t, lines, "\nWAIT ; custom line: measure")
	assert.Contains(t, lines, "\nG90 ; back")
	f = calc.Load(plan.Page, "v=1&tool=caliper-0.02&move=G1%20E10")
	require.Len(t, f.Problems(), 1)
	assert.Contains(t, f.Problems()[0].Says, "“G1 E10” has no {length}")
}

// What is set is kept, and the other is worked out; what is not good enough is
// said, with what would be.
func TestPlanKeepsWhatIsSet(t *testing.T) {
	f := planOf(t, "v=1&tool=caliper-0.05&runs=10")
	assert.Equal(t, 10.0, figureOf(t, f, "runs"))
	short := figureOf(t, f, "length")
	assert.Less(t, short, figureOf(t, planOf(t, "v=1&tool=caliper-0.05&runs=3"), "length"), "more runs may be shorter")

	f = planOf(t, "v=1&tool=caliper-0.05&asked=50")
	assert.Equal(t, 50.0, figureOf(t, f, "length"))
	assert.Greater(t, figureOf(t, f, "runs"), 5.0)
	assert.LessOrEqual(t, figureOf(t, f, "expanded"), 0.25)

	f = planOf(t, "v=1&tool=rule&asked=50&runs=3&wanted=0.5")
	require.Len(t, f.Report().Answer.Notes, 1)
	assert.Contains(t, f.Report().String(), "What would make it good enough")
	f = planOf(t, "v=1&tool=caliper-0.1&asked=100&runs=5&scatter=0.02&wanted=0.08")
	assert.Contains(t, f.Report().String(), with(t, "caliper-0.05")+", 5 runs of 100 mm would do")
	assert.Contains(t, planOf(t, "v=1&tool=rule").Report().String(), with(t, "caliper-0.1"))

	f = planOf(t, "v=1&tool=rule&wanted=0.01")
	assert.Nil(t, f.Report().Answer)
	assert.Contains(t, f.Report().String(), "Even 50 runs and a length of 240 mm only get you to ± 0.35%")
	f = planOf(t, "v=1&tool=rule&runs=3&wanted=0.01")
	assert.Equal(t, 240.0, figureOf(t, f, "length"), "as good as it gets with so many")
	f = planOf(t, "v=1&tool=caliper-0.05&margin=145")
	assert.Contains(t, f.Report().String(), "The measuring tool doesn't reach the mark")
}

// with begins a sentence that names a measuring tool.
func with(t *testing.T, tool string) string {
	t.Helper()
	i, ok := measure.InstrumentOf(tool)
	require.True(t, ok)
	return "With " + axis.ToolName(i)
}

func TestPlanAsks(t *testing.T) {
	text := calc.Load(plan.Page, "").Report().String()
	assert.Contains(t, text, "Needed for a plan: tool")
	assert.Contains(t, calc.Load(plan.Page, "v=1&tool=own").Report().String(), "a plan: step")
	assert.Contains(t, calc.Load(plan.Page, "v=1&axis=travel&tool=rule&from=3").Report().String(), "stays inside the machine's range: to")
	assert.Contains(t, calc.Load(plan.Page, "v=1&axis=travel&tool=rule").Report().String(), "stays inside the machine's range: from, to")
	assert.Contains(t, planOf(t, "v=1&tool=caliper-0.1").Report().String(), "Needed for the melt rate: filament")
}

func TestPlanRefuses(t *testing.T) {
	for fragment, says := range map[string]string{
		"v=1&axis=travel&tool=rule&from=50&to=10":          "isn't above the lowest position, 50 mm",
		"v=1&axis=travel&tool=rule&from=0&to=30":           "Only 30 mm is free",
		"v=1&axis=travel&tool=rule&from=0&to=100&asked=98": "Enter 95 mm at most",
		"v=1&trial=speeds&tool=rule&runs=20":               "Enter 16 at most",
		"v=1&trial=speeds&tool=rule&at=60,60":              "All runs are at one speed",
		"v=1&tool=rule&runs=1":                             "2 to 50",
		"v=1&tool=rule&asked=5":                            "10 to 3000 mm",
	} {
		f := calc.Load(plan.Page, fragment)
		require.Len(t, f.Problems(), 1, fragment)
		assert.Contains(t, f.Problems()[0].Says, says)
		assert.Nil(t, f.Report().Answer, fragment)
	}
}

func TestPlanDoubts(t *testing.T) {
	for fragment, says := range map[string]string{
		"v=1&tool=caliper-0.05&filament=1.75&melt=3&speed=90": "can only melt 3 mm³/s: the extruder would slip. Feed no faster than 74.8 mm/min",
		"v=1&tool=caliper-0.05&speed=600":                     "That's fast for a test",
		"v=1&tool=caliper-0.05&margin=2":                      "less than 10% beyond the commanded length",
		"v=1&tool=caliper-0.05&asked=200":                     "reaches 150 mm; here you'd have to measure 250 mm",
	} {
		assert.Contains(t, planOf(t, fragment).Report().String(), says, fragment)
	}
	fine := planOf(t, "v=1&path=open&tool=caliper-0.05").Report().String()
	assert.NotContains(t, fine, "Doubt")
	assert.NotContains(t, fine, "melt", "nothing is melted on an open path")
	assert.Contains(t, fine, "Turn cold-extrusion protection back on")
}

// Both conventions travel on to the page for the readings.
func TestPlanHandsTheSettingOn(t *testing.T) {
	for fragment, handed := range map[string]string{
		"v=1&tool=caliper-0.05&as=turn&turn=5.948":    "as=turn&turn=5.948",
		"v=1&tool=caliper-0.05&as=output&output=26,7": "as=output&output=26.7",
		"v=1&tool=caliper-0.05&steps=538,5":           "steps=538.5",
	} {
		assert.Contains(t, planOf(t, strings.ReplaceAll(fragment, ",", ".")).Report().String(), "measure/#v=1&"+handed)
	}
}

// A template that is wrong takes the moves away, and nothing else.
func TestPlanWithAWrongTemplate(t *testing.T) {
	p, _ := calc.PageOf("plan")
	f := calc.Load(p, "v=1&tool=caliper-0.05&move=G1")
	assert.Len(t, f.Problems(), 1)
	right := calc.Load(p, "v=1&tool=caliper-0.05")
	assert.NotEmpty(t, calctest.Part(right, "moves"))
	assert.Empty(t, calctest.Part(f, "moves"))
	assert.Equal(t, right.Report().Answer, f.Report().Answer)
	assert.Equal(t, calctest.Part(right, "plan"), calctest.Part(f, "plan"))
}
