package measure

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestUsualInstrumentsForAngles(t *testing.T) {
	coarser := 360.0
	for _, i := range AngleInstruments {
		require.NoError(t, i.Check(), i.ID)
		assert.Less(t, i.Resolution, coarser, "from the coarse to the fine")
		coarser = i.Resolution
		assert.Zero(t, i.Accuracy, "not stated")
		assert.Zero(t, i.Reach, "full turns are counted")
		found, ok := InstrumentAmong(AngleInstruments, i.ID)
		assert.True(t, ok)
		assert.Equal(t, i, found)
		_, ok = InstrumentOf(i.ID)
		assert.False(t, ok, "it reads no lengths: %s", i.ID)
	}
	_, ok := InstrumentAmong(AngleInstruments, "rule")
	assert.False(t, ok)
	// What advice rests on.
	protractor, rim, gauge := AngleInstruments[0], AngleInstruments[1], AngleInstruments[2]
	assert.Equal(t, []float64{1, 0.3, 0.5}, []float64{protractor.Resolution, protractor.Eye, protractor.Usual})
	assert.Equal(t, []float64{0.5, 0.15, 0.5}, []float64{rim.Resolution, rim.Eye, rim.Usual})
	assert.Equal(t, []float64{0.1, 0.05, 0.2}, []float64{gauge.Resolution, gauge.Eye, gauge.Usual})
}
