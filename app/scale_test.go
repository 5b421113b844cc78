package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestTicksAreRoundAndInside(t *testing.T) {
	assert.Equal(t, []float64{0, 2, 4, 6, 8, 10}, ticks(span{0, 10, 0, 1}, 5))
	assert.Equal(t, []float64{-5, 0, 5}, ticks(span{-6, 6, 0, 1}, 3))
	assert.Empty(t, ticks(span{1, 1, 0, 1}, 5))
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1e5, 1e5).Draw(t, "lo")
		s := span{lo, lo + rapid.Float64Range(1e-3, 1e5).Draw(t, "width"), 0, 1}
		all := ticks(s, 5)
		require.NotEmpty(t, all)
		require.LessOrEqual(t, len(all), 6)
		for _, v := range all {
			require.GreaterOrEqual(t, v, s.lo-1e-9)
			require.LessOrEqual(t, v, s.hi+1e-9)
			require.False(t, v == 0 && math.Signbit(v), "−0")
		}
	})
}

func TestSpans(t *testing.T) {
	s := widened([]float64{2, 4}, 0.5, 100, 0)
	assert.Equal(t, span{1, 5, 100, 0}, s)
	assert.InDelta(t, 50, s.at(3), 1e-12)
	one := widened([]float64{7, 7}, 0.1, 0, 10)
	assert.InDelta(t, 5, one.at(7), 1e-9)
	assert.Equal(t, 5.0, span{1, 1, 0, 10}.at(1), "nothing is divided by zero")
	assert.True(t, widened(nil, 0, 0, 1).hi > 0)
}
