package calc_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/page/calibrate"
	"striderule/calc/sheet"
)

// On paper stands all that was typed or chosen: in order, each field once, in the words of the
// page, and nothing that has no part.
func TestEntriesForPaper(t *testing.T) {
	for _, c := range []struct {
		slug, fragment string
		want           []form.Entry
	}{
		{"measure", "", nil},
		{"measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,,28.6mm&aside=,,yes&fed=70",
			[]form.Entry{{Key: "steps", Says: "538.0 steps/mm"}, {Key: "asked", Says: "80 mm"}, {Key: "mark", Says: "105 mm"}, {Key: "rest", Says: "28.7, –, 28.6mm"}, {Key: "aside", Says: "run 3"}}},
		{"measure", "v=1&steps=53O", []form.Entry{{Key: "steps", Says: "53O"}}},
		{"measure", "v=1&axis=feed", []form.Entry{{Key: "axis", Says: "Extruder"}}},
		{"measure", "v=1&trial=speeds&at=60,60,120&read=fed&fed=99,98.9,98",
			[]form.Entry{{Key: "trial", Says: "Several speeds"}, {Key: "read", Says: "Measure the fed length"}, {Key: "at", Says: "60, 60, 120 mm/min"}, {Key: "fed", Says: "99, 98.9, 98 mm"}}},
		{"swap", "v=1&changed=micro,angle&anglenew=0.9",
			[]form.Entry{{Key: "changed", Says: "Motor, Driver"}, {Key: "anglenew", Says: "0.9°"}}},
		{"parts", "v=1&name=X,Y,Z&gears=ratio,none,&ratio=3,4,",
			[]form.Entry{{Key: "name", Says: "X, Y, Z"}, {Key: "gears", Says: "By ratio, None, None"}, {Key: "ratio", Says: "3"}}},
	} {
		assert.Equal(t, c.want, calctest.Load(t, c.slug, c.fragment).Entries(), c.fragment)
	}
}

// Nothing that counts is missing on paper, and nothing there counts for nothing.
func TestEntriesAreWhatCounts(t *testing.T) {
	eachForm(t, func(t *testing.T, f *form.Form, line string) {
		listed := map[string]string{}
		last := -1
		for _, e := range f.Entries() {
			require.NotEmpty(t, e.Says, "%s: %s", line, e.Key)
			require.NotContains(t, listed, e.Key, line)
			listed[e.Key] = e.Says
			at := -1
			for i, field := range f.Fields() {
				if field.Key == e.Key {
					at = i
					require.True(t, f.Filled(field), "%s: %s", line, e.Key)
				}
			}
			require.Greater(t, at, last, "%s: in order", line)
			last = at
		}
		for _, field := range f.Fields() {
			if text := f.Entered(field); text != "" {
				require.Contains(t, listed, field.Key, line)
				if _, choice := field.Cells.At(0).(*sheet.Choice); !choice {
					require.Equal(t, text, listed[field.Key], line)
				}
			}
		}
	})
	f := calc.Load(calibrate.Page, "v=1&steps=538.0")
	f.Set("steps", 0, "")
	assert.Empty(t, f.Entries())
}
