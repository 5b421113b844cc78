package calibrate_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/calc/calctest"
)

// Readings that are far off as they stand and near what was commanded when they are taken another
// way: the page asks, and nothing is to be set.
func TestReadingsMeantOtherwise(t *testing.T) {
	for name, c := range map[string]struct{ entries, asks, would string }{
		"fed, entered as what remained":     {"steps=415&asked=100&mark=120&rest=96.1,95.9,96.2", "Is that what was fed", "431.99 steps/mm"},
		"whatever the mark":                 {"steps=415&asked=100&mark=150&rest=96.1,95.9,96.2", "Is that what was fed", "431.99 steps/mm"},
		"with a ruler":                      {"steps=415&asked=100&mark=120&rest=99,98.9,99.2&tool=rule", "Is that what was fed", "419.05 steps/mm"},
		"what remained, entered as fed":     {"steps=415&asked=100&read=fed&fed=23.8,24.1,23.9", "Is that what remained to the mark", ""},
		"what remained in inches":           {"steps=415&asked=100&mark=120&rest=0.86,0.87,0.86&tool=caliper-0.01", "Were the readings in inches?", "423.16 steps/mm"},
		"a shorter test from the other end": {"steps=412&asked=60&mark=110&rest=57.5,57.4,57.6&tool=caliper-0.05", "Is that what was fed", "429.91 steps/mm"},
		"readings in inches":                {"axis=travel&steps=200&asked=100&moved=3.92,3.921,3.919", "Were the readings in inches?", "200.87 steps/mm"},
		"commanded in inches":               {"axis=travel&steps=200&asked=4&moved=99.6,99.5,99.6&tool=caliper-0.02", "Was the commanded length in inches?", "204.08 steps/mm"},
		"an angle commanded in turns":       {"axis=rotary&stepsdeg=88.8889&askeddeg=10&turned=3592,3591,3592", "Is the commanded angle in turns?", "89.095 steps/°"},
		"a dial that starts with each turn": {"axis=rotary&stepsdeg=88.8889&askeddeg=1080&turned=355,356,355", "Does the dial start again at 0", "89.275 steps/°"},
	} {
		f := calctest.Open(t, "measure", "v=1&"+c.entries)
		a := f.Report().Answer
		assert.Equal(t, "Look for a mistake first", a.Verdict.Title, name)
		assert.NotContains(t, a.Verdict.Says.String(), "set the new one for now", name)
		assert.Contains(t, a.Keep.Label, "For now, keep", name)
		ratio := calctest.Part(f, "ratio")
		assert.Contains(t, ratio, c.asks, name)
		if c.would != "" {
			assert.Regexp(t, `The setting would be `+c.would, ratio, name)
		}
	}
	still := calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=88.8889&askeddeg=3600&turned=9.97,9.98,9.97")
	assert.Contains(t, calctest.Part(still, "impossible"), "Are the readings in turns? Then multiply them by 360. The setting would be 89.127")
	assert.NotContains(t, calctest.Part(still, "impossible"), "Does the dial")
	nothing := calctest.Open(t, "measure", "v=1&axis=rotary&stepsdeg=88.8889&askeddeg=360&turned=0.2,0.1,0.1")
	assert.NotContains(t, calctest.Part(nothing, "impossible"), "turns?")
}

// What cannot be told from the figures alone is said at the answer.
func TestDoubtsAtTheAnswer(t *testing.T) {
	for entries, says := range map[string]string{
		"steps=415&asked=100&mark=200&rest=96.9,97.1,97&tool=caliper-0.02":                 "what was fed and what remained look alike",
		"steps=415&asked=100&speed=100mm/s&mark=120&rest=28.4,28.2,28.5&tool=caliper-0.02": "the drive gear may slip",
		"axis=travel&steps=92.6&asked=100&moved=99.31,99.28,99.30&tool=caliper-0.01":       "how far the carriage moved",
		"steps=1.234&asked=100&mark=120&rest=21.5,21.6,21.5":                               "“1.234” was read as 1.234 steps/mm. Did you mean 1234 steps/mm?",
	} {
		assert.Contains(t, calctest.Answer(calctest.Open(t, "measure", "v=1&"+entries)), says, entries)
		for _, other := range []string{heron, "v=1&steps=1.235&as=turn&turn=1.234&asked=80&mark=105&rest=28.7,28.9,28.6"} {
			assert.NotContains(t, calctest.Answer(calctest.Load(t, "measure", other)), says, other)
		}
	}
}

// A mark that went in says nothing of how much was fed.
func TestMarkThatWentIn(t *testing.T) {
	f := calctest.Load(t, "measure", "v=1&steps=138&asked=100&mark=120&rest=22,0,21&tool=rule")
	assert.Nil(t, f.Report().Answer)
	assert.Len(t, f.Problems(), 1)
	assert.Contains(t, f.Problems()[0].Says, "the mark went in")
	assert.NotNil(t, calctest.Open(t, "measure", "v=1&steps=138&asked=100&mark=120&rest=22,0,21&tool=rule&aside=,yes").Report())
}
