package calc_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// A remark stands beside a cell that is on view and has nothing wrong, one beside each.
func TestRemarksStandBesideCells(t *testing.T) {
	sheets := sheetLines(t)
	n := 0
	eachPage(t, func(t *testing.T, p sheet.Page) {
		for _, s := range sheets[p.Slug] {
			fragment, edits, _ := strings.Cut(s.line, " > ")
			f := calc.Load(p, fragment)
			typeInto(f, edits)
			checkRemarks(t, f)
			n += len(f.Report().Remarks)
		}
	})
	assert.Greater(t, n, 50)
}

func checkRemarks(t *testing.T, f *form.Form) {
	t.Helper()
	type cell struct {
		key string
		row int
	}
	seen := map[cell]bool{}
	for _, m := range f.Report().Remarks {
		field, ok := f.Field(m.Key)
		require.True(t, ok, m.Key)
		assert.True(t, f.Visible(field, m.Row), m.Key)
		assert.NotEmpty(t, f.Text(m.Key, m.Row), m.Key)
		assert.Empty(t, f.ProblemAt(m.Key, m.Row), m.Key)
		assert.NotEmpty(t, m.Says)
		assert.NotContains(t, m.Says, "{")
		assert.False(t, seen[cell{m.Key, m.Row}], "two remarks beside %s", m.Key)
		seen[cell{m.Key, m.Row}] = true
		assert.Equal(t, m, f.RemarkAt(m.Key, m.Row))
	}
}

// Screws, belts and gears say how they were read, on every page that asks for them; teeth
// and ratios with the motor side first.
func TestPartsSayHowTheyWereRead(t *testing.T) {
	for _, c := range []struct{ slug, entries, key, says string }{
		{"parts", "out=screw&screw=Tr10x4(P2)", "screw", "Lead 4 mm, 2 starts."},
		{"parts", "out=screw&screw=Tr10x4", "screw", "Lead 4 mm, 1 start."},
		{"parts", "out=screw&screw=2.5", "screw", "Lead 2.5 mm, 1 start."},
		{"parts", "out=screw&screw=20%20tpi%20x%202", "screw", "Lead 2.54 mm, 2 starts."},
		{"parts", "out=differential&first=M8x1.25&second=M6x1", "second", "Lead 1 mm, 1 start."},
		{"parts", "pitch=2&teeth=18", "teeth", "One turn moves 36 mm."},
		{"parts", "out=belt2&pitch=2&teeth=18", "teeth", "One turn moves 18 mm."},
		{"parts", "out=rack&module=24%20DP&pinion=15", "pinion", "One turn moves 49.872783 mm."},
		{"parts", "out=drum&drum=20&cable=0.8", "cable", "One turn moves 65.345127 mm."},
		{"parts", "gears=pairs&driving=12&driven=54", "driven", "12 → 54 teeth: ratio 4.5."},
		{"parts", "gears=pairs&driving=12x20&driven=54x40", "driven", "12 x 20 → 54 x 40 teeth: ratio 9."},
		{"parts", "gears=ratio&ratio=4.5", "ratio", "The motor turns 4.5 times for one output turn."},
		{"convert", "ratio=54:12", "ratio", "12 → 54 teeth: ratio 4.5."},
		{"rate", "as=output&output=26.8&ratio=54:12", "ratio", "12 → 54 teeth: ratio 4.5."},
		{"measure", "gears=pairs&driving=12&driven=54", "driven", "12 → 54 teeth: ratio 4.5."},
		{"swap", "changed=out&out=screw&screw=2.5%20x%202", "screw", "Lead 5 mm, 2 starts."},
		{"swap", "changed=gears&gears=none&gearsnew=pairs&drivingnew=12&drivennew=54", "drivennew", "12 → 54 teeth: ratio 4.5."},
		{"swap", "changed=micro&outkept=roller&rollerkept=8.5", "rollerkept", "One turn moves 26.703538 mm."},
	} {
		f := calctest.Open(t, c.slug, "v=1&"+c.entries)
		assert.Equal(t, report.Remark{Key: c.key, Says: c.says}, f.RemarkAt(c.key, 0), c.entries)
		assert.Contains(t, f.Report().String(), "As read\n")
		assert.Contains(t, f.Report().String(), c.key+": "+c.says)
	}
	f := calctest.Open(t, "convert", "v=1&ratio=1")
	assert.Empty(t, f.Report().Remarks)
	assert.NotContains(t, f.Report().String(), "As read")
	f = calctest.Load(t, "parts", "v=1&out=screw&screw=Tr10")
	assert.Empty(t, f.RemarkAt("screw", 0).Says, "nothing was read")
}

