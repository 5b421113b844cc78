package measure

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is proposed is the least that settles it, to the round figure.
func TestAdviseNoLongerThanNeeded(t *testing.T) {
	rule, _ := InstrumentOf("rule")
	settled := 0
	for _, s := range []Scale{marked(t, rule, 76, 76, 76.5), marked(t, rule, 78.5, 78.5, 79), marked(t, caliper, 79.1, 79.4, 79.4), marked(t, rule, 79, 80, 79)} {
		by, _ := advise(t, s)
		longer, ok := by[LongerMove]
		require.True(t, ok)
		if longer.Verdict == MeasureMore {
			assert.Equal(t, s.Test.reach(), longer.Enough.Commanded, "as far as it goes")
			continue
		}
		at := func(commanded float64) Verdict { return s.promisedBy(s.Test.longer(commanded), 0.005) }
		assert.Equal(t, longer.Verdict, at(longer.Enough.Commanded))
		assert.Equal(t, MeasureMore, at(longer.Enough.Commanded*0.98-5), "no shorter one would do")
		assert.Equal(t, longer.Verdict, s.as(longer.Enough).verdictOf(0.005), "nor does it say something else without bad luck")
		settled++
	}
	assert.Equal(t, 2, settled)
}

// A longer move keeps what was found: moved over commanded, and what remains. Only
// where there is a mark it moves away.
func TestLongerMoveKeepsTheRatio(t *testing.T) {
	s := marked(t, caliper, 79.6, 79.7, 79.8)
	longer := s.Test.longer(100)
	assert.InEpsilon(t, s.Test.Length/80, longer.Length/100, 1e-14)
	assert.InDelta(t, s.Test.Mark-s.Test.Length, longer.Mark-longer.Length, 1e-12)
	bare := Test{Commanded: 80, Length: 79, Runs: 1}
	assert.Zero(t, bare.longer(160).Mark)
	assert.Equal(t, 158.0, bare.longer(160).Length)
	assert.Equal(t, 800.0, bare.reach(), "with a reach that is no matter: ten times as far")
}

// One run has a longer move as a remedy too, but none that is hardly longer.
func TestAdviseLongerMove(t *testing.T) {
	by, _ := advise(t, marked(t, caliper, 79.6))
	assert.Contains(t, by, LongerMove)
	short := marked(t, caliper, 79.3, 79.7, 79.8)
	short.Test.With.Reach = short.Test.Mark + 6
	require.Equal(t, 85.0, short.Test.reach())
	by, _ = advise(t, short)
	assert.NotContains(t, by, LongerMove)
	short.Test.With.Reach = short.Test.Mark + 12
	by, _ = advise(t, short)
	assert.Contains(t, by, LongerMove)
}

// Up to three runs it is one more that comes first; with four it is what helps most,
// and so it is where runs bring less than a tenth.
func TestAdviseRunsFirstWhileTheyHelp(t *testing.T) {
	_, order := advise(t, marked(t, caliper, 79.6, 79.9, 79.5))
	assert.Equal(t, MoreRuns, order[0])
	_, order = advise(t, marked(t, caliper, 79.6, 79.9, 79.5, 79.8))
	assert.Equal(t, LongerMove, order[0])
	stated := caliper
	stated.Accuracy = 0.3
	by, order := advise(t, marked(t, stated, 79.6, 79.6, 79.65))
	assert.Contains(t, by, MoreRuns)
	assert.NotEqual(t, MoreRuns, order[0])
}

// A test is hopeless where the half-width that endless runs would leave is above T.
func TestVerdictUpToTheFloor(t *testing.T) {
	s := marked(t, caliper, 76, 76.1, 76.05)
	for floor, want := range map[float64]Verdict{0.00501: MeasureMore, 0.00499: ChangeIt, 0.005: ChangeIt} {
		s.Floor = floor
		assert.Equal(t, want, s.verdictOf(0.005), floor)
	}
}
