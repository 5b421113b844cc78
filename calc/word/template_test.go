package word_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/word"
)

func TestTemplate(t *testing.T) {
	for _, c := range []struct {
		template word.Template
		parts    []string
		says     string
	}{
		{"Set it.", nil, "Set it."},
		{"", []string{"n", "3"}, ""},
		{"{n} runs", []string{"n", "3"}, "3 runs"},
		{"Feed {length} at {speed}.", []string{"speed", "1 mm/s", "length", "80 mm"}, "Feed 80 mm at 1 mm/s."},
		{"{a} and {a}", []string{"a", "{b}", "b", "x"}, "{b} and {b}"}, // what is put in is not read
		{"Write {value}.", nil, "Write {value}."},
	} {
		assert.Equal(t, c.says, c.template.Fill(c.parts...), "%s", c.template)
	}
	runs := word.Counted{One: "one more run in {where}", Other: "{n} more runs in {where}"}
	assert.Equal(t, "one more run in X", runs.Fill(1, "where", "X"))
	assert.Equal(t, "0 more runs in X", runs.Fill(0, "where", "X"))
	assert.Equal(t, "12 more runs in X", runs.Fill(12, "where", "X"))
}

func TestTogether(t *testing.T) {
	assert.Empty(t, word.Together())
	assert.Empty(t, word.Together("", ""))
	assert.Equal(t, "One. Two.", word.Together("", "One.", "", "Two.", ""))
}
