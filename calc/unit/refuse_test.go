package unit_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/unit"
)

// refuses returns a check that text is refused for the given cause.
func refuses[T unit.Quantity](t *testing.T, entry unit.Input[T]) func(text string, cause error) {
	return func(text string, cause error) {
		t.Helper()
		in := entry
		err := in.Entry().Set(text)
		require.Error(t, err, "%q was read as %v", text, in.Value())
		assert.ErrorIs(t, err, cause)
		for _, other := range []error{unit.ErrNumber, unit.ErrUnit, unit.ErrRange, unit.ErrWhole, unit.ErrAmbiguous} {
			assert.Equal(t, other == cause, errors.Is(err, other), "%q: %v", text, err)
		}
		var e *unit.Error
		require.ErrorAs(t, err, &e)
		assert.Equal(t, text, e.Text)
		says := e.In("Size")
		assert.True(t, strings.HasPrefix(says, "Size: “"), says)
		assert.NotContains(t, says, "{", "all parts are there")
		assert.Regexp(t, ` (Write|It must be) .+\.$`, says, "it says what would be right")
	}
}

func TestModuleRefused(t *testing.T) {
	in := unit.Modules.Input("mm", 0.05, 50)
	check := refuses(t, in)
	for _, text := range []string{"DP", "DP.5", "DP,5", "DP -24", "P 24", "tpi 20", "m.5", "DP 24 24 5"} {
		check(text, unit.ErrNumber)
	}
	for _, text := range []string{"24 P", "24 pitch", "20 tpi", "DP 24 mm", "m 1 DP", "24 DP DP", "24 per inch", "1 module"} {
		check(text, unit.ErrUnit)
	}
	for _, text := range []string{"0.5 DP", "509 DP", "DP 600", "m 51", "0", "0 DP"} {
		check(text, unit.ErrRange)
	}
	says := func(text string) string {
		var e *unit.Error
		require.ErrorAs(t, in.Entry().Set(text), &e)
		return e.In("Module of the rack")
	}
	assert.Equal(t, "Module of the rack: “600 DP” is out of range. It must be from 0.508 to 508 DP.", says("600 DP"))
	assert.Equal(t, "Module of the rack: “P 24” isn't a number. Write it like 0.8 mm or 24 DP.", says("P 24"))
	assert.Equal(t, "Module of the rack: “tpi” in “20 tpi” isn't a unit this field takes. Write it like 0.8 mm or 24 DP.", says("20 tpi"))
}

func TestLengthRefused(t *testing.T) {
	check := refuses(t, unit.Lengths.Input("mm", 0.1, 1000))
	for _, text := range []string{
		"mm", "x", "NaN", "nan", "Inf", "-Inf", "infinity", "∞", ".", ",", "-", "+", "/", "e5", "½",
		"1..2", "1,,2", "1,2,3", "1.2.3", "1.2,3.4", "1,2.3,4", "1,00,000", "1 00", "12 34", "80 5", "1234 567", "1,0000,000",
		"0,000,001", "0 500", "1. 5", "1, 000", "1.5,000",
		"5/0", "0/0", "1 5/0", "5/16/2", "1 2 5/16", "1.5 5/16", "1e1 5/16", "./5",
		"1 600/5", // 1600/5 or 1 + 600/5
		"1 000/5", // 1000/5 or 1 + 0/5
		"1,000/5", // 1/5 or 1000/5
		"5/1,000", // 5 or 5/1000
		"1e999", "-1e999", "1e5e5", "1e1.5", "1e1,5", "1e309/2", "1/1e-320", "9999999999999999e308 1/2",
		"--5", "+-5", "−−5", "-−5",
		"٨٠", // digits of another script
	} {
		check(text, unit.ErrNumber)
	}
	for _, text := range []string{
		"8Omm", "80 furlongs", "80 m m s", "80 mm 5", "80 kg", "80%", "80 mm/s", "80°", "1_000", "0x10", "5-6", "5 -6",
		"80 e3", "80e", "1½", "54:12", "80\x00", "80\xff", "5/", "5/.", "5/mm",
	} {
		check(text, unit.ErrUnit)
	}
	for _, text := range []string{"-5", "−5 mm", "0", "0.0 mm", "-0", "1e-999", "0/5", "0.09", "1000.1", "2 m", "1e300 in", "40 in", "-1e308 in"} {
		check(text, unit.ErrRange)
	}
}

