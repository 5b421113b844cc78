package unit_test

import (
	"math"
	"math/big"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/unit"
)

// reads returns a check that text is read as want and that nothing of it is
// lost on the way out: String and Plain read back to the same value.
func reads[T unit.Quantity](t *testing.T, entry unit.Input[T]) func(text string, want T) {
	return func(text string, want T) {
		t.Helper()
		in := entry
		require.NoError(t, in.Entry().Set(text))
		assert.True(t, in.Given, "%q is given", text)
		assert.Equal(t, want, in.Value(), "value of %q", text)
		for _, again := range []string{in.Entry().String(), in.Entry().Plain(text)} {
			back := entry
			require.NoError(t, back.Entry().Set(again), "%q comes back as %q", text, again)
			assert.Equal(t, want, back.Value(), "%q comes back as %q", text, again)
		}
	}
}

// Variables, because constants would be multiplied without rounding.
var inch, size = 25.4, 3.15

func TestLength(t *testing.T) {
	check := reads(t, unit.Lengths.Input("mm", 0.001, 1000))
	check("80", 80)
	check("80 mm", 80)
	check("80mm", 80)
	check("80.", 80)
	check(".5", 0.5)
	check(",5", 0.5)
	check("+80", 80)
	check("  80\tmm ", 80)
	check("80,5mm", 80.5)
	check("80,5 mm.", 80.5)
	check("80.5 MM", 80.5)
	check("80.5 millimetres", 80.5)
	check("3.15 in", unit.Length(size*inch))
	check("3.15in.", unit.Length(size*inch))
	check(`3.15"`, unit.Length(size*inch))
	check("3.15″", unit.Length(size*inch))
	check("3.15”", unit.Length(size*inch))
	check("3.15''", unit.Length(size*inch))
	check("5/16 in", 7.9375) // 5*25.4/16
	check("5 / 16 in", 7.9375)
	check("5 /16in", 7.9375)
	check("5/ 16 in", 7.9375)
	check("1 5/16 in", 33.3375) // 21*25.4/16
	check("1  5/16 in", 33.3375)
	check("1\u00a05/16 in", 33.3375)
	check("1,5/2", 0.75)
	check("8 cm", 80)
	check("0.08 m", 80)
	check("80000 µm", 80) // micro sign
	check("80000 μm", 80) // Greek letter
	check("80000 microns", 80)
	check("8e1", 80)
	check("8E+1 mm", 80)
	check("800e-1mm", 80)
	check("800e−1mm", 80) // Unicode minus in the exponent
	check("0080", 80)     // leading zeros say nothing
	check("007.50", 7.5)
}

// A module, or the diametral pitch that gears in inches are marked with: 25.4 mm
// over it.
func TestModule(t *testing.T) {
	in := unit.Modules.Input("mm", 0.05, 50)
	check := reads(t, in)
	check("1", 1)
	check("0,8 mm", 0.8)
	check("m1", 1)
	check("M 1.5", 1.5)
	check("mod 0.8", 0.8)
	check("Module 0.8 mm", 0.8)
	check("24", 24)                    // as ever: without a unit it is millimetres
	check("24 DP", 1.0583333333333333) // 127/120
	check("24dp", 1.0583333333333333)
	check("DP 24", 1.0583333333333333)
	check("DP24", 1.0583333333333333)
	check("  dp\u00a024 ", 1.0583333333333333)
	check("D.P. 24", 1.0583333333333333)
	check("24 D.P.", 1.0583333333333333)
	check("24 diametral pitch", 1.0583333333333333)
	check("Diametral pitch 24", 1.0583333333333333)
	check("32 DP", 0.79375)
	check("127/2 DP", 0.4)
	check("0,508 DP", 50)
	check("508 DP", 0.05)
	check("1,000 DP", 25.4) // a thousand is out of range
	for typed, plain := range map[string]string{"DP 24": "DP 24", "24 dp": "24 dp", " DP\t0,508": "DP 0.508", "m1,5": "m1.5"} {
		require.NoError(t, in.Entry().Set(typed))
		assert.Equal(t, plain, in.Entry().Plain(typed))
		assert.Equal(t, plain, in.Entry().Typed())
	}
}

