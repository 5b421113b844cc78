package machine_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/calctest"
	"striderule/calc/logbook"
	"striderule/calc/machine"
)

const testOfHeron = "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest="

func TestBefore(t *testing.T) {
	entry := func(rest string) logbook.Entry { return saved("Heron", "feed", testOfHeron+rest) }
	first, second := "28.7,28.9,28.6", "28.2,28.8" // variances by hand: 7/300 and 0.18
	pooled := math.Sqrt((2*7./300 + 0.18) / 3)
	for what, c := range map[string]struct {
		sheet   string
		entries []logbook.Entry
		tests   int
		sd      float64
	}{
		"none":                       {"28.5", nil, 0, 0},
		"one":                        {"28.5", []logbook.Entry{entry(first)}, 1, math.Sqrt(7. / 300)},
		"two":                        {"28.5", []logbook.Entry{entry(first), entry(second)}, 2, pooled},
		"saved twice":                {"28.5", []logbook.Entry{entry(first), entry(first), entry(second)}, 2, pooled},
		"saved before it was done":   {"28.5", []logbook.Entry{entry(first), entry("28.7,28.9"), entry(second)}, 2, pooled},
		"this one itself":            {first, []logbook.Entry{entry(first), entry(second)}, 1, math.Sqrt(0.18)},
		"this one before it went on": {first, []logbook.Entry{entry("28.7,28.9"), entry(second)}, 1, math.Sqrt(0.18)},
		"a slip in it mended":        {"28.7,28.8,28.6", []logbook.Entry{entry(first), entry(second)}, 1, math.Sqrt(0.18)},
		"written otherwise":          {"28.70,28.9mm,28.6", []logbook.Entry{entry(first), entry(second)}, 1, math.Sqrt(0.18)},
		"a run taken out":            {"28.9,28.6", []logbook.Entry{entry(first), entry(second)}, 1, math.Sqrt(0.18)},
		"mended and saved again":     {"28.5", []logbook.Entry{entry("28.7,28.9,28.5"), entry(first)}, 1, math.Sqrt(0.04)},
		"no scatter":                 {"28.5", []logbook.Entry{entry("28.4,28.4,28.4")}, 0, 0},
		"a single run":               {"28.5", []logbook.Entry{entry("28.2")}, 0, 0},
		"another length":             {"28.5", []logbook.Entry{saved("Heron", "feed", "v=1&steps=538&asked=100&mark=125&tool=caliper-0.05&rest="+first)}, 0, 0},
		"another tool":               {"28.5", []logbook.Entry{saved("Heron", "feed", "v=1&steps=538&asked=80&mark=105&tool=rule-1&rest="+first)}, 0, 0},
		"another page":               {"28.5", []logbook.Entry{{Page: "convert", Sheet: "v=1&from=steps&value=415"}, {Page: "nosuch"}}, 0, 0},
	} {
		f := calctest.Load(t, "measure", testOfHeron+c.sheet)
		require.True(t, f.Report().Scatter.Wanted, what)
		got, n := machine.Before(machine.TestsIn(c.entries), f)
		assert.Equal(t, c.tests, n, what)
		assert.InDelta(t, c.sd, got.SD, 1e-12, what)
	}
	many := calctest.Load(t, "measure", testOfHeron+"28.7,28.9,28.6,28.8,28.7")
	assert.False(t, many.Report().Scatter.Wanted, "five runs show their own")
	known := calctest.Load(t, "measure", testOfHeron+"28.7&spread=0.1")
	assert.False(t, known.Report().Scatter.Wanted)
	rotary := calctest.Load(t, "measure", "v=1&axis=rotary&stepsdeg=8.9&askeddeg=360&turned=358.5,358.9,358.7")
	assert.Equal(t, "spreaddeg", rotary.Report().Scatter.Key)
	assert.InDelta(t, 0.2, rotary.Report().Scatter.SD, 1e-9)
}