func TestOtherKindsRefused(t *testing.T) {
	step := refuses(t, unit.StepAngles.Input("°", 0.001, 90))
	step("0 steps", unit.ErrRange) // would be infinitely coarse
	step("-200 steps", unit.ErrRange)
	step("1.8 mm", unit.ErrUnit)
	ratio := refuses(t, unit.Ratios.Input("", 0.0001, 10_000))
	ratio("54:0", unit.ErrNumber)
	ratio("54:12:3", unit.ErrNumber)
	ratio("54:12/3", unit.ErrNumber)
	ratio("5 4:12", unit.ErrNumber) // 54:12 that something came into, not five and a third
	ratio(":12", unit.ErrNumber)
	ratio("54:", unit.ErrUnit)
	ratio("54:12 mm", unit.ErrUnit)
	teeth := refuses(t, unit.Teeth.Input("", 1, 500))
	teeth("20.5", unit.ErrWhole)
	teeth("20,5", unit.ErrWhole)
	teeth("61/2", unit.ErrWhole)
	teeth("0.5", unit.ErrRange)
	teeth("0", unit.ErrRange)
	teeth("-20", unit.ErrRange)
	teeth("1,024", unit.ErrWhole) // 1024 lies outside, and 1.024 is not whole
	teeth("1e300", unit.ErrRange)
	micro := refuses(t, unit.Microsteps.Input("", 1, 256))
	micro("0", unit.ErrRange)
	micro("1/0", unit.ErrNumber)
	micro("1/512", unit.ErrRange)
	micro("0.3", unit.ErrWhole) // 1/0.3 is not whole either
	micro("2.5", unit.ErrWhole)
	micro("1e-320", unit.ErrRange) // its reciprocal is infinite
}

func TestRefusalSentences(t *testing.T) {
	lengths := unit.Lengths.Input("mm", 0.1, 10_000)
	teeth := unit.Teeth.Input("", 1, 500)
	micro := unit.Microsteps.Input("", 1, 256)
	ratio := unit.Ratios.Input("", 0.001, 1000)
	step := unit.StepAngles.Input("°", 0.5, 90)
	check := func(set func(string) error, text, want string) {
		t.Helper()
		assert.Equal(t, want, said(t, set(text)))
	}
	check(lengths.Entry().Set, "abc", "Size: “abc” isn't a number. Write it like 80 mm or 1.75 mm.")
	check(lengths.Entry().Set, " 8Omm", "Size: “Omm” in “8Omm” isn't a unit this field takes. Write it like 80 mm or 1.75 mm.")
	check(lengths.Entry().Set, "80 furlongs", "Size: “furlongs” in “80 furlongs” isn't a unit this field takes. Write it like 80 mm or 1.75 mm.")
	check(lengths.Entry().Set, "-5", "Size: “-5” is out of range. It must be from 0.1 to 10000 mm.")
	check(lengths.Entry().Set, "0", "Size: “0” is out of range. It must be from 0.1 to 10000 mm.")
	check(lengths.Entry().Set, "20000", "Size: “20000” is out of range. It must be from 0.1 to 10000 mm.")
	check(lengths.Entry().Set, "20 m", "Size: “20 m” is out of range. It must be from 0.0001 to 10 m.") // in the unit that was typed
	check(lengths.Entry().Set, "1,000", "Size: “1,000” could mean 1.000 or 1000. Write one of these.")
	check(lengths.Entry().Set, "1,000 mm", "Size: “1,000 mm” could mean 1.000 mm or 1000 mm. Write one of these.")
	check(teeth.Entry().Set, "20.5", "Size: “20.5” isn't a whole number. Write it like 20.")
	check(micro.Entry().Set, "512", "Size: “512” is out of range. It must be from 1 to 256.")
	check(ratio.Entry().Set, "54:x", "Size: “:x” in “54:x” isn't a unit this field takes. Write it like 4.5 or 54:12.")
	check(step.Entry().Set, "1800 steps", "Size: “1800 steps” is out of range. It must be from 4 to 720 steps.")
	check(step.Entry().Set, "fast", "Size: “fast” isn't a number. Write it like 1.8° or 200 steps.")
	check(lengths.Entry().Set, "{field}", "Size: “{field}” isn't a number. Write it like 80 mm or 1.75 mm.") // what is typed is not read
	assert.EqualError(t, new(lengths).Entry().Set("abc"), "“abc”: not-a-number")
}

