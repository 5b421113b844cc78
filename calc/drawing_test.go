package calc_test

import (
	"bufio"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/flow"
	"striderule/calc/page/parts"
	"striderule/calc/page/plan"
	"striderule/calc/page/swap"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// drawingsOf are the drawings of a report by their IDs.
func drawingsOf(t require.TestingT, r report.Report) map[string]report.Drawing {
	all := map[string]report.Drawing{}
	for _, p := range r.Parts {
		for _, b := range p.Blocks {
			if d, ok := b.(report.Drawing); ok {
				require.NotContains(t, all, d.ID, "two drawings of one name")
				all[d.ID] = d
			}
		}
	}
	return all
}

func drawn(t *testing.T, slug, fragment, id string) report.Drawing {
	t.Helper()
	p, ok := calc.PageOf(slug)
	require.True(t, ok)
	f := calc.Load(p, fragment)
	require.Empty(t, f.Problems())
	all := drawingsOf(t, f.Report())
	require.Contains(t, all, id)
	return all[id]
}

var numbers = regexp.MustCompile(`[−-]?[0-9][0-9.e−-]*`)

// checkDrawing holds what every drawing must be.
func checkDrawing(t require.TestingT, d report.Drawing) {
	require.NotEmpty(t, d.Title)
	require.NotEmpty(t, d.Alt)
	require.NotEmpty(t, d.Shapes)
	require.NotContains(t, d.Alt, "NaN")
	require.Less(t, d.From, d.To)
	per := (d.To - d.From) / report.PaperWidth
	inside := func(x, y, r float64) {
		require.True(t, unit.Finite(x) && unit.Finite(y), "%s: %v, %v", d.Title, x, y)
		require.GreaterOrEqual(t, (x-d.From)/per-r, -1e-6, d.Alt)
		require.LessOrEqual(t, (x-d.From)/per+r, report.PaperWidth+1e-6, d.Alt)
		require.GreaterOrEqual(t, y-r, 0.0, d.Alt)
		require.LessOrEqual(t, y+r, d.High, d.Alt)
	}
	say := func(text string) {
		require.NotContains(t, text, "NaN")
		for _, n := range numbers.FindAllString(text, -1) {
			require.Contains(t, d.Alt, n, "the text says all figures")
		}
	}
	require.Less(t, len(d.Shapes), 300)
	require.LessOrEqual(t, d.High, float64(report.PaperWidth), "no higher than wide: it must fit a phone")
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case report.Stroke:
			require.Greater(t, len(s.Points), 1)
			for _, p := range s.Points {
				inside(p.X, p.Y, 0)
			}
		case report.Disc:
			require.Positive(t, s.R)
			inside(s.At.X, s.At.Y, s.R)
		case report.Plate:
			inside(s.A.X, s.A.Y, 0)
			inside(s.B.X, s.B.Y, 0)
			require.LessOrEqual(t, s.A.X, s.B.X)
			require.Less(t, s.A.Y, s.B.Y)
		case report.Dim:
			inside(s.A.X, s.A.Y, 0)
			inside(s.B.X, s.B.Y, 0)
			say(s.Text)
			if n := numbers.FindString(s.Text); n != "" && s.A.Y == s.B.Y {
				digits, decimals, _ := strings.Cut(n, ".")
				last := -len(decimals) // place of the last digit that means something
				if last == 0 {
					last = len(digits) - len(strings.TrimRight(digits, "0"))
				}
				v, err := strconv.ParseFloat(n, 64)
				require.NoError(t, err)
				if v == 0 { // a reading of which nothing is known
					continue
				}
				require.InDelta(t, math.Abs(s.B.X-s.A.X), v, max(0.001*v, 0.51*math.Pow10(last)), "a dimension line is as long as it says: %s", s.Text)
			}
		case report.Words:
			inside(s.At.X, s.At.Y, 0)
			say(s.Text)
		default:
			require.Failf(t, "unknown shape", "%T", s)
		}
	}
}

