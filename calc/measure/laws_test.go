package measure

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "striderule/calc/calctest/cases"
)

// levels are what the laws ask intervals for.
var levels = []float64{0.5, 0.1, 0.05, 0.02, 0.01}

// genReadings are readings near a length, on the lines of a tool or between them.
func genReadings(t *rapid.T, near float64, least, most int, label string) Series {
	grid := rapid.SampledFrom([]float64{0, 0.05, 0.1, 1}).Draw(t, label+" grid")
	s := make(Series, rapid.IntRange(least, most).Draw(t, label+" n"))
	for i := range s {
		s[i] = near + rapid.Float64Range(-1, 1).Draw(t, label)
		if grid > 0 {
			s[i] = math.Round(s[i]/grid) * grid
		}
	}
	return s
}

// genTool is a usual one or one of one's own, of which the accuracy is left blank or given.
func genTool(t *rapid.T) Instrument {
	with := rapid.SampledFrom(append(slices.Clone(Instruments), Instrument{Resolution: 0.037})).Draw(t, "tool")
	switch rapid.IntRange(0, 3).Draw(t, "accuracy") {
	case 1:
		with.Accuracy = with.Usual
	case 2:
		with.Accuracy = rapid.Float64Range(1e-3, 1).Draw(t, "limits")
	case 3:
		with.CertificateU, with.CertificateK = rapid.Float64Range(1e-3, 1).Draw(t, "certificate"), 2
	}
	return with
}

// evidenceOf is every kind of test of one length. Each reads mark and what remains, or the
// length itself, from the same readings.
func evidenceOf(kind string, remaining Series, with Instrument) Evidence {
	switch kind {
	case "set mark":
		return MarkTest{Marks: Series{120}, Remaining: remaining, With: with}
	case "each marked":
		marks := make(Series, len(remaining))
		for i := range marks {
			marks[i] = 120 + 0.3*float64(i%3)
		}
		return MarkTest{Marks: marks, Remaining: remaining, With: with}
	case "two tools":
		return MarkTest{Marks: Series{120}, Remaining: remaining, With: with, RemainingWith: &with}
	case "two means":
		return TwoMeans{Repeated{Readings: Series{120, 120.2, 120.1}, With: with}, Repeated{Readings: remaining, With: with}}
	}
	return Repeated{Readings: remaining, With: with}
}

var kindsOfEvidence = []string{"set mark", "each marked", "two tools", "two means", "length"}

// Naming a tool never makes what is said sharper. Two means are left out: of two scatters, the
// one that is small has a say in the degrees of freedom of both (JCGM 100, G.4.1).
func TestNamingAToolNeverNarrows(t *testing.T) {
	wider := func(t *rapid.T, without, with Estimate) {
		t.Helper()
		assert.Equal(t, without.Value, with.Value)
		for _, q := range levels {
			assert.GreaterOrEqual(t, with.halfWidth(q), without.halfWidth(q)*(1-1e-9), "missed with %v", q)
		}
	}
	for _, kind := range slices.DeleteFunc(slices.Clone(kindsOfEvidence), func(kind string) bool { return kind == "two means" }) {
		t.Run(kind, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				readings := genReadings(t, 20, 1, 8, "reading")
				without, err := evidenceOf(kind, readings, Instrument{}).Measure()
				require.NoError(t, err)
				with, err := evidenceOf(kind, readings, genTool(t)).Measure()
				require.NoError(t, err)
				wider(t, without.Estimate(), with.Estimate())
			})
		})
	}
	t.Run("lines", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) {
			points, with := genLengths(t), genTool(t)
			if rapid.Bool().Draw(t, "differences") {
				with = with.ForDifferences(200, 180)
			}
			without, err := ScaleAndOffset(points, Instrument{})
			require.NoError(t, err)
			named, err := ScaleAndOffset(points, with)
			require.NoError(t, err)
			wider(t, without.Scale.Ratio, named.Scale.Ratio)
			wider(t, without.Offset, named.Offset)
		})
	})
	t.Run("both sides", func(t *testing.T) {
		rapid.Check(t, func(t *rapid.T) {
			targets, with := genTargets(t), genTool(t)
			without, err := Bidirectional(targets, Instrument{})
			require.NoError(t, err)
			named, err := Bidirectional(targets, with)
			require.NoError(t, err)
			wider(t, without.MeanReversal, named.MeanReversal)
			if points := meansOf(targets, without); len(points) > 2 {
				bare, err := ScaleOfPositions(points, Instrument{})
				require.NoError(t, err)
				read, err := ScaleOfPositions(points, with)
				require.NoError(t, err)
				wider(t, bare.Scale.Ratio, read.Scale.Ratio)
			}
		})
	})
}

// genLengths are three lengths to eight, some of them the same, that fit a line more or less.
func genLengths(t *rapid.T) []Point {
	var points []Point
	for i, y := range genReadings(t, 0, 3, 8, "off") {
		x := []float64{20, 180, 100, 60, 140, 20, 180, 100}[i]
		points = append(points, Point{x, x*1.002 + y + 1.1})
	}
	return points
}