// Text → value → text, in whatever way it is marked.
func TestDiametralPitchComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 508).Draw(t, "teeth to the inch")
		text := strconv.Itoa(n)
		texts := []string{text + " DP", text + "dp", "DP " + text, "DP" + text, "dp " + text, text + " diametral pitch"}
		for _, typed := range texts {
			in := unit.Modules.Input("mm", 0.05, 50)
			require.NoError(t, in.Entry().Set(typed))
			require.Equal(t, typed, in.Entry().Plain(typed), "as it was typed")
			exactly, _ := big.NewRat(254, int64(10*n)).Float64()
			require.Equal(t, exactly, in.Number)
			again := unit.Modules.Input("mm", 0.05, 50)
			require.NoError(t, again.Entry().Set(in.Text()))
			require.Equal(t, in.Number, again.Number)
		}
	})
}

func TestLengthBareUnit(t *testing.T) {
	check := reads(t, unit.Lengths.Input("in", 0.001, 1000))
	check("3.15", unit.Length(size*inch)) // a bare number is in the entry's unit
	check("5/16", 7.9375)
	check("80 mm", 80) // a typed one wins
}

func TestGroupedNumbers(t *testing.T) {
	check := reads(t, unit.Lengths.Input("mm", 0.001, 1e9))
	check("1 000", 1000)
	check("1\u00a0000", 1000) // no-break space
	check("1\u2009000", 1000) // thin space
	check("1\u202f000 mm", 1000)
	check("1'000", 1000)
	check("1’000.5", 1000.5)
	check("1 000,5", 1000.5)
	check("1 000,500", 1000.5) // grouped before it, so this comma is a decimal mark
	check("1,000.5", 1000.5)
	check("1.000,5", 1000.5)
	check("1,000,000", 1e6)
	check("1.000.000", 1e6)
	check("1,000,000.25", 1_000_000.25)
	check("1.000.000,25", 1_000_000.25)
	check("12 345 678,9", 12_345_678.9)
	check("1.000", 1) // one point is a decimal mark, always
}

func TestSignedAngle(t *testing.T) {
	check := reads(t, unit.Angles.Input("°", -3600, 3600))
	check("-90", -90)
	check("−90°", -90) // Unicode minus
	check("- 90 deg", -90)
	check("+90 degrees", 90)
	check("-1 1/2", -1.5)
	check("0", 0)
	check("1 turn", 360)
	check("0.5 rev", 180)
	check("90º", 90) // the ordinal sign that phones offer for °
}

func TestStepAngle(t *testing.T) {
	check := reads(t, unit.StepAngles.Input("°", 0.001, 90))
	check("1.8", 1.8)
	check("1,8", 1.8)
	check("0.9°", 0.9)
	check("0.9 °", 0.9)
	check("0.9deg", 0.9)
	check("1.8°/step", 1.8)
	check("200 steps", 1.8)
	check("200 steps/rev", 1.8)
	check("200 steps per turn", 1.8)
	check("400 full steps", 0.9)
	check("48 steps", 7.5)
	check("7 1/2", 7.5)
}

func TestAngularSpeed(t *testing.T) {
	check := reads(t, unit.AngularSpeeds.Input("°/s", 0.001, 360_000))
	check("90", 90)
	check("90°/s", 90)
	check("90 deg/s", 90)
	check("90 °/min", 1.5)
	check("15 rpm", 90)
	check("15 rev/min", 90)
	check("0,25 rev/s", 90)
}

func TestSpeed(t *testing.T) {
	check := reads(t, unit.Speeds.Input("mm/s", 0.0001, 10_000))
	check("1.5 mm/s", 1.5)
	check("1.5", 1.5)
	check("90 mm/min", 1.5)
	check("90mm per min", 1.5)
	check("90 mm / min", 1.5)
	check("0.09 m/min", 1.5)
	check("2 in/s", 50.8)
	check("60 in/min", 25.4)
	check("60 ipm", 25.4)
	perMinute := reads(t, unit.Speeds.Input("mm/min", 0.0001, 10_000))
	perMinute("90", 1.5)
	perMinute("1.5 mm/s", 1.5)
}

