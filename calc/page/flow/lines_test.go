package flow_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/page/flow"
	"striderule/calc/report"
)

// A wall of three lines that is just three line widths thick: what it should be depends on how
// the slicer counts, and the page does not choose for the person.
const sideWall = verified + "flow=0.96&width=0.45&layer=0.2&walls=3&thick=1.35,1.36,1.34,1.35&tool=caliper-0.02&limits=0.01"

func TestFlowAsksHowLinesAreSpaced(t *testing.T) {
	f := calctest.Open(t, "flow", sideWall)
	assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
	assert.Equal(t, "How are the lines spaced?", calctest.Verdict(f).Title)
	assert.InEpsilon(t, 0.96*3*(0.45-r02)/(1.35-r02), calctest.Out(t, f, "flow"), 1e-12, "as the link means")
	assert.InEpsilon(t, 0.96, calctest.Out(t, f, "sideflow"), 1e-12)
	assert.Contains(t, calctest.Verdict(f).Says.String(), "1.264 mm")
	assert.Contains(t, calctest.Verdict(f).Says.String(), "1.35 mm")
	assert.Contains(t, calctest.Answer(f), "Don't enter this yet.")
	assert.NotContains(t, calctest.Part(f, "next"), "Set the flow")

	f.Set("lines", 0, "side")
	assert.Equal(t, report.Leave, calctest.Verdict(f).Kind)
	assert.InEpsilon(t, 1.35, calctest.Out(t, f, "wanted"), 1e-12)
	assert.InEpsilon(t, 0.96, calctest.Out(t, f, "flow"), 1e-12)
	f.Set("lines", 0, "overlap")
	assert.Equal(t, report.Change, calctest.Verdict(f).Kind, "who knows is not asked")

	// With gaps it is the outermost line alone that tells.
	gaps := calctest.Open(t, "flow", sideWall+"&fused=gaps")
	assert.Equal(t, "How are the lines spaced?", calctest.Verdict(gaps).Title)
	gaps.Set("lines", 0, "side")
	gaps.Set("thick", 0, "1.26")
	gaps.Set("thick", 1, "1.26")
	gaps.Set("thick", 2, "1.26")
	gaps.Set("thick", 3, "1.26")
	assert.InEpsilon(t, 0.96*0.45/0.36, calctest.Out(t, gaps, "flow"), 1e-9)
}

// Too thick by either count, or right by the one in use: there is nothing to ask.
func TestFlowAsksOnlyWhereOneWayFitsFarBetter(t *testing.T) {
	for _, thick := range []string{"1.50,1.51,1.49", "1.26,1.27,1.26,1.26", "1.31,1.30,1.31"} {
		f := calctest.Open(t, "flow", verified+"width=0.45&layer=0.2&walls=3&tool=caliper-0.02&limits=0.01&thick="+thick)
		assert.NotEqual(t, "How are the lines spaced?", calctest.Verdict(f).Title, thick)
	}
	one := calctest.Open(t, "flow", verified+"width=0.45&layer=0.2&thick=0.49,0.48,0.49&tool=caliper-0.01&limits=0.001")
	assert.NotEqual(t, "How are the lines spaced?", calctest.Verdict(one).Title, "of one line both are the same")
}

// Side by side the layer height does not matter.
func TestFlowSideBySide(t *testing.T) {
	f := calctest.Open(t, "flow", verified+"flow=0.96&width=0.45&walls=3&lines=side&thick=1.42,1.43,1.41&tool=caliper-0.02&limits=0.01")
	assert.InEpsilon(t, 0.96*1.35/1.42, calctest.Out(t, f, "flow"), 1e-12)
	assert.Equal(t, report.Change, calctest.Verdict(f).Kind)
	f.Set("layer", 0, "0.2")
	assert.InEpsilon(t, 0.2*0.45, calctest.Out(t, f, "bead"), 1e-12)
	assert.Contains(t, calctest.Part(calctest.Open(t, "flow", verified+"lines=side&thick=1.42"), "missing"), "width")
}

