package axis

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

func TestTeethAreRead(t *testing.T) {
	check := func(text, back, plain string, want ...unit.Count) {
		t.Helper()
		var teeth Teeth
		require.NoError(t, teeth.Set(text))
		assert.Equal(t, want, teeth.Value, text)
		assert.Equal(t, back, teeth.String())
		assert.Equal(t, plain, teeth.Plain(text))
	}
	check("12", "12", "12", 12)
	check(" 12 x 20 ", "12 x 20", "12x20", 12, 20)
	check("12×20", "12 x 20", "12x20", 12, 20)
	check("12*20 X 7", "12 x 20 x 7", "12x20x7", 12, 20, 7)
	check("12 teeth x 20 teeth", "12 x 20", "12x20", 12, 20)
	check("12t", "12", "12", 12)
	check("", "", "")
	check("  ", "", "")
}

func TestTeethAreRefused(t *testing.T) {
	refuse := func(text, sentence string) {
		t.Helper()
		teeth := Teeth{[]unit.Count{5}}
		err := teeth.Set(text)
		require.ErrorIs(t, err, errTeeth, text)
		var e *unit.Error
		require.ErrorAs(t, err, &e)
		assert.Equal(t, "Teeth: “"+text+"” "+sentence, e.In("Teeth"))
		assert.Nil(t, teeth.Value, "nothing stale stays")
		assert.Equal(t, text, teeth.Plain(text), "what was typed stays")
	}
	const like = "isn't a list of teeth. Write it like 12, or 12 x 20 for two stages, in order from the motor."
	for _, text := range []string{"x", "12 x", "x 12", "12 20", "12,5", "12.5", "12:54", "12 + 20", "1O", "12 mm", "twelve", "12, 20"} {
		refuse(text, like)
	}
	const outside = "is out of range. Each number of teeth must be from 1 to 10000."
	refuse("0", outside)
	refuse("12 x 0", outside)
	refuse("-3", outside)
	refuse("10001", outside)
	refuse("2x2x2x2x2x2x2", "has more than 6 stages. Write the product of some of them as one stage.")
}

func TestStagesOf(t *testing.T) {
	stages, ok := StagesOf(Teeth{[]unit.Count{16, 20}}, Teeth{[]unit.Count{46, 36}})
	assert.True(t, ok)
	assert.Equal(t, drive.Stages{{Driving: 16, Driven: 46}, {Driving: 20, Driven: 36}}, stages, "stage by stage")
	for _, sides := range [][2]Teeth{{}, {{[]unit.Count{12}}, {}}, {{}, {[]unit.Count{12}}}, {{[]unit.Count{12, 20}}, {[]unit.Count{54}}}} {
		_, ok := StagesOf(sides[0], sides[1])
		assert.False(t, ok)
	}
}

// FuzzTeeth reads any text: nothing panics, what is accepted can be, and reads
// the same from its own text and from a link.
func FuzzTeeth(f *testing.F) {
	for _, text := range []string{"", "12", "12 x 20", "12×20", "x", "12,5", "1e3x2", "0x10", "1x1x1x1x1x1x1", "12 teeth"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var teeth, again, linked Teeth
		if err := teeth.Set(text); err != nil {
			require.ErrorIs(t, err, errTeeth)
			require.Nil(t, teeth.Value)
			return
		}
		require.LessOrEqual(t, len(teeth.Value), mostStages)
		for _, n := range teeth.Value {
			require.True(t, n >= 1 && n <= 10_000)
		}
		require.NoError(t, again.Set(teeth.String()))
		require.Equal(t, teeth.Value, again.Value)
		plain := teeth.Plain(text)
		require.NoError(t, linked.Set(plain))
		require.Equal(t, teeth.Value, linked.Value)
		require.Equal(t, plain, linked.Plain(plain))
	})
}
