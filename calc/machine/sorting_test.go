package machine_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/logbook"
	"striderule/calc/machine"
)

// saved is an entry of the log under names, with a sheet.
func saved(name, axis, sheet string) logbook.Entry {
	return logbook.Entry{Date: "2026-11-25", Machine: name, Axis: axis, Page: "measure", Sheet: sheet}
}

func TestUnsortedIn(t *testing.T) {
	heron := read(t, "v=1&steps=415&machine=Heron&axisname=Extruder&id=h1&set=2026-11-25")
	plover2 := read(t, "v=1&steps=80&axis=travel&machine=Plover%202&axisname=Y&id=p2&set=2026-11-25")
	axes := []machine.Axis{heron, plover2}
	for _, c := range []struct {
		name, axis, sheet string
		sorted            bool
		likely            machine.Axis
	}{
		{"Heron", "feed", "v=1&id=h1", true, nil},
		{"Plover 2", "Y", "v=1&id=h1", true, nil}, // as the person saved it
		{"Once called so", "feed", "v=1&id=h1", false, heron},
		{"Heron", "feed", "v=1", false, heron}, // from before there were machines, or of another Heron
		{"Heron", "Extruder", "v=1&id=x9", false, heron},
		{"Plover 2", "Y", "v=1", false, plover2},
		{"heron", "feed", "v=1", false, heron},
		{"Hreon", "feed", "v=1", false, heron},
		{"Herons", "", "v=1", false, heron},
		{"Plover", "Y", "v=1", false, nil}, // another machine may have no number
		{"Plover 1", "Y", "v=1", false, nil},
		{"plover-2", "y", "v=1", false, plover2},
		{"Plover 2", "X", "v=1", false, nil},
		{"", "", "v=1", false, nil},
	} {
		unsorted := machine.UnsortedIn([]logbook.Entry{saved(c.name, c.axis, c.sheet)}, axes)
		if c.sorted {
			assert.Empty(t, unsorted, "%s · %s", c.name, c.axis)
			continue
		}
		require.Len(t, unsorted, 1, "%s · %s", c.name, c.axis)
		assert.Equal(t, c.likely, unsorted[0].Likely, "%s · %s", c.name, c.axis)
	}
	flow := saved("Heron", "feed", "v=1&walls=0.46")
	flow.Page = "flow"
	assert.Empty(t, machine.UnsortedIn([]logbook.Entry{flow}, axes), "it corrects no setting")
	same, _ := heron.SortIn(flow)
	assert.Equal(t, flow, same)
	groups := machine.UnsortedIn([]logbook.Entry{saved("A", "X", ""), saved("B", "X", ""), saved("A", "X", "")}, axes)
	require.Len(t, groups, 2)
	assert.Len(t, groups[0].Entries, 2)

	e := saved("Hreon", "E", "v=1&steps=415")
	in, ok := heron.SortIn(e)
	assert.True(t, ok)
	assert.Equal(t, "Heron", in.Machine)
	assert.Equal(t, "feed", in.Axis)
	assert.Equal(t, e.Sheet+"&machine=Heron&axisname=Extruder&id=h1", in.Sheet)
	assert.Empty(t, machine.UnsortedIn([]logbook.Entry{in}, axes))
	assert.Equal(t, heron, machine.AxisOf(in, axes))
}

// TestSheetToldItsAxis holds that an old sheet opens whole with its axis, and asks which setting
// it was where the axis has another by now.
func TestSheetToldItsAxis(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05")
	require.NotNil(t, f.Report().Answer)
	heron := read(t, "v=1&steps=564&machine=Heron&axisname=Extruder&id=h1&set=2026-11-25")
	old := f.ShareFragment()
	require.Contains(t, old, link.ClaimKey+"=")

	in, ok := heron.SortIn(saved("Heron", "feed", old))
	require.True(t, ok)
	again := calctest.Load(t, "measure", in.Sheet)
	assert.Empty(t, again.Problems())
	assert.Equal(t, "h1", again.MachineText("id"))
	assert.Equal(t, f.Report().Answer.Value, again.Report().Answer.Value)
	check, said := again.Check()
	assert.Equal(t, form.Same, check, said)
	again.SetCurrent(heron.Current())
	assert.True(t, again.IsSettingAsked())
	twice, _ := heron.SortIn(in)
	assert.Equal(t, in, twice, "once and for all")

	// What was changed in it is not made good.
	broken, _ := heron.SortIn(saved("Heron", "feed", strings.Replace(old, "28.9", "28.8", 1)))
	was, _ := calctest.Load(t, "measure", strings.Replace(old, "28.9", "28.8", 1)).Check()
	is, _ := calctest.Load(t, "measure", broken.Sheet).Check()
	assert.Equal(t, form.Differs, was)
	assert.Equal(t, was, is)
	assert.Contains(t, broken.Sheet, link.TextOf(link.Split(old), link.ClaimKey))

	_, ok = heron.SortIn(saved("Heron", "feed", "v=1&steps=415&line="+strings.Repeat("x", link.MostLink-30)))
	assert.False(t, ok, "a link has no room for it")
	long := saved("Heron", "feed", "v=1&steps=415")
	long.Note = strings.Repeat("x", logbook.MostEntry-100)
	_, ok = heron.SortIn(long)
	assert.False(t, ok, "the log has none")
	assert.True(t, machine.IsSameSheet(old, in.Sheet))
	assert.False(t, machine.IsSameSheet(old, broken.Sheet))
	assert.False(t, machine.IsSameSheet(strings.Replace(in.Sheet, "id=h1", "id=h2", 1), in.Sheet))
}