func TestAmbiguousComma(t *testing.T) {
	const text = "1,000"
	within := func(least, most unit.Length) unit.Input[unit.Length] { return unit.Lengths.Input("mm", least, most) }
	reads(t, within(0.1, 999))(text, 1)     // 1000 is outside: a decimal
	reads(t, within(0.1, 999.999))(text, 1) // just outside
	reads(t, within(2, 5000))(text, 1000)   // 1 is outside: thousands
	reads(t, within(1.001, 1000))(text, 1000)
	refuses(t, within(1, 1000))(text, unit.ErrAmbiguous) // both bounds included
	refuses(t, within(0.1, 5000))(text, unit.ErrAmbiguous)
	refuses(t, within(2, 999))(text, unit.ErrRange) // neither

	both := within(0.001, 1e9)
	check := func(text, a, b string) {
		t.Helper()
		refuses(t, both)(text, unit.ErrAmbiguous)
		assert.Equal(t, "Size: “"+text+"” could mean "+a+" or "+b+". Write one of these.", said(t, new(both).Entry().Set(text)))
	}
	check("7,684", "7.684", "7684")
	check("12,500", "12.500", "12500")
	check("123,456", "123.456", "123456")
	check("7,684 in", "7.684 in", "7684 in")
	check("7,684in", "7.684in", "7684in")
	check("1,000e1", "1.000e1", "10000")

	ok := reads(t, both)
	ok("0,125", 0.125) // a zero in front: never ambiguous
	ok("00,125", 0.125)
	ok("01,125", 1.125)
	ok(",125", 0.125)
	ok("1,0000", 1)          // four digits
	ok("1,00", 1)            // two
	ok("1234,567", 1234.567) // four in front: no grouping
	ok("1.000", 1)

	minus := unit.Angles.Input("°", -5000, 5000)
	refuses(t, minus)("-1,000", unit.ErrAmbiguous)
	refuses(t, minus)("−1,000°", unit.ErrAmbiguous)
	reads(t, unit.Angles.Input("°", -500, 500))("-1,000", -1)

	// 1 step a turn is 360°, 1000 steps are 0.36°
	reads(t, unit.StepAngles.Input("°", 0.001, 90))("1,000 steps", 0.36)
	// a count: 1.000 is whole, 1.024 is not
	refuses(t, unit.Teeth.Input("", 1, 2000))("1,000", unit.ErrAmbiguous)
	reads(t, unit.Teeth.Input("", 1, 2000))("1,024", 1024)
	// a 16th is 16 microsteps; 62.5 are none
	reads(t, unit.Microsteps.Input("", 1, 2000))("6,250e-2", 16)
	// 2.000 microsteps are whole; so are 2000
	refuses(t, unit.Microsteps.Input("", 1, 2000))("2,000", unit.ErrAmbiguous)
}

func TestRangeIncludesItsBounds(t *testing.T) {
	const least, most = 0.1, 1234.5
	ok := reads(t, unit.Lengths.Input("mm", least, most))
	no := refuses(t, unit.Lengths.Input("mm", least, most))
	ok(unit.Full(least), least)
	ok(unit.Full(most), most)
	up, down := math.Nextafter(least, 1), math.Nextafter(most, 0)
	ok(unit.Full(up), unit.Length(up))
	ok(unit.Full(down), unit.Length(down))
	no(unit.Full(math.Nextafter(least, 0)), unit.ErrRange)
	no(unit.Full(math.Nextafter(most, 2000)), unit.ErrRange)

	zero := unit.Lengths.Input("mm", 0, 10)
	reads(t, zero)("0", 0)
	refuses(t, zero)(unit.Full(math.Nextafter(0, -1)), unit.ErrRange)
	below := unit.Angles.Input("°", -10, -1)
	refuses(t, below)("0", unit.ErrRange)
	reads(t, below)("-10", -10)
}

// An entry without bounds still takes finite values only.
func TestInfiniteRangeTakesFiniteValues(t *testing.T) {
	open := unit.StepAngles.Input("°", 0, unit.Angle(math.Inf(1)))
	check := refuses(t, open)
	check("0 steps", unit.ErrRange)
	check("1e999", unit.ErrNumber)
	check("1e-320 steps", unit.ErrRange)
	lengths := unit.Lengths.Input("mm", unit.Length(math.Inf(-1)), unit.Length(math.Inf(1)))
	refuses(t, lengths)("1e308 m", unit.ErrRange)
	refuses(t, lengths)("-1e308 in", unit.ErrRange)
	for _, err := range []error{new(open).Entry().Set("0 steps"), new(lengths).Entry().Set("1e308 m")} {
		assert.NotContains(t, said(t, err), "Inf")
		assert.NotContains(t, said(t, err), "NaN")
	}
}

func TestHugeTexts(t *testing.T) {
	in := unit.Lengths.Input("mm", 0.1, 1000)
	check := func(text string, cause error) {
		t.Helper()
		start := time.Now()
		err := new(in).Entry().Set(text)
		assert.ErrorIs(t, err, cause)
		assert.Less(t, time.Since(start), time.Second)
		assert.Less(t, len(said(t, err)), 1000, "the sentence does not repeat it all")
		assert.Equal(t, text, in.Entry().Plain(text))
	}
	const n = 1 << 20
	check(strings.Repeat("9", n), unit.ErrNumber)
	check("1"+strings.Repeat(" ", n)+"2", unit.ErrNumber)
	check("1"+strings.Repeat(" ", n)+"mm", unit.ErrNumber)
	check(strings.Repeat("1,000", n/5), unit.ErrNumber)
	check("80 "+strings.Repeat("m", n), unit.ErrNumber)
	check(strings.Repeat("é", n), unit.ErrNumber)
	// zeros that a spreadsheet might leave are fine
	require.NoError(t, new(in).Entry().Set("80."+strings.Repeat("0", 50)+" mm"))
}