func TestDrawingsKeepToTheLaw(t *testing.T) {
	file, err := os.Open("testdata/drawings.txt")
	require.NoError(t, err)
	defer func() { require.NoError(t, file.Close()) }()
	for lines := bufio.NewScanner(file); lines.Scan(); {
		slug, fragment, _ := strings.Cut(lines.Text(), " ")
		if slug == "#" {
			continue
		}
		t.Run(lines.Text(), func(t *testing.T) {
			p, ok := calc.PageOf(slug)
			require.True(t, ok)
			f := calc.Load(p, fragment)
			require.Empty(t, f.Problems())
			all := drawingsOf(t, f.Report())
			delete(all, "how")
			delete(all, "places")
			require.NotEmpty(t, all, "one of its own")
			for _, d := range drawingsOf(t, f.Report()) {
				checkDrawing(t, d)
				assert.Contains(t, f.Report().String(), d.Title+": "+d.Alt)
			}
		})
	}
}

// dimOf is the dimension line whose text begins with a word.
func dimOf(t *testing.T, d report.Drawing, word string) report.Dim {
	t.Helper()
	for _, s := range d.Shapes {
		if dim, ok := s.(report.Dim); ok && strings.HasPrefix(dim.Text, word) {
			return dim
		}
	}
	require.Fail(t, "no dimension line "+word)
	return report.Dim{}
}

func length(d report.Dim) float64 { return d.B.X - d.A.X }

func hasDim(d report.Drawing, word string) bool {
	for _, s := range d.Shapes {
		if dim, ok := s.(report.Dim); ok && strings.HasPrefix(dim.Text, word) {
			return true
		}
	}
	return false
}

