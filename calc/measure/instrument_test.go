package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What pages assume of an instrument that is only named: plans and advice rest on it.
func TestUsualInstruments(t *testing.T) {
	var all [][5]float64
	for _, i := range Instruments {
		all = append(all, [5]float64{i.Resolution, i.Accuracy, i.Eye, i.Reach, i.Usual})
	}
	assert.Equal(t, [][5]float64{
		{1, 0, 0.3, 3000, 0.5}, {1, 0, 0.2, 300, 0.2},
		{0.1, 0, 0.1, 150, 0.1}, {0.05, 0, 0.1, 150, 0.05}, {0.02, 0, 0.1, 150, 0.03}, {0.01, 0, 0.1, 150, 0.03},
	}, all)
}

// Of two instruments the coarser one is to be replaced, the mark's where they are alike.
func TestFinerReplacesTheCoarser(t *testing.T) {
	fine, coarse, new := Instrument{ID: "fine", Resolution: 0.1}, Instrument{ID: "coarse", Resolution: 1}, Instrument{ID: "new", Resolution: 0.01}
	for _, c := range []struct{ mark, rest, wantMark, wantRest Instrument }{
		{fine, coarse, fine, new}, {coarse, fine, new, fine}, {fine, fine, new, fine},
	} {
		was := c.rest
		got := Test{With: c.mark, RemainingWith: &c.rest}.finer(new)
		assert.Equal(t, []string{c.wantMark.ID, c.wantRest.ID}, []string{got.With.ID, got.RemainingWith.ID})
		assert.Equal(t, was, c.rest, "the test that it was asked of stays as it is")
	}
}

// Nobody is asked for more runs than fifty.
func TestNoMoreRunsThanAnybodyMakes(t *testing.T) {
	at := func(u float64) Scale {
		return Scale{Ratio: Estimate{Value: 1, U: u, Dof: 4}, Runs: 5, Test: Test{Commanded: 100, Length: 100, Runs: 5}}
	}
	// The largest scatter that some number of runs settles.
	largest := func(runs int) float64 {
		low, high := 0.0, 1.0
		for range 60 {
			mid := (low + high) / 2
			if s := at(mid); s.promised(s.withRuns(runs), math.Sqrt(float64(runs)/5-1), 0.005) == MeasureMore {
				high = mid
			} else {
				low = mid
			}
		}
		return low
	}
	fifty, more := largest(maxRuns), largest(maxRuns+1)
	require.Less(t, fifty, more)
	r := at(fifty).moreRuns(0.005)
	assert.Equal(t, LeaveIt, r.Verdict)
	assert.Equal(t, maxRuns, r.Enough.Runs)
	r = at((fifty + more) / 2).moreRuns(0.005)
	assert.Equal(t, MeasureMore, r.Verdict)
}

// Without any scatter, more runs change nothing that is known.
func TestRunsWithoutScatter(t *testing.T) {
	inf := math.Inf(1)
	s := Scale{Ratio: Budget{{U: 0.001, Dof: inf}, {U: 0.002, Dof: inf, Shape: Rectangular}}.Estimate(1), Floor: 0.001, Runs: 3}
	more := s.withRuns(10)
	assert.Equal(t, 10, more.Runs)
	assert.Equal(t, s.Ratio.doubts, more.Ratio.doubts)
	assert.InEpsilon(t, s.Ratio.U, more.Ratio.U, 1e-15)
	assert.Equal(t, inf, more.Ratio.Dof)
}

// Lengths below 1 mm are lengths too.
func TestShortLengths(t *testing.T) {
	a, err := ScaleAndOffset([]Point{{0.1, 0.1}, {0.2, 0.21}, {0.4, 0.4}, {0.8, 0.8}}, Instrument{Accuracy: 0.01})
	require.NoError(t, err)
	assert.InEpsilon(t, a.Line.Slope*0.01/math.Sqrt(3)/0.8, a.Budget[2].U, 1e-12, "the limits count at the longest of them")
}