func TestRatio(t *testing.T) {
	check := reads(t, unit.Ratios.Input("", 0.0001, 10_000))
	check("4.5", 4.5)
	check("54:12", 4.5)
	check("54 : 12", 4.5)
	check("54/12", 4.5)
	check("4,5 x", 4.5)
	check("4 1/2", 4.5)
	check("1:3", 1./3)
}

func TestStepsPer(t *testing.T) {
	perLength := reads(t, unit.StepsPerLengths.Input("steps/mm", 0.001, 1e6))
	perLength("538", 538)
	perLength("538.0 steps/mm", 538)
	perLength("538 steps per mm", 538)
	perLength("538/mm", 538)
	perLength("13665.2 steps/in", unit.StepsPerLength(13665.2/inch))
	perLength("13665.2 /inch", unit.StepsPerLength(13665.2/inch))
	perLength("13665.2 steps/inch", unit.StepsPerLength(13665.2/inch))
	perLength("5380 steps/cm", 538)
	perAngle := reads(t, unit.StepsPerAngles.Input("steps/°", 0.001, 1e6))
	perAngle("80", 80)
	perAngle("80 steps/deg", 80)
	perAngle("28800 steps/rev", 80)
}

func TestTravelPerTurn(t *testing.T) {
	check := reads(t, unit.LengthsPerTurn.Input("mm/rev", 0.0001, 10_000))
	check("8", 8)
	check("8 mm", 8)
	check("8 mm/rev", 8)
	check("8 mm per turn", 8)
	check("0.5 in/rev", 12.7)
	check("1/2 in/revolution", 12.7)
	angle := reads(t, unit.AnglesPerTurn.Input("°/rev", 0.0001, 10_000))
	angle("4", 4)
	angle("4°", 4)
	angle("4 deg/rev", 4)
}

func TestCounts(t *testing.T) {
	teeth := reads(t, unit.Teeth.Input("", 1, 2000))
	teeth("20", 20)
	teeth("20 teeth", 20)
	teeth("20T", 20)
	teeth("20.0", 20)
	teeth("2e1", 20)
	teeth("1,024", 1024) // 1.024 teeth make no sense
	starts := reads(t, unit.Starts.Input("", 1, 100))
	starts("4 starts", 4)
	micro := reads(t, unit.Microsteps.Input("", 1, 4096))
	micro("16", 16)
	micro("1/16", 16) // as printed on drivers
	micro("1 / 16", 16)
	micro("1/49", 49) // 1/(1/49) is not 49 in binary
	micro("16x", 16)
	micro("0.0625", 16)
	micro("0,125", 8) // a zero in front: never thousands
	micro("400 microsteps", 400)
}

func TestEmptyIsNotGiven(t *testing.T) {
	in := unit.Lengths.Input("mm", 1, 1000)
	check := func(text string) {
		t.Helper()
		require.NoError(t, in.Entry().Set("80"))
		require.NoError(t, in.Entry().Set(text))
		assert.False(t, in.Given)
		assert.Zero(t, in.Value())
		assert.Empty(t, in.Entry().String())
		assert.Empty(t, in.Entry().Plain(text))
	}
	check("")
	check("  ")
	check("\t\u00a0\n")
}

func TestRefusedIsNotGiven(t *testing.T) {
	in := unit.Lengths.Input("mm", 1, 1000)
	require.NoError(t, in.Entry().Set("80"))
	require.Error(t, in.Entry().Set("8Omm"))
	assert.False(t, in.Given, "the 80 from before must not stand")
	assert.Zero(t, in.Value())
	assert.Empty(t, in.Entry().String())
	assert.Equal(t, "8Omm", in.Entry().Plain("8Omm"), "what cannot be read stays as it is")
}

