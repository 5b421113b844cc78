package measure

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestNext(t *testing.T) {
	m, err := MarkTest{Marks: Series{105}, Remaining: Series{28.7, 28.9, 28.6}, With: Instrument{Resolution: 0.05, Accuracy: 1}}.Measure()
	require.NoError(t, err)
	e, err := m.Next(80, 1)
	require.NoError(t, err)
	c, step := 80/m.Length, 0.05*0.05/6
	assert.Equal(t, 80.0, e.Value)
	assert.InEpsilon(t, math.Sqrt(m.Scatter*m.Scatter*(1+c*c/3)+step*(1+c*c)), e.U, 1e-12, "the scatter twice, the steps twice, no limits of error")
	assert.InEpsilon(t, 2*math.Pow(e.U, 4)/math.Pow(m.Scatter*m.Scatter*(1+c*c/3), 2), e.Dof, 1e-9)
	three, err := m.Next(80, 3)
	require.NoError(t, err)
	assert.InEpsilon(t, math.Sqrt(m.Scatter*m.Scatter*(1/3.0+c*c/3)+step*(1+c*c)), three.U, 1e-12)

	one, err := Repeated{Readings: Series{79}, With: caliper}.Measure()
	require.NoError(t, err)
	e, err = one.Next(80, 1)
	require.NoError(t, err)
	c = 80 / 79.0
	assert.InEpsilon(t, math.Sqrt((0.01+0.05*0.05/12)*(1+c*c)), e.U, 1e-12)
	assert.True(t, math.IsInf(e.Dof, 1))

	fails := func(want error, m Measured, commanded float64, runs int) {
		t.Helper()
		_, err := m.Next(commanded, runs)
		assert.ErrorIs(t, err, want)
	}
	fails(ErrNotFinite, m, math.NaN(), 1)
	fails(ErrLength, m, 0, 1)
	fails(ErrLength, Measured{}, 80, 1)
	fails(ErrNoReading, m, 80, 0)
	fails(ErrUnpaired, Measured{Length: 80}, 80, 1)
}
