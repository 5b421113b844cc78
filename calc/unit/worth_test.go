package unit_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/unit"
)

// Every unit is worth what it is by definition.
func TestUnitsAreWorthWhatTheySay(t *testing.T) {
	reads(t, unit.Percents.Input("%", 0, 100))("5 ‰", 0.5)
	reads(t, unit.Accelerations.Input("mm/s²", 0, 1e6))("1.5 m/s²", 1500)
	reads(t, unit.Durations.Input("s", 0, 1e6))("2 min", 120)
	mass := reads(t, unit.Masses.Input("g", 0, 1e6))
	mass("1.5 kg", 1500)
	mass("250 mg", 0.25)
	reads(t, unit.Currents.Input("A", 0, 100))("800 mA", 0.8)
	inductance := reads(t, unit.Inductances.Input("mH", 0, 1e6))
	inductance("0.5 H", 500)
	inductance("320 µH", 0.32)
	resistance := reads(t, unit.Resistances.Input("Ω", 0.001, 1000))
	resistance("3.3", 3.3)
	resistance("3,3 Ω", 3.3)
	resistance("3.3 Ω", 3.3) // the sign for ohm that some keyboards have
	resistance("3.3 ohm", 3.3)
	resistance("3.3Ohms", 3.3)
	resistance("850 mΩ", 0.85)
	resistance("850 milliohm", 0.85)
	torque := reads(t, unit.Torques.Input("N·m", 0, 100))
	torque("40 N·cm", 0.4)
	torque("450 mN·m", 0.45)
}

// A travel per turn is said in the unit that its entry is in.
func TestTravelPerTurnKeepsItsUnit(t *testing.T) {
	inches := unit.LengthsPerTurn.Input("in/rev", 0.1, 254)
	assert.Equal(t, "in/rev", inches.Entry().Unit())
	assert.Contains(t, inches.Entry().About(), "10 in/rev")
	assert.Equal(t, "8 mm/rev", unit.LengthsPerTurn.Text(8))
}

// Drivers say 1/n for n microsteps, whatever n is.
func TestReciprocalsAreWhole(t *testing.T) {
	check := reads(t, unit.Microsteps.Input("", 1, 10_000))
	for n := 1; n <= 10_000; n++ {
		check("1/"+strconv.Itoa(n), unit.Count(n))
	}
}

func TestTheLongestNumber(t *testing.T) {
	zeros := strings.Repeat("0", 198)
	reads(t, unit.Lengths.Input("mm", 0.1, 1000))(zeros+"80", 80)
	refuses(t, unit.Lengths.Input("mm", 0.1, 1000))("0"+zeros+"80", unit.ErrNumber)
}

func TestMarksWithinFractionsAndGroups(t *testing.T) {
	check := reads(t, unit.Lengths.Input("mm", 0.1, 1e6))
	check("5/.5", 10)
	check("5/,5", 10)
	check("5/.05", 100)
	check("9/.9", 10)
	check("123 456", 123456)
	check("123,456.5", 123456.5)
	no := refuses(t, unit.Lengths.Input("mm", 0.1, 1000))
	no("1 5/5", unit.ErrNumber) // 1 + 1, or 15/5
	no("1'00", unit.ErrNumber)
	no("2/1e309", unit.ErrNumber)
	no("-1/1e-320", unit.ErrNumber)
	no("5x/16", unit.ErrUnit)
	no("5/.x", unit.ErrUnit)
	no("5/.-", unit.ErrUnit)
}

// What is written anew stays as it was typed, but for the marks.
func TestPlainKeepsTheGapBeforeTheUnit(t *testing.T) {
	in := unit.Lengths.Input("mm", 0.1, 1000)
	assert.Equal(t, "80.5 mm", in.Entry().Plain("80,5 mm"))
	assert.Equal(t, "80.5mm", in.Entry().Plain("80,5mm"))
}

// A refusal says the range in the unit that was typed, and does not round it away.
func TestRangeIsSaidInTheUnitTyped(t *testing.T) {
	says := func(least, most unit.Length, text, want string) {
		t.Helper()
		in := unit.Lengths.Input("mm", least, most)
		err := in.Entry().Set(text)
		require.ErrorIs(t, err, unit.ErrRange)
		assert.Equal(t, "Size: “"+text+"” is out of range. It must be "+want+".", said(t, err))
	}
	infinite := unit.Length(math.Inf(1))
	says(0.1, 1000, "40 in", "from 0.00393700787 to 39.3700787 in")
	says(1, infinite, "0.01 in", "at least 0.0393700787 in")
	says(-infinite, 1000, "40 in", "at most 39.3700787 in")
	says(0, 1000, "-1", "from 0 to 1000 mm")
	says(0.1, 1000, "0", "from 0.1 to 1000 mm")
}

// said is what a refusal says of a field.
func said(t *testing.T, err error) string {
	t.Helper()
	var e *unit.Error
	require.ErrorAs(t, err, &e)
	return e.In("Size")
}

// A sentence repeats 200 letters of what was typed, and 60 of a unit, not more.
func TestLongTextsAreClipped(t *testing.T) {
	repeats := func(text string) string {
		in := unit.Lengths.Input("mm", 0.1, 1000)
		return said(t, in.Entry().Set(text))
	}
	long := strings.Repeat("é", 200)
	assert.Contains(t, repeats(long), "“"+long+"”")
	assert.Contains(t, repeats(long+"y"), "“"+long+"…”")
	sixty := strings.Repeat("é", 60)
	assert.Contains(t, repeats("80"+sixty), "“"+sixty+"” in")
	assert.Contains(t, repeats("80"+sixty+"y"), "“"+sixty+"…” in")
}

// A tie goes to the even digit, as everywhere else.
func TestMeasuredTie(t *testing.T) {
	value, _ := unit.Measured(564.5, 26)
	assert.Equal(t, "564", value)
}