// A spacing says how wide lines are, and another width that was typed is not passed over.
func TestFlowTellsWidthFromSpacing(t *testing.T) {
	f := calctest.Open(t, "flow", verified+"flow=0.96&width=0.45&layer=0.2&walls=3&spacing=0.45&thick=1.35,1.36,1.34,1.35&tool=caliper-0.02")
	assert.Equal(t, "Line width and spacing disagree", calctest.Verdict(f).Title)
	assert.Contains(t, calctest.Verdict(f).Says.String(), "0.4929 mm")
	assert.Contains(t, calctest.Verdict(f).Says.String(), "not 0.45 mm")
	assert.Contains(t, calctest.Answer(f), "Don't enter this yet.")
	assert.InEpsilon(t, 0.96*3*0.45/(1.35-r02), calctest.Out(t, f, "flow"), 1e-12, "as the link means")
	f.Set("spacing", 0, "0.407")
	assert.NotEqual(t, "Line width and spacing disagree", calctest.Verdict(f).Title, "they say the same")
	f.Set("width", 0, "")
	f.Set("spacing", 0, "0.45")
	assert.NotEqual(t, "Line width and spacing disagree", calctest.Verdict(f).Title, "nothing else was typed")
}

// What was printed with the old steps/mm says nothing about the flow with the new one.
func TestFlowAsksWhenItWasPrinted(t *testing.T) {
	const wall = verified + "width=0.45&layer=0.2&walls=4&thick=1.78,1.76,1.78,1.76&tool=caliper-0.02&limits=0.01"
	f := calctest.Open(t, "flow", wall)
	require.NotNil(t, f.Report().Answer)
	assert.Contains(t, calctest.Answer(f), "printed after the extruder was calibrated")
	f.Set("printed", 0, "after")
	assert.NotContains(t, calctest.Answer(f), "printed after the extruder was calibrated")
	assert.Equal(t, report.Change, calctest.Verdict(f).Kind)
	f.Set("printed", 0, "before")
	assert.Nil(t, f.Report().Answer)
	assert.Contains(t, calctest.Part(f, "printed"), "Print it again")
	diameter := calctest.Open(t, "flow", verified+"by=diameter&set=1.75&across=1.75,1.75")
	assert.NotContains(t, calctest.Answer(diameter), "calibrated", "nothing was printed")
}

// Two lines are measured, and one is what was left blank: nobody changes a flow to a half.
func TestFlowAsksHowManyLines(t *testing.T) {
	const wall = verified + "width=0.45&layer=0.2&thick=0.88,0.87,0.89&walls="
	two := 2 * (0.45 - r02)
	for _, given := range []string{"", "1"} {
		f := calctest.Open(t, "flow", wall+given)
		assert.Equal(t, report.MeasureMore, calctest.Verdict(f).Kind)
		assert.Equal(t, "Is this a wall of 2 lines?", calctest.Verdict(f).Title)
		assert.Equal(t, "The readings fit 2 lines far better than 1: then the wall should be 0.8571 mm thick, and the new flow is 0.9726. "+
			"Count the lines, and fill in “Lines in the wall”.", calctest.Verdict(f).Says.String())
		assert.InEpsilon(t, (0.45-r02)/(0.88-r02), calctest.Out(t, f, "flow"), 1e-12, "as the link means")
		assert.InDelta(t, 0.9726, two/(0.88-r02), 5e-5)
		assert.Equal(t, 1., f.Report().Answer.Keep.Value)
		assert.Contains(t, calctest.Answer(f), "Don't enter this yet.")
		assert.NotContains(t, f.Report().String(), "Set the flow")
	}
	f := calctest.Open(t, "flow", wall+"2")
	assert.NotContains(t, calctest.Verdict(f).Title, "lines?")
	assert.Equal(t, "Is this a wall of 2 lines?", calctest.Verdict(calctest.Open(t, "flow", wall+"4")).Title)
	one := calctest.Open(t, "flow", strings.Replace(wall, "0.88,0.87,0.89", "0.86", 1))
	assert.Equal(t, "Is this a wall of 2 lines?", calctest.Verdict(one).Title, "one reading shows it as well")
	for _, thick := range []string{"0.45,0.46,0.45", "0.6,0.61,0.6", "0.68,0.67,0.68", "0.35,0.36,0.35", "3,3.01,3"} {
		f := calctest.Open(t, "flow", strings.Replace(wall, "0.88,0.87,0.89", thick, 1))
		assert.NotContains(t, calctest.Verdict(f).Title, "lines?", thick)
	}
	assert.NotContains(t, calctest.Verdict(calctest.Open(t, "flow", flow.Page.Example)).Title, "lines?")
}