// What turns the output faster than the motor is asked about where it is typed, with what
// would be the other way round.
func TestGearsTheWrongWayRoundAreDoubtedAtTheField(t *testing.T) {
	for _, c := range []struct{ slug, entries, key, says string }{
		{"convert", "ratio=12:54", "ratio", "The output turns 4.5 times for one motor turn. If it's the other way, write 54:12."},
		{"convert", "ratio=0.2", "ratio", "The output turns 5 times for one motor turn. If it's the other way, write 5."},
		{"parts", "gears=pairs&driving=54&driven=12", "driven", "54 → 12 teeth: the output turns 4.5 times for one motor turn. If it's the other way, the motor side has 12."},
		{"measure", "gears=pairs&driving=54&driven=12", "driven", "54 → 12 teeth: the output turns 4.5 times for one motor turn. If it's the other way, the motor side has 12."},
		{"swap", "changed=gears&gears=ratio&ratio=12:54&gearsnew=none", "ratio", "The output turns 4.5 times for one motor turn. If it's the other way, write 54:12."},
	} {
		f := calctest.Open(t, c.slug, "v=1&"+c.entries)
		m := f.RemarkAt(c.key, 0)
		assert.Equal(t, c.says, m.Says, c.entries)
		assert.True(t, m.Doubt)
		var notes []string
		for _, n := range f.Report().Notes() {
			notes = append(notes, n.Line.String())
		}
		assert.Contains(t, notes, c.says)
	}
	// One stage of several may.
	f := calctest.Open(t, "measure", "v=1&gears=pairs&driving=20,12&driven=10,54")
	assert.Equal(t, report.Remark{Key: "driven", Says: "20 → 10 teeth: ratio 0.5."}, f.RemarkAt("driven", 0))
	assert.Equal(t, "12 → 54 teeth: ratio 4.5.", f.RemarkAt("driven", 1).Says)
}

// A pair can be typed where a ratio is asked for, in the order in which pairs stand everywhere.
func TestRatioIsReadFromAPair(t *testing.T) {
	for _, typed := range []string{"12 → 54", "12->54", "12 -> 54"} {
		f := calctest.Load(t, "convert", "v=1&steps=538&angle=1.8&micro=16")
		f.Set("ratio", 0, typed)
		assert.Empty(t, f.Problems(), typed)
		assert.Equal(t, "12 → 54 teeth: ratio 4.5.", f.RemarkAt("ratio", 0).Says)
		assert.Contains(t, f.Fragment(), "&ratio=54:12")
	}
	f := calctest.Load(t, "convert", "v=1&ratio=12%E2%86%92")
	assert.NotEmpty(t, f.ProblemAt("ratio", 0))
}

// Where a setting is asked for beside motor, microsteps or gears, it says that it belongs to
// these.
func TestSettingsBelongToTheirMicrosteps(t *testing.T) {
	for _, slug := range []string{"swap", "convert", "parts", "measure"} {
		f := calctest.Load(t, slug, "")
		steps, _ := f.Field("steps")
		assert.Contains(t, steps.Hint, "microsteps", slug)
		micro, _ := f.Field("micro")
		assert.Contains(t, micro.Hint, "right only at these", slug)
	}
}
