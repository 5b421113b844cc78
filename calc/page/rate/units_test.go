package rate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/form"
)

// asks returns the questions about a field of a sheet.
func asks(t *testing.T, f *form.Form, key string) string {
	t.Helper()
	var says []string
	for _, p := range f.Problems() {
		if p.Key == key {
			says = append(says, p.Says)
		}
	}
	return strings.Join(says, "\n")
}

// A controller that sends 150 pulses in a second is none: kHz were meant. The number
// keeps the meaning that it has in a link.
func TestLimitInPulsesIsAskedAbout(t *testing.T) {
	const axis = "v=1&steps=564.3&moves=feed&back=45&limit="
	f := calctest.Load(t, "rate", axis+"150")
	says := asks(t, f, "limit")
	assert.Contains(t, says, "“150” was read as 150 pulses/s")
	assert.Contains(t, says, "150 kHz")
	require.NotNil(t, f.Report().Answer)
	assert.Contains(t, calctest.Answer(f), "Too fast", "what the link means stays what it was")
	for _, plain := range []string{"150kHz", "150k", "0.15MHz", "150000", "150 pulses/s", "1000"} {
		assert.Empty(t, asks(t, calctest.Load(t, "rate", axis+strings.ReplaceAll(plain, " ", "%20")), "limit"), plain)
	}
	assert.Contains(t, asks(t, calctest.Load(t, "swap", "v=1&changed=micro&steps=538&micro=16&micronew=32&fastest=45&limit=150"), "limit"), "150 kHz")
}

// Speeds of tests are in mm/min, those of machines in mm/s: a number that only makes sense
// in the other one is asked about.
func TestSpeedsInTheOtherUnitAreAskedAbout(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=538&trial=speeds&asked=80&mark=105&at=2,4,8,2mm/min,60&rest=28.7,28.9,28.6,28.8,28.9")
	says := asks(t, f, "at")
	assert.Contains(t, says, "Feed speed in run 1: “2” was read as 2 mm/min: 100 mm take 50 minutes. Did you mean 2 mm/s?")
	assert.Contains(t, says, "run 3")
	assert.NotContains(t, says, "run 4", "the unit is written")
	assert.NotContains(t, says, "run 5", "a test may well be as slow")
	assert.NotNil(t, f.Report().Answer)
	assert.Contains(t, asks(t, calctest.Load(t, "plan", "v=1&speed=1.5"), "speed"), "1.5 mm/s?")
	assert.Contains(t, asks(t, calctest.Load(t, "rate", "v=1&steps=80&work=50&fast=9000"), "fast"), "9000 mm/min?")
	assert.Empty(t, asks(t, calctest.Load(t, "rate", "v=1&steps=80&work=50&fast=600"), "fast"))
}
