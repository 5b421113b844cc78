package unit_test

import (
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	_ "striderule/calc/calctest/cases"
	"striderule/calc/unit"
)

// Text out reads back to the identical value, over the whole range of every kind.
func TestStringReadsBack(t *testing.T) {
	for _, e := range entries() {
		t.Run(e.name, rapid.MakeCheck(func(t *rapid.T) {
			v := rapid.Float64Range(e.least, e.most).Draw(t, "v")
			if e.whole {
				v = math.Round(v)
			}
			text := e.write(v)
			got, given, err := e.read(text)
			require.NoError(t, err, text)
			require.True(t, given, text)
			require.Equal(t, v, got, text)
			require.Equal(t, text, e.write(got))
		}))
	}
}

// typed draws texts as people type them: most can be read.
func typed(symbols []string) *rapid.Generator[string] {
	gap := rapid.SampledFrom([]string{"", "", " ", "\u00a0", "\u2009", "  "})
	digits := rapid.StringMatching(`[0-9]{1,7}`)
	group := rapid.SampledFrom([]string{" ", "\u00a0", "\u202f", "'", ",", "."})
	unitText := rapid.SampledFrom(append(symbols, "furlong"))
	return rapid.Custom(func(t *rapid.T) string {
		var b strings.Builder
		b.WriteString(rapid.SampledFrom([]string{"", "", "", "-", "−", "+"}).Draw(t, "sign"))
		switch rapid.IntRange(0, 5).Draw(t, "form") {
		case 0:
			b.WriteString(digits.Draw(t, "whole"))
		case 1, 2:
			b.WriteString(digits.Draw(t, "whole") + rapid.SampledFrom([]string{".", ","}).Draw(t, "mark") + digits.Draw(t, "fraction"))
		case 3: // grouped by three
			g := group.Draw(t, "group")
			b.WriteString(rapid.StringMatching(`[1-9][0-9]{0,2}`).Draw(t, "first"))
			for range rapid.IntRange(1, 2).Draw(t, "groups") {
				b.WriteString(g + rapid.StringMatching(`[0-9]{3}`).Draw(t, "three"))
			}
			if rapid.Bool().Draw(t, "has fraction") {
				b.WriteString(rapid.SampledFrom([]string{".", ","}).Draw(t, "mark") + digits.Draw(t, "fraction"))
			}
		case 4:
			b.WriteString(digits.Draw(t, "numerator") + gap.Draw(t, "gap") + rapid.SampledFrom([]string{"/", ":"}).Draw(t, "slash") + digits.Draw(t, "denominator"))
		case 5:
			b.WriteString(digits.Draw(t, "whole") + " " + rapid.StringMatching(`[0-9]{1,2}/[0-9]{1,2}`).Draw(t, "fraction"))
		}
		if rapid.IntRange(0, 4).Draw(t, "exponent") == 0 {
			b.WriteString(rapid.StringMatching(`[eE][-−+]?[0-9]`).Draw(t, "exponent"))
		}
		b.WriteString(gap.Draw(t, "gap") + unitText.Draw(t, "unit"))
		return b.String()
	})
}

// Plain changes no value, and once plain a text stays as it is.
func TestPlainKeepsTheValue(t *testing.T) {
	tried, read := 0, 0
	for _, e := range entries() {
		t.Run(e.name, rapid.MakeCheck(func(t *rapid.T) {
			tried++
			text := typed(e.symbols).Draw(t, "text")
			plain := e.plain(text)
			require.Equal(t, plain, e.plain(plain), "plain again")
			v, given, err := e.read(text)
			if err != nil {
				require.Equal(t, text, plain)
				return
			}
			read++
			require.True(t, given)
			require.NotContains(t, plain, ",")
			again, _, err := e.read(plain)
			require.NoError(t, err, plain)
			require.Equal(t, v, again, plain)
		}))
	}
	assert.Greater(t, read, tried/5, "the generator hardly makes a text that can be read")
}

// With any number of decimals but three, comma and point are the same.
func TestCommaIsPoint(t *testing.T) {
	for _, e := range entries() {
		t.Run(e.name, rapid.MakeCheck(func(t *rapid.T) {
			text := rapid.StringMatching(`-?[0-9]{1,4}\.([0-9]{0,2}|[0-9]{4,6})`).Draw(t, "text")
			point, _, errPoint := e.read(text)
			comma, _, errComma := e.read(strings.Replace(text, ".", ",", 1))
			require.Equal(t, point, comma)
			require.Equal(t, cause(errPoint), cause(errComma))
		}))
	}
}

func cause(err error) error {
	var e *unit.Error
	if errors.As(err, &e) {
		return e.Cause
	}
	return err
}

