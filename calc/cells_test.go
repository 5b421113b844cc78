package calc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
)

// Cells are as many as they were made, and those that stay keep what is in them.
func TestCellsAreCounted(t *testing.T) {
	length := sheet.LengthsOf(trial.ReadingInput())
	list := sheet.ListOf(sheet.NewText(3, ""))
	checks := sheet.NewChecks(trial.Readiness)
	for name, cells := range map[string]sheet.Cells{"column": length.Cells(), "list": &list, "checks": &checks} {
		assert.Zero(t, cells.Len(), name)
		for _, n := range []int{2, 3, 1, 0, 1} {
			cells.Resize(n)
			assert.Equal(t, n, cells.Len(), name)
		}
	}
	list.Resize(1)
	require.NoError(t, list.At(0).Set("abc"))
	list.Resize(2)
	assert.Equal(t, []string{"abc", ""}, []string{list.At(0).String(), list.At(1).String()})
	assert.Error(t, list.At(1).Set("abcd"), "a new row is like the first")
	text := sheet.NewText(1, "")
	one := sheet.One(&text)
	one.Resize(7)
	assert.Equal(t, 1, one.Len())
}

func TestChoiceBeginsWithItsDefault(t *testing.T) {
	c := sheet.Choose(sheet.Option{Word: "a", Label: "A", Hint: ""}, sheet.Option{Word: "b", Label: "B", Hint: ""})
	assert.Equal(t, "a", c.String())
	assert.True(t, c.IsDefault())
	assert.Empty(t, c.Chosen())
	require.NoError(t, c.Set(" B "))
	assert.Equal(t, "b", c.Chosen())
	require.NoError(t, c.Set(""))
	assert.Equal(t, "a", c.String())
}

// A text that is refused leaves what an empty one does: never the value before.
func TestRefusedTextLeavesNothing(t *testing.T) {
	texts := []string{"8", "1.8", "12:54", "Tr8x8(P2)", "12 x 20", "yes", "100"}
	eachPage(t, func(t *testing.T, p sheet.Page) {
		for _, field := range calc.NewForm(p).Fields() {
			field.Cells.Resize(1)
			v := field.Cells.At(0)
			require.NoError(t, v.Set(""))
			empty := v.String()
			if isFree(v) {
				texts = append(texts, "a name")
			}
			for _, o := range options(field) {
				texts = append(texts, o.Word)
			}
			accepted := false
			for _, text := range texts {
				if v.Set(text) != nil {
					continue
				}
				accepted = accepted || v.String() != empty
				if v.Set("8Omm¿{ and so on, for so long that it is too long for a text of any kind, be it a name, a line that is sent to a controller or an entry of its configuration; that makes more than two hundred characters") == nil {
					require.Fail(t, "not refused", field.Key)
				}
				assert.Equal(t, empty, v.String(), "%s after %s", field.Key, text)
			}
			assert.True(t, accepted, field.Key)
		}
	})
}

// isFree reports whether a value takes any text, or nearly.
func isFree(v sheet.Value) bool {
	switch v.(type) {
	case *sheet.Text, *sheet.Template:
		return true
	}
	return false
}
