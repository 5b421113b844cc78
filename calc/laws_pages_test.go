package calc_test

import (
	"testing"

	"striderule/calc"
	"striderule/calc/calctest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// verified begins a sheet of the flow whose scale is right.
const verified = "v=1&scale=verified&"

// A small machine can hardly be told that does not give a number.
func TestPartsStayFinite(t *testing.T) {
	const big, small = "10000x10000x10000x10000x10000x10000", "1x1x1x1x1x1"
	for _, gears := range []string{"driving=" + big + "&driven=" + small, "driving=" + small + "&driven=" + big} {
		for _, element := range []string{"angle=0.01&micro=4096&gears=pairs&" + gears + "&pitch=100&teeth=1000", "out=roller&angle=90&micro=1&gears=pairs&" + gears + "&roller=0.1"} {
			f := calctest.Open(t, "parts", "v=1&"+element)
			checkFigures(t, f.Page, f.Report())
			assert.Contains(t, calctest.Answer(f), "outside what we take small machines to have", element)
		}
	}
}

func TestRateStaysFinite(t *testing.T) {
	for _, entries := range []string{
		"steps=1000000&angle=90&micro=1&work=10000&fast=0.0001&accel=1000000&limit=100&supply=1000&inductance=0.001&current=0.001",
		"as=turn&turn=0.0001&angle=0.01&micro=4096&work=10000&limit=100MHz&share=all&supply=1&inductance=1000&current=100&hold=100",
		"as=output&output=10000&angle=90&micro=1&ratio=0.0001&work=0.0001",
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
	refuses("width=0.45&layer=0.2&thick=0.45,0.04", "thick", 1, "“0.04 mm” is not more than 0.0429 mm")
	refuses("width=0.45&layer=0.2&walls=4&fused=gaps&thick=1.2", "thick", 0, "with no plastic at all")
	refuses("flow=97&width=0.45&layer=0.2&thick=0.45", "flow", 0, "Flow factor now is “97”")
	refuses("width=0.45&layer=0.2&walls=1.5&thick=0.45", "walls", 0, "Lines side by side")
	refuses("by=mass&used=4.12&set=1.75&density=1.24&weighed=12", "used", 0, "50")
	f := calctest.Open(t, "flow", verified+"width=0.45&layer=0.2&thick=0.45,0.04,0.46&aside=,yes&tool=caliper-0.01")
	assert.Contains(t, calctest.Part(f, "readings"), "none at all", "set aside it stays on view")
	// The far ends of what can be typed.
	for _, entries := range []string{
		"width=10&layer=5&walls=20&thick=200,0.01m&tool=tape", "spacing=0.02&layer=0.01&flow=5&thick=200&tool=caliper-0.01",
		"by=mass&flow=0.2&included=with&used=5000m&set=10&density=20&weighed=0.01&balance=100", "by=diameter&set=10&across=0.2,20&tool=rule",
		"width=0.2&layer=0.2&thick=0.05,0.05,0.05&tol=0.001&tool=caliper-0.01",
	} {
		f := calctest.Open(t, "flow", verified+entries)
		checkFigures(t, p, f.Report())
		assert.NotNil(t, f.Report().Answer, entries)
	}
}
