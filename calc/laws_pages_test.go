package calc_test

import (
	"testing"

	"striderule/calc"
	"striderule/calc/calctest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// verified begins a sheet of the flow of a calibrated extruder.
const verified = "v=1&scale=verified&"

// A small machine can hardly be told that does not give a number.
func TestPartsStayFinite(t *testing.T) {
	const big, small = "10000x10000x10000x10000x10000x10000", "1x1x1x1x1x1"
	for _, gears := range []string{"driving=" + big + "&driven=" + small, "driving=" + small + "&driven=" + big} {
		for _, element := range []string{"angle=0.01&micro=4096&gears=pairs&" + gears + "&pitch=100&teeth=1000", "out=roller&angle=90&micro=1&gears=pairs&" + gears + "&roller=0.1"} {
			f := calctest.Open(t, "parts", "v=1&"+element)
			checkFigures(t, f.Page, f.Report())
			assert.Contains(t, calctest.Answer(f), "outside the usual range for small machines", element)
		}
	}
}

func TestRateStaysFinite(t *testing.T) {
	for _, entries := range []string{
		"steps=1000000&angle=90&micro=1&work=10000mm/s&fast=0.0001&accel=1000000&limit=100pulses/s&supply=1000&inductance=0.001&current=0.001",
		"as=turn&turn=0.0001&angle=0.01&micro=4096&work=10000mm/s&limit=100MHz&share=all&supply=1&inductance=1000&current=100&hold=100",
		"as=output&output=10000&angle=90&micro=1&ratio=0.0001&work=0.0001",
		"steps=80&angle=0.01&micro=1&work=1&supply=1000&inductance=1000&current=100&resistance=9.9999999999999",
		"steps=80&angle=90&micro=1&work=1&supply=1000&inductance=0.001&current=0.001&resistance=0.001",
	} {
		f := calctest.Open(t, "rate", "v=1&"+entries)
		checkFigures(t, f.Page, f.Report())
		require.NotNil(t, f.Report().Answer, entries)
	}
}

func TestFlowRefuses(t *testing.T) {
	p, _ := calc.PageOf("flow")
	refuses := func(entries, key string, row int, says string) {
		t.Helper()
		f := calc.Load(p, verified+entries)
		assert.Contains(t, f.ProblemAt(key, row), says)
		assert.Nil(t, f.Report().Answer)
	}
	refuses("width=0.15&layer=0.2&thick=0.45", "width", 0, "is less than the layer height, 0.2 mm")
	refuses("width=0.45&layer=0.2&thick=0.45,0.04", "thick", 1, "“0.04 mm” is too thin. Even with next to no plastic this wall would be 0.0429 mm thick")
	refuses("width=0.45&layer=0.2&walls=4&fused=gaps&thick=1.2", "thick", 0, "next to no plastic")
	refuses("flow=97&width=0.45&layer=0.2&thick=0.45", "flow", 0, "Flow used: “97” is out of range")
	refuses("width=0.45&layer=0.2&walls=1.5&thick=0.45", "walls", 0, "Lines in the wall")
	refuses("by=mass&used=4.12&set=1.75&density=1.24&weighed=12", "used", 0, "50")
	f := calctest.Open(t, "flow", verified+"width=0.45&layer=0.2&thick=0.45,0.04,0.46&aside=,yes&tool=caliper-0.01")
	assert.Contains(t, calctest.Part(f, "readings"), "too thin", "left out it stays in sight")
	// The far ends of what can be typed.
	for _, entries := range []string{
		"spacing=0.02&layer=0.01&flow=5&thick=200&tool=caliper-0.01", "by=mass&flow=5&used=50&set=0.5&density=0.5&weighed=20000,19999.9,20000&balance=0.001",
		"width=0.2&layer=0.2&thick=0.05,0.05,0.05&tol=0.001&tool=own&step=0.001",
	} {
		f := calctest.Open(t, "flow", verified+entries)
		checkFigures(t, p, f.Report())
		assert.NotNil(t, f.Report().Answer, entries)
	}
	// Readings that are no better known than to half of what they say.
	for _, entries := range []string{
		"width=10&layer=5&walls=20&thick=200,0.01m&tool=tape", "by=diameter&set=10&across=0.2,20&tool=rule",
		"by=mass&flow=0.2&included=with&used=5000m&set=10&density=20&weighed=0.01&balance=100",
		"width=0.2&layer=0.2&thick=0.05,0.05,0.05&tol=0.001&tool=caliper-0.01",
	} {
		f := calctest.Open(t, "flow", verified+entries)
		checkFigures(t, p, f.Report())
		assert.Nil(t, f.Report().Answer, entries)
		assert.Contains(t, calctest.Part(f, "impossible"), "nothing can be said yet", entries)
	}
}
