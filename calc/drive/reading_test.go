package drive

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// first is the first explanation in words; empty if nothing fits.
func first(r RatioReading) string {
	if len(r.Fits) == 0 {
		return ""
	}
	var what []string
	for _, m := range r.Fits[0] {
		what = append(what, m.What)
	}
	return strings.Join(what, " and ")
}

func TestReadRatioNamesUsualMistakes(t *testing.T) {
	check := func(ratio, u float64, k Known, want string) {
		t.Helper()
		assert.Contains(t, first(ReadRatio(ratio, u, 0, Mistakes(k))), want, ratio)
	}
	heron := Stages{{12, 54}}
	check(0.5, 0.01, Known{}, "A 0.9° motor is configured as 1.8°.")
	check(2, 0.01, Known{}, "A 1.8° motor is configured as 0.9°.")
	check(0.252, 0.01, Known{Feed: true}, "4 times the microsteps")
	check(25.4, 0.01, Known{Feed: true}, "Inches were sent")
	check(1/4.5, 0.01, Known{Stages: heron, Feed: true}, "The gear pair 12 → 54 teeth is left out")
	check(4.5, 0.01, Known{Stages: heron, Feed: true}, "counted twice, or isn't there")
	check(1/20.25, 0.01, Known{Stages: heron, Feed: true}, "the wrong way round")
	check(1/(4.5*2.5), 0.01, Known{Stages: Stages{{12, 54}, {20, 50}}, Feed: true}, "entered as travel per motor turn")
	check(0.377, 0.005, Known{Volumetric: true, Feed: true}, "set to 2.85 mm, but you're using 1.75 mm")
	check(0.8, 0.005, Known{Output: Belt{2, 20}}, "A pulley with 16 teeth is configured as 20.")
	check(1.5, 0.005, Known{Output: Belt{2, 20}}, "A pulley with 30 teeth")
	check(1.016, 0.002, Known{Output: Belt{2, 20}}, "A belt of 2.032 mm pitch is configured as 2 mm.")
	check(4, 0.005, Known{Output: Screw{Pitch: 2, Starts: 4}}, "screw's pitch was entered as its lead")
	check(0.25, 0.005, Known{Output: Screw{Pitch: 2, Starts: 4}}, "times the microsteps")
	check(0.625, 0.005, Known{Output: Screw{Pitch: 2, Starts: 4}}, "A screw of 5 mm lead is configured as 8 mm.")
	check(0.8, 0.005, Known{}, "A pulley with 16 teeth is configured as 20.")
	check(4, 0.005, Known{}, "pitch of a four-start screw")
}

func TestReadRatioIsHonest(t *testing.T) {
	none := func(ratio, u float64, k Known) {
		t.Helper()
		assert.Empty(t, ReadRatio(ratio, u, 0, Mistakes(k)).Fits, ratio)
	}
	none(0.953, 0.005, Known{Feed: true}) // grip, no mistake
	none(1.004, 0.005, Known{})           // agrees with 1
	none(0.377, 0.005, Known{Feed: true}) // the area only where feed is counted in volume
	none(0.8, 0.005, Known{Feed: true})   // no pulley in an extruder
	none(0, 0.01, Known{})
	none(-2, 0.01, Known{})
	none(math.NaN(), 0.01, Known{})
	none(math.Inf(1), 0.01, Known{})
	none(2, 0, Known{})
	none(2, math.Inf(1), Known{})
	none(1.25, 0.001, Known{Output: Rack{1, 20}})

	// Several fit, and all of them are told.
	assert.Greater(t, len(ReadRatio(0.5, 0.01, 0, Mistakes(Known{})).Fits), 1)

	// Combinations only where no single mistake fits.
	r := ReadRatio(0.5/4.5, 0.01, 0, Mistakes(Known{Stages: Stages{{12, 54}}, Feed: true}))
	require.NotEmpty(t, r.Fits)
	require.Len(t, r.Fits[0], 2)
	assert.Contains(t, first(r), "0.9° motor")
	assert.Contains(t, first(r), "gear pair 12 → 54 teeth is left out")
	for _, f := range r.Fits {
		assert.NotEqual(t, f[0].Kind, f[1].Kind)
	}
}

func TestMistakesAreTold(t *testing.T) {
	known := Known{Stages: Stages{{12, 54}, {1, 1}, {16, 46}}, Volumetric: true, Output: Belt{2, 20}}
	for _, m := range Mistakes(known) {
		assert.NotEmpty(t, m.Kind)
		assert.NotEmpty(t, m.What)
		assert.NotEmpty(t, m.Look)
		assert.Positive(t, m.Rank)
		assert.Greater(t, math.Abs(math.Log(m.Ratio)), 1e-3, "%s changes nothing", m.What)
	}
}

// A machine with one of the mistakes is always read right, and the true one is
// among what is told.
func TestReadRatioFindsWhatIsThere(t *testing.T) {
	mistakes := Mistakes(Known{Stages: Stages{{12, 54}}, Output: Belt{2, 20}})
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(mistakes).Draw(t, "mistake")
		u := rapid.Float64Range(1e-4, 0.01).Draw(t, "u")
		off := rapid.Float64Range(-0.99, 0.99).Draw(t, "off")
		if math.Abs(math.Log(m.Ratio)+off*u) <= u {
			return // it may as well be 1
		}
		r := ReadRatio(m.Ratio*math.Exp(off*u), u, 0, mistakes)
		require.Contains(t, r.Fits, []Mistake{m})
		for i, f := range r.Fits[1:] {
			require.LessOrEqual(t, r.Fits[i][0].Rank, f[0].Rank)
		}
	})
}