func TestPlain(t *testing.T) {
	in := unit.Lengths.Input("mm", 0.001, 1e9)
	check := func(text, want string) {
		t.Helper()
		assert.Equal(t, want, in.Entry().Plain(text))
	}
	check("80", "80")
	check("80,50 mm", "80.50 mm") // digits and unit as typed
	check("80,50mm", "80.50mm")
	check("5/16 in", "5/16 in")
	check("5 / 16 in", "5/16 in")
	check("1  5/16 in", "1 5/16 in")
	check("1 000,5\u00a0mm", "1000.5 mm")
	check("1.000.000", "1000000")
	check("−5e−3 mm", "−5e−3 mm") // refused by this range, so left alone
	check("+5E−3 Inches", "5e-3 Inches")
	ratio := unit.Ratios.Input("", 0.001, 1000)
	assert.Equal(t, "54:12", ratio.Entry().Plain("54 : 12"))
	assert.Equal(t, "54/12", ratio.Entry().Plain("54/12"), "a slash stays a slash")
	assert.Equal(t, "4.5 x", ratio.Entry().Plain("4,5 x"))
	teeth := unit.Teeth.Input("", 1, 2000)
	assert.Equal(t, "1024 T", teeth.Entry().Plain("1,024 T"))
}

func TestStringIsShort(t *testing.T) {
	in := unit.Lengths.Input("mm", 1e-9, 1e18)
	check := func(text, want string) {
		t.Helper()
		require.NoError(t, in.Entry().Set(text))
		assert.Equal(t, want, in.Entry().String())
	}
	check("80,50", "80.5 mm")
	check("5/16 in", "7.9375 mm")
	check("1 m", "1000 mm")
	check("1e-6", "0.000001 mm")
	check("1e-7", "1e-07 mm")
	check("1e15", "1e+15 mm")
	angle := unit.StepAngles.Input("°", 0.001, 90)
	require.NoError(t, angle.Entry().Set("200 steps"))
	assert.Equal(t, "1.8°", angle.Entry().String())
	micro := unit.Microsteps.Input("", 1, 256)
	require.NoError(t, micro.Entry().Set("1/16"))
	assert.Equal(t, "16", micro.Entry().String())
}

func TestUnitAndAbout(t *testing.T) {
	in := unit.Lengths.Input("mm", 0.1, 10_000)
	assert.Equal(t, "mm", in.Entry().Unit())
	assert.Equal(t, "a length, 0.1 to 10000 mm", in.Entry().About())
	inch := unit.Lengths.Input("in", 25.4, 254)
	assert.Equal(t, "in", inch.Entry().Unit())
	assert.Equal(t, "a length, 1 to 10 in", inch.Entry().About())
	steps := unit.StepAngles.Input("steps", 0.9, 3.6)
	assert.Equal(t, "a step angle, 100 to 400 steps", steps.Entry().About(), "the least angle is the most steps")
	teeth := unit.Teeth.Input("", 1, 1_234_567)
	assert.Equal(t, "a number of teeth, 1 to 1234567", teeth.Entry().About(), "bounds are not rounded away")
}

func TestAboutOpenRanges(t *testing.T) {
	inf := math.Inf(1)
	check := func(least, most float64, want string) {
		t.Helper()
		in := unit.Angles.Input("°", unit.Angle(least), unit.Angle(most))
		assert.Equal(t, want, in.Entry().About())
	}
	check(-360, 360, "an angle, -360 to 360°")
	check(0.5, inf, "an angle, at least 0.5°")
	check(-inf, 0.5, "an angle, at most 0.5°")
	check(-inf, inf, "an angle, any finite number")
	steps := unit.StepAngles.Input("steps", 0, 3.6)
	assert.Equal(t, "a step angle, at least 100 steps", steps.Entry().About())
}

// A ratio may be typed as 54:12, and a phone's number pad has no colon.
func TestNumeric(t *testing.T) {
	length, ratio := unit.Lengths.Input("mm", 1, 2), unit.Ratios.Input("", 1, 2)
	assert.True(t, length.Entry().Numeric())
	assert.False(t, ratio.Entry().Numeric())
	module := unit.Modules.Input("mm", 0.05, 50)
	assert.False(t, module.Entry().Numeric(), "nor the letters of 24 DP")
	assert.Equal(t, "mm", module.Entry().Unit())
}

func TestInputOfUnknownUnitIsABug(t *testing.T) {
	assert.PanicsWithValue(t, "unit: a length has no unit furlong", func() {
		unit.Lengths.Input("furlong", 1, 2)
	})
}
