package view

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestDecimalPointsStandBelowEachOther(t *testing.T) {
	const s = "\u2007"
	assert.Equal(t, []string{s + s + s, s + s, "", s, ""}, leads([]string{"1.50", "-2", "1450 steps/mm", "100", "–"}))
	assert.Equal(t, []string{"", "", ""}, leads([]string{"99.5", "−1.2", "54:12"}), "a ratio is no number")
	assert.Equal(t, []string{"", ""}, leads([]string{"", "run 1"}))
	assert.Empty(t, leads(nil))
}