func TestMarkTestIsDrawnToScale(t *testing.T) {
	d := drawn(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6", "test")
	mark, fed, left, asked := dimOf(t, d, "mark"), dimOf(t, d, "fed"), dimOf(t, d, "remaining"), dimOf(t, d, "commanded")
	assert.InDelta(t, -(105-86.2/3)/105, length(fed)/length(mark), 1e-12)
	assert.InDelta(t, 86.2/3/105, length(left)/length(mark), 1e-12)
	assert.InDelta(t, -80.0/105, length(asked)/length(mark), 1e-12)
	assert.Equal(t, fed.A.X, mark.B.X, "the way of the mark")
	assert.Equal(t, fed.B.X, left.B.X)
	assert.Equal(t, "fed 76.267 mm", fed.Text)
	assert.Equal(t, "The mark is 105 mm from the extruder's inlet before the run and 28.733 mm from it after: 76.267 mm fed, 80 mm commanded.", d.Alt)

	d = drawn(t, "measure", "v=1&mark=105&rest=28.7", "test")
	assert.False(t, hasDim(d, "commanded"), "not told")
	d = drawn(t, "measure", "v=1&asked=200&mark=105&rest=1", "test")
	assert.False(t, hasDim(d, "commanded"), "it would lie inside the extruder")
	d = drawn(t, "measure", "v=1&asked=80&mark=105", "test")
	assert.InDelta(t, 25, length(dimOf(t, d, "should remain")), 1e-12)
	d = drawn(t, "measure", "v=1&read=fed&asked=80&fed=76.1,76.3", "test")
	assert.InDelta(t, 76.2/80, length(dimOf(t, d, "fed"))/length(dimOf(t, d, "commanded")), 1e-12)
	assert.False(t, hasDim(d, "mark"))
	d = drawn(t, "plan", plan.Page.Example, "test")
	assert.InDelta(t, 90, -length(dimOf(t, d, "to feed")), 1e-12)
	assert.InDelta(t, 115, length(dimOf(t, d, "mark")), 1e-12)
}

// A run that is left out does not count, here neither.
func TestMarkTestDrawsCountedRuns(t *testing.T) {
	d := drawn(t, "measure", "v=1&asked=80&mark=105&rest=28.7,28.9,60&aside=,,yes", "test")
	assert.InDelta(t, 76.2, -length(dimOf(t, d, "fed")), 1e-12)
	assert.Equal(t, "The test, to scale, mean of 2 runs", d.Title)
}

func TestDrawingIsNeverStale(t *testing.T) {
	f := calc.Load(calibrate.Page, "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6")
	for _, key := range []string{"asked", "mark", "rest"} {
		was := f.Text(key, 0)
		f.Set(key, 0, "8Omm")
		assert.NotContains(t, drawingsOf(t, f.Report()), "test", key)
		f.Set(key, 0, was)
		assert.Contains(t, drawingsOf(t, f.Report()), "test", key)
	}
	for slug, id := range map[string]string{"measure": "test", "plan": "test", "swap": "step", "flow": "wall", "parts": "train-1"} {
		p, _ := calc.PageOf(slug)
		assert.NotContains(t, drawingsOf(t, calc.NewForm(p).Report()), id)
		assert.Contains(t, drawingsOf(t, calc.Load(p, p.Example).Report()), id)
	}
	assert.NotContains(t, drawingsOf(t, calc.Load(flow.Page, "v=1&width=0.45&layer=0.2&thick=0.5").Report()), "wall", "not before the extruder is calibrated")
	assert.NotContains(t, drawingsOf(t, calc.Load(flow.Page, "v=1&scale=verified&by=mass").Report()), "wall")
	assert.NotContains(t, drawingsOf(t, calc.Load(calibrate.Page, "v=1&axis=travel&asked=80&moved=79").Report()), "test")
	assert.NotContains(t, drawingsOf(t, calc.Load(swap.Page, "v=1&changed=angle&as=turn&turn=40&angle=1.8&anglenew=0.9").Report()), "step", "microsteps are not told")
}

func discs(d report.Drawing) []report.Disc {
	var all []report.Disc
	for _, s := range d.Shapes {
		if disc, ok := s.(report.Disc); ok && disc.R > 3 {
			all = append(all, disc)
		}
	}
	return all
}

func TestDrivetrainShowsItsTeeth(t *testing.T) {
	d := drawn(t, "parts", "v=1&out=belt&angle=1.8&micro=16&gears=pairs&driving=20x12&driven=40x36&pitch=2&teeth=18", "train-1")
	w := discs(d)
	require.GreaterOrEqual(t, len(w), 5)
	assert.Equal(t, []int{20, 40, 12, 36, 18}, []int{w[0].Teeth, w[1].Teeth, w[2].Teeth, w[3].Teeth, w[4].Teeth})
	assert.InDelta(t, 2, w[1].R/w[0].R, 1e-12, "as the teeth")
	assert.InDelta(t, 3, w[3].R/w[2].R, 1e-12)
	assert.InDelta(t, w[0].R+w[1].R, w[1].At.X-w[0].At.X, 1e-12, "they mesh")
	assert.Equal(t, w[1].At, w[2].At, "on one shaft")
	assert.Equal(t, w[3].At, w[4].At, "the pulley is on the last one")
	assert.Equal(t, "Motor: full step 1.8°. 20 → 40 teeth. 12 → 36 teeth. Belt: 2 mm pitch, 18 teeth. One motor turn moves 6 mm.", d.Alt)

	d = drawn(t, "parts", "v=1&out=rotary&angle=0.9&micro=16&gears=pairs&driving=1&driven=10000", "train-1")
	w = discs(d)
	assert.InDelta(t, 4, w[1].R/w[0].R, 1e-12, "in bounds")
	assert.Contains(t, d.Alt, "One motor turn moves 0.036°")

	many := calc.Load(parts.Page, "v=1&pitch=2"+strings.Repeat(",2", 13)+"&teeth=20"+strings.Repeat(",20", 13))
	assert.Len(t, drawingsOf(t, many.Report()), 12, "a phone draws them anew at every key")

	d = drawn(t, "parts", "v=1&out=roller&roller=8.5", "train-1")
	assert.Equal(t, "Motor. Drive gear: 8.5 mm effective diameter. One motor turn moves 26.703538 mm.", d.Alt)
	d = drawn(t, "parts", "v=1&out=belt&pitch=2&teeth=18&gears=pairs&driving=12", "train-1")
	assert.Equal(t, "Motor. Belt: 2 mm pitch, 18 teeth.", d.Alt, "no more than is known")
}

func TestStepsAreDrawnToOneScale(t *testing.T) {
	d := drawn(t, "swap", "v=1&changed=angle,micro&steps=80&angle=1.8&anglenew=0.9&micro=16&micronew=32", "step")
	var full, micro []float64
	ticks := 0
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case report.Dim:
			if strings.HasPrefix(s.Text, "full") {
				full = append(full, length(s))
			} else {
				micro = append(micro, length(s))
			}
		case report.Stroke:
			if s.Role == report.Measure {
				ticks++
			}
		}
	}
	assert.InDeltaSlice(t, []float64{0.2, 0.1}, full, 1e-12)
	assert.InDeltaSlice(t, []float64{0.0125, 0.003125}, micro, 1e-12)
	assert.Equal(t, 15+31, ticks)
	assert.Equal(t, "Before: one full step moves 0.2 mm in 16 microsteps; one microstep moves 0.0125 mm. "+
		"After: one full step moves 0.1 mm in 32 microsteps; one microstep moves 0.003125 mm.", d.Alt)

	d = drawn(t, "swap", "v=1&changed=angle&steps=80&angle=1.8&anglenew=0.9", "step")
	assert.False(t, hasDim(d, "full"), "microsteps are not told")
	assert.InDelta(t, 1.0/80, length(dimOf(t, d, "microstep")), 1e-15)
}

