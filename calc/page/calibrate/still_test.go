package calibrate_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/calctest"
)

// withSetting is a link of a test, with a setting of its axis.
func withSetting(test string) string {
	if strings.HasPrefix(test, "axis=rotary") {
		return "v=1&stepsdeg=20&" + test
	}
	return "v=1&steps=538&" + test
}

// Nothing moved: no setting follows, and the page says what to look at.
func TestMeasureNothingMoved(t *testing.T) {
	for _, test := range []string{
		"asked=80&mark=105&rest=105",
		"asked=80&mark=105&rest=105,105,105",
		"asked=80&read=fed&fed=0,0",
		"axis=travel&asked=80&moved=0",
		"axis=rotary&askeddeg=90&turned=0,0,0",
		"axis=travel&trip=lengths&want=20,60,100&moved=0,0,0",
		"trial=speeds&asked=80&read=fed&at=60,120,180&fed=0,0,0",
		// Next to nothing is nothing: no setting of hundreds of thousands.
		"asked=80&mark=105&rest=104.8,104.9,104.7",
		"asked=80&mark=105&rest=104.9,104.9",
		"asked=80&mark=105&rest=104.9,104.9,104.9&tool=caliper-0.05",
		"axis=travel&asked=80&moved=0.3",
	} {
		f := calctest.Open(t, "measure", withSetting(test))
		assert.Nil(t, f.Report().Answer, test)
		says := calctest.Part(f, "impossible")
		assert.Contains(t, says, "It didn't move", test)
		for _, look := range []string{"plug", "driver", "the right axis", "Switch off and wait before you touch wiring"} {
			assert.Contains(t, says, look, test)
		}
	}
	feed := calctest.Part(calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=105"), "impossible")
	assert.Contains(t, feed, "grip")
	assert.Contains(t, feed, "Cold-extrusion protection")
	travel := calctest.Part(calctest.Open(t, "measure", "v=1&axis=travel&steps=80&asked=80&moved=0"), "impossible")
	assert.NotContains(t, travel, "xtrusion")
	assert.Contains(t, travel, "pulley or coupling")
}

// The wrong way is a matter of the direction, not of the setting.
func TestMeasureWrongWay(t *testing.T) {
	for _, test := range []string{
		"asked=80&mark=105&rest=185",
		"asked=80&mark=105&rest=185,185.1,184.9",
		"asked=80&read=fed&fed=-80",
		"axis=travel&asked=80&moved=-80,-80.1",
		"axis=rotary&askeddeg=90&turned=-90",
		"axis=travel&trip=lengths&want=20,60,100&moved=-20,-60,-100",
	} {
		f := calctest.Open(t, "measure", withSetting(test))
		assert.Nil(t, f.Report().Answer, test)
		says := calctest.Part(f, "impossible")
		assert.Contains(t, says, "It moved the wrong way", test)
		assert.Contains(t, says, "direction", test)
		assert.Contains(t, says, "keep the setting", test)
	}
	assert.Contains(t, calctest.Part(calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=185"), "impossible"), "“Measure the fed length”",
		"or what was fed was entered")
}

// One such reading among good ones is a reading to look at again. Left out, it blocks nothing,
// whatever is typed there.
func TestMeasureLeftOutNeverBlocks(t *testing.T) {
	for typed, test := range map[string]struct{ key, entries string }{
		"0":     {"moved", "axis=travel&steps=80&asked=80&moved=79.9,80.1,"},
		"-80":   {"moved", "axis=travel&steps=80&asked=80&moved=79.9,80.1,"},
		"8O.1":  {"moved", "axis=travel&steps=80&asked=80&moved=79.9,80.1,"},
		"99999": {"fed", "steps=80&asked=80&read=fed&fed=79.9,80.1,"},
		"120":   {"rest", "steps=80&asked=80&mark=105&rest=25.1,24.9,"},
		"oops":  {"restagain", "steps=80&asked=80&mark=105&rest=26.1,26,25.9&restagain=25.1,24.9,"},
	} {
		f := calctest.Load(t, "measure", "v=1&"+test.entries)
		without := f.Report().Answer
		f.Set(test.key, 2, typed)
		assert.NotEmpty(t, f.ProblemAt(test.key, 2), typed)
		assert.Nil(t, f.Report().Answer, typed)
		aside := "aside"
		if test.key == "restagain" {
			aside = "asideagain"
		}
		f.Set(aside, 2, "yes")
		assert.Empty(t, f.Problems(), typed)
		assert.Equal(t, without.String(), f.Report().Answer.String(), typed)
		assert.Equal(t, typed, f.Text(test.key, 2), "nothing typed is lost")
	}
	f := calctest.Load(t, "measure", "v=1&steps=80&asked=80&mark=105&rest=25.1,105")
	assert.Contains(t, f.ProblemAt("rest", 1), "“Leave out”")
}

// After the change it may have moved the wrong way, or not at all: that is said, not passed over.
func TestMeasureCheckRunsThatDidNotMove(t *testing.T) {
	for rest, says := range map[string]string{"105": "It didn't move", "104.95,104.9": "It didn't move", "185,185": "It moved the wrong way"} {
		f := calctest.Open(t, "measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6&tool=caliper-0.05&restagain="+rest)
		assert.Contains(t, calctest.Part(f, "again"), says, rest)
	}
}
