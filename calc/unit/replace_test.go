package unit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/unit"
)

// Replaced does what the standard library's replacer does, in little code.
func TestReplaced(t *testing.T) {
	pairs := []string{" per ", "/", "º", "°", "a", "b", "aa", "c", "]", "［", "b", ""}
	rapid.Check(t, func(t *rapid.T) {
		text := strings.Join(rapid.SliceOf(rapid.SampledFrom([]string{" per ", "º", "a", "b", "]", "x", "é", " "})).Draw(t, "text"), "")
		require.Equal(t, strings.NewReplacer(pairs...).Replace(text), unit.Replaced(text, pairs...))
	})
}