func TestTravelIsDrawnToScale(t *testing.T) {
	d := drawn(t, "plan", "v=1&axis=travel&trip=lengths&tool=tape&from=20&to=320", "test")
	assert.InDelta(t, 300, length(dimOf(t, d, "free")), 1e-12)
	assert.InDelta(t, 5, length(dimOf(t, d, "slack")), 1e-12)
	var runs []float64
	for _, s := range d.Shapes {
		if dim, ok := s.(report.Dim); ok && dim.Role == report.Motion {
			runs = append(runs, length(dim))
			assert.InDelta(t, 25, dim.A.X, 1e-12, "from behind the slack")
		}
	}
	assert.InDeltaSlice(t, []float64{58, 174, 290}, runs, 1e-12)
	assert.InDelta(t, -295, length(dimOf(t, d, "back")), 1e-12)

	d = drawn(t, "plan", "v=1&axis=travel&trip=sides&tool=tape&from=0&to=300", "test")
	var targets []float64
	for _, s := range d.Shapes {
		if stroke, ok := s.(report.Stroke); ok && stroke.Role == report.Mark {
			targets = append(targets, stroke.Points[0].X)
		}
	}
	assert.InDeltaSlice(t, []float64{5, 77.5, 150, 222.5, 295}, targets, 1e-12)
	assert.Contains(t, d.Alt, "Targets at 5 mm, 77.5 mm, 150 mm, 222.5 mm, 295 mm")
}

func TestWallIsDrawnToScale(t *testing.T) {
	d := drawn(t, "flow", "v=1&scale=verified&width=0.45&layer=0.2&walls=4&thick=1.75,1.75&tool=caliper-0.05", "wall")
	per := (d.To - d.From) / report.PaperWidth
	var lines []report.Plate
	for _, s := range d.Shapes {
		if p, ok := s.(report.Plate); ok && p.Round {
			lines = append(lines, p)
		}
	}
	require.Zero(t, len(lines)%4)
	spacing := 0.45 - 0.2*(1-math.Pi/4)
	for i, l := range lines {
		assert.InDelta(t, float64(i%4)*spacing, l.A.X, 1e-12)
		assert.InDelta(t, 0.45, l.B.X-l.A.X, 1e-12)
		assert.InDelta(t, 0.2, (l.B.Y-l.A.Y)*per, 1e-12, "heights to the same scale")
	}
	wanted, reads := dimOf(t, d, "should be"), dimOf(t, d, "caliper")
	assert.InDelta(t, 3*spacing+0.45, length(wanted), 1e-12)
	assert.InDelta(t, 1.75, length(reads), 1e-12)
	assert.InDelta(t, wanted.A.X+wanted.B.X, reads.A.X+reads.B.X, 1e-12, "as much on either side")
	assert.Contains(t, d.Alt, "4 lines")
	d = drawn(t, "flow", "v=1&scale=verified&width=0.45&layer=0.2&thick=0.4,190", "wall")
	assert.Equal(t, "one line 0.45 mm", dimOf(t, d, "one line").Text, "it is set, whatever was read")
	d = drawn(t, "flow", "v=1&scale=verified&width=0.45&layer=0.2", "wall")
	assert.False(t, hasDim(d, "caliper"), "nothing is read yet")
	assert.False(t, hasDim(d, "spacing"), "one line has no neighbour")
}