// meansOf are the mean positions of targets as points of a line.
func meansOf(targets []Target, r Reversal) []Point {
	var points []Point
	for i, target := range targets {
		points = append(points, Point{target.Position, target.Position + r.Mean[i]})
	}
	return points
}

// A verdict has no unit: with all lengths multiplied it is the same.
func TestVerdictsHaveNoUnit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom(kindsOfEvidence).Draw(t, "kind")
		readings, with := genReadings(t, 20, 1, 8, "reading"), genTool(t)
		earlier := Spread{}
		if rapid.Bool().Draw(t, "earlier") {
			earlier = Spread{0.2, float64(rapid.IntRange(1, 9).Draw(t, "dof"))}
		}
		commanded := rapid.Float64Range(98, 102).Draw(t, "commanded")
		if kind == "length" {
			commanded -= 80
		}
		judge := func(f float64) (Scale, Judgement) {
			larger, before := make(Series, len(readings)), earlier
			for i, x := range readings {
				larger[i] = x * f
			}
			tool := with
			tool.Resolution, tool.Accuracy, tool.CertificateU, tool.Eye = with.Resolution*f, with.Accuracy*f, with.CertificateU*f, with.Eye*f
			before.SD *= f
			var e Evidence
			switch was := evidenceOf(kind, larger, tool).(type) {
			case MarkTest:
				marks := slices.Clone(was.Marks)
				for i := range marks {
					marks[i] *= f
				}
				was.Marks, was.Earlier = marks, before
				e = was
			case Repeated:
				was.Earlier = before
				e = was
			case TwoMeans:
				for i := range was.Mark.Readings {
					was.Mark.Readings[i] *= f
				}
				e = was
			}
			m, err := e.Measure()
			require.NoError(t, err)
			s, err := ScaleOf(commanded*f, m)
			require.NoError(t, err)
			j, err := s.Judge(0.005)
			require.NoError(t, err)
			return s, j
		}
		was, want := judge(1)
		for _, f := range []float64{0.25, 1024, 25.4} {
			now, got := judge(f)
			assert.InEpsilon(t, was.Ratio.Value, now.Ratio.Value, 1e-12)
			assert.InDelta(t, was.Ratio.HalfWidth(), now.Ratio.HalfWidth(), 1e-9)
			assert.InDelta(t, want.Within, got.Within, 1e-6)
			assert.Equal(t, want.Warnings, got.Warnings)
			assert.Equal(t, want.Verdict, got.Verdict)
			assert.InDelta(t, was.Floor, now.Floor, 1e-12)
		}
	})
}

// The order of runs never matters.
func TestOrderNeverMatters(t *testing.T) {
	same := func(t *rapid.T, a, b Estimate) {
		t.Helper()
		assert.InEpsilon(t, a.Value, b.Value, 1e-12)
		assert.InDelta(t, a.HalfWidth(), b.HalfWidth(), 1e-9)
	}
	rapid.Check(t, func(t *rapid.T) {
		with := genTool(t)
		readings := genReadings(t, 80, 2, 8, "reading")
		one, err := Repeated{Readings: readings, With: with}.Measure()
		require.NoError(t, err)
		other, err := Repeated{Readings: rapid.Permutation(readings).Draw(t, "order"), With: with}.Measure()
		require.NoError(t, err)
		same(t, one.Estimate(), other.Estimate())
		assert.Equal(t, one.Warnings, other.Warnings)

		points := genLengths(t)
		fit, err := ScaleAndOffset(points, with)
		require.NoError(t, err)
		again, err := ScaleAndOffset(rapid.Permutation(points).Draw(t, "order of lengths"), with)
		require.NoError(t, err)
		same(t, fit.Scale.Ratio, again.Scale.Ratio)
		assert.InDelta(t, fit.Offset.HalfWidth(), again.Offset.HalfWidth(), 1e-9)
		assert.Equal(t, fit.Warnings, again.Warnings)

		slip := SlipTest{Commanded: 100, Common: one.Budget.Fixed(), Grid: 0.01}
		for i, y := range genReadings(t, 99, 6, 12, "fed") {
			slip.Runs = append(slip.Runs, SpeedRun{float64(1 + i%3), y})
		}
		r, err := slip.Solve()
		require.NoError(t, err)
		slip.Runs = rapid.Permutation(slip.Runs).Draw(t, "order of speeds")
		turned, err := slip.Solve()
		require.NoError(t, err)
		same(t, r.Scale.Ratio, turned.Scale.Ratio)
		assert.Equal(t, r.Trouble, turned.Trouble)

		targets := genTargets(t)
		both, err := Bidirectional(targets, with)
		require.NoError(t, err)
		shuffled := rapid.Permutation(targets).Draw(t, "order of targets")
		for i, g := range shuffled {
			shuffled[i].Forward = rapid.Permutation(g.Forward).Draw(t, "forward")
			shuffled[i].Backward = rapid.Permutation(g.Backward).Draw(t, "backward")
		}
		back, err := Bidirectional(shuffled, with)
		require.NoError(t, err)
		assert.InDelta(t, both.MeanReversal.Value, back.MeanReversal.Value, 1e-12)
		assert.InDelta(t, both.MeanReversal.HalfWidth(), back.MeanReversal.HalfWidth(), 1e-9)
	})
}
