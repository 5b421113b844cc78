package calibrate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/calctest"
)

// Numbers that were tuned on the setting that is corrected change with it. After a swap they may
// be older: the page asks, and multiplies nothing until it knows.
func TestMeasureAsksWhenItWasTuned(t *testing.T) {
	touches := func(entries string) string {
		return calctest.Part(calctest.Open(t, "measure", "v=1&steps=538&asked=80&read=fed&tool=caliper-0.05&"+entries), "touches")
	}
	const near, far = "fed=76.3,76.1,76.4&retract=5", "fed=56,56.1,56&retract=5"
	assert.Contains(t, touches(near), "Retraction, if you tuned it with this setting: 5 mm before, 4.77 mm after.")
	asks := touches(far)
	assert.Contains(t, asks, "what you tuned before a part was changed stays")
	assert.Contains(t, asks, "Needed for what becomes of what you tuned: tuned")
	assert.NotContains(t, asks, "multiply")
	assert.NotContains(t, asks, "5 mm before")
	assert.Contains(t, touches(far+"&tuned=after"), "Retraction, if you tuned it with this setting: 5 mm before, 3.5 mm after.")
	for _, c := range []string{near, far} {
		before := touches(c + "&tuned=before")
		assert.Contains(t, before, "you tuned before a part was changed stay")
		assert.NotContains(t, before, "5 mm before")
		assert.NotContains(t, before, "multiply")
	}
	// A mistake is found first: what the setting becomes is not known yet.
	assert.Contains(t, touches("fed=40,40.1,40&retract=5&tuned=after"), "leave them until the setting is calibrated")

	place := func(moved string) string {
		return calctest.Part(calctest.Open(t, "measure", "v=1&axis=travel&steps=83&asked=80&tool=caliper-0.05&place=120&moved="+moved), "touches")
	}
	assert.Contains(t, place("79,79.05,79"), "Position found by jogging with this setting")
	assert.NotContains(t, place("56,56.05,56"), "120 mm before")
	assert.Contains(t, place("56,56.05,56"), "tuned")
}

// Calibrate and the page of the flow say the same of a flow that was tuned with a wrong setting.
func TestMeasureAndFlowAgreeOnFlow(t *testing.T) {
	const both = "It made up for the wrong setting: start there and tune it again."
	f := calctest.Open(t, "measure", heron+"&tool=caliper-0.05&flow=0.97")
	assert.Contains(t, calctest.Part(f, "touches"), "0.97 before, 0.925 after. "+both)
	flow := calctest.Open(t, "flow", "v=1&scale=verified&flow=1.05&width=0.45&layer=0.2&walls=4&thick=1.74,1.76,1.74&tool=caliper-0.02")
	assert.Contains(t, flow.Report().String(), both)
	assert.NotContains(t, flow.Report().String(), "starting from 100%")
}