// With exactly three decimals the range decides, and where it does not, nobody does.
func TestThreeDecimals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[1-9][0-9]{0,2},[0-9]{3}`).Draw(t, "text")
		least := rapid.Float64Range(0.001, 2000).Draw(t, "least")
		most := least * rapid.Float64Range(1, 5000).Draw(t, "wide")
		in := unit.Lengths.Input("mm", unit.Length(least), unit.Length(most))
		decimal, _ := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		thousands, _ := strconv.ParseFloat(strings.Replace(text, ",", "", 1), 64)
		isDecimal := least <= decimal && decimal <= most
		isThousands := least <= thousands && thousands <= most
		err := in.Entry().Set(text)
		switch {
		case isDecimal && isThousands:
			require.ErrorIs(t, err, unit.ErrAmbiguous)
		case isDecimal:
			require.NoError(t, err)
			require.Equal(t, decimal, float64(in.Value()))
		case isThousands:
			require.NoError(t, err)
			require.Equal(t, thousands, float64(in.Value()))
		default:
			require.ErrorIs(t, err, unit.ErrRange)
		}
	})
}

// The same number in another unit is the exact factor times as much.
func TestUnitsAgree(t *testing.T) {
	numbers := rapid.Custom(func(t *rapid.T) float64 {
		return float64(rapid.IntRange(1, 1_000_000).Draw(t, "n")) / math.Pow10(rapid.IntRange(0, 4).Draw(t, "decimals"))
	})
	check := func(name string, e entry, symbol string, times, over float64) {
		t.Helper()
		t.Run(name, rapid.MakeCheck(func(t *rapid.T) {
			n := numbers.Draw(t, "n")
			got, _, err := e.read(unit.Full(n) + " " + symbol)
			require.NoError(t, err)
			require.Equal(t, n*times/over, got)
		}))
	}
	const big = 1e15
	length := entryOf("", unit.Lengths, "mm", 0, big)
	check("mm", length, "mm", 1, 1)
	check("in", length, "in", 25.4, 1)
	check("inch mark", length, `"`, 25.4, 1)
	check("cm", length, "cm", 10, 1)
	check("m", length, "m", 1000, 1)
	check("µm", length, "µm", 1, 1000)
	angle := entryOf("", unit.Angles, "°", 0, big)
	check("deg", angle, "deg", 1, 1)
	check("rev", angle, "rev", 360, 1)
	speed := entryOf("", unit.Speeds, "mm/s", 0, big)
	check("mm/s", speed, "mm/s", 1, 1)
	check("mm/min", speed, "mm/min", 1, 60)
	check("m/min", speed, "m/min", 1000, 60)
	check("in/s", speed, "in/s", 25.4, 1)
	check("in/min", speed, "in/min", 25.4, 60)
	steps := entryOf("", unit.StepsPerLengths, "steps/mm", 0, big)
	check("steps/mm", steps, "steps/mm", 1, 1)
	check("steps/in", steps, "steps/in", 1, 25.4)
	check("steps/cm", steps, "steps/cm", 1, 10)
	stepsAngle := entryOf("", unit.StepsPerAngles, "steps/°", 0, big)
	check("steps/°", stepsAngle, "steps/°", 1, 1)
	check("steps/rev", stepsAngle, "steps/rev", 1, 360)
	turn := entryOf("", unit.LengthsPerTurn, "mm/rev", 0, big)
	check("mm/rev", turn, "mm/rev", 1, 1)
	check("in/turn", turn, "in/turn", 25.4, 1)

	step := entryOf("", unit.StepAngles, "°", 0, big)
	t.Run("steps a turn", rapid.MakeCheck(func(t *rapid.T) {
		n := numbers.Draw(t, "n")
		got, _, err := step.read(unit.Full(n) + " steps")
		require.NoError(t, err)
		require.Equal(t, 360/n, got)
	}))
}

// FromBase undoes reading, within rounding, for every unit of every kind.
func TestFromBase(t *testing.T) {
	read := func(u unit.Unit, v float64) float64 {
		k := unit.Kind[unit.Length]{Units: []unit.Unit{u}}
		in := k.Input(u.Symbol, 1e-12, 1e12)
		require.NoError(t, in.Entry().Set(unit.Full(v)))
		return float64(in.Value())
	}
	var units []unit.Unit
	for _, us := range [][]unit.Unit{
		unit.Lengths.Units, unit.Angles.Units, unit.StepAngles.Units, unit.Speeds.Units, unit.AngularSpeeds.Units, unit.Ratios.Units, unit.Percents.Units,
		unit.StepsPerLengths.Units, unit.StepsPerAngles.Units, unit.LengthsPerTurn.Units, unit.AnglesPerTurn.Units,
		unit.Teeth.Units, unit.Starts.Units, unit.Microsteps.Units,
	} {
		units = append(units, us...)
	}
	for _, u := range units {
		for _, v := range []float64{0.001, 1, 3.7, 1234.5} {
			assert.InEpsilon(t, v, u.FromBase(read(u, v)), 1e-15, "%s", u.Symbol)
		}
	}
}
