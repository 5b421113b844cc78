// Command cover holds what the pages promise against simulated machines whose true error is
// known: how often a 95 % interval holds it, how often a verdict is wrong, how often what was
// said of more runs comes true. It prints the tables, and ends with 1 if one is worse than it
// may be. Seeded: the same seed gives the same tables.
//
//	go run ./scripts/gauge/cover [-tests 20000] [-seed 1] [-only one,lines]
package main

import (
	"flag"
	"fmt"
	"math"
	"os"
	"strings"
	"time"
)

// A table writes its lines, and is true if each is as good as it may be.
type table struct {
	name, about string
	write       func(r run) bool
}

// run is how many tests are simulated for a line of a table, and from which seed.
type run struct {
	tests int
	seed  uint64
}

// luck is how far the share in % of tests that are so may lie by chance beside the true one:
// four standard deviations.
func (r run) luck(percent float64) float64 {
	return 4 * math.Sqrt(percent*(100-percent)/float64(r.tests))
}

// least and most are what a share in % may be, if the true one is at least, or at most, so much.
func (r run) least(percent float64) float64 { return percent - r.luck(percent) }
func (r run) most(percent float64) float64  { return percent + r.luck(percent) }

var tables = []table{
	{"one", "one length: coverage of the 95 % interval, worst of 160 mixes of scatter, accuracy and kind", oneLength},
	{"lines", "lines of 3 to 5 points, and both sides: coverage", lines},
	{"speeds", "several speeds: coverage, and what is said of the speed", speeds},
	{"tools", "sheets whose interval is narrower with a tool named than without", tools},
	{"outliers", "false outlier notes", outliers},
	{"looks", "a sheet that grows run by run until it can tell", looks},
	{"verdicts", "verdicts at a fixed number of runs", verdicts},
	{"promises", "what was said of more runs, and of a planned test", promises},
}

func main() {
	tests := flag.Int("tests", 20_000, "simulated tests for each line")
	seed := flag.Uint64("seed", 1, "of the lots")
	only := flag.String("only", "", "names of tables, with commas")
	flag.Parse()
	ok := true
	for _, t := range tables {
		if *only != "" && !strings.Contains(","+*only+",", ","+t.name+",") {
			continue
		}
		began := time.Now()
		fmt.Printf("\n%s: %s\n", t.name, t.about)
		if !t.write(run{*tests, *seed}) {
			fmt.Println("NOT GOOD ENOUGH")
			ok = false
		}
		fmt.Printf("(%d tests a line, seed %d, %.0f s)\n", *tests, *seed, time.Since(began).Seconds())
	}
	if !ok {
		os.Exit(1)
	}
}

// must prints a figure with what it may be, and reports whether it is.
func must(good bool, format string, values ...any) bool {
	mark := ""
	if !good {
		mark = "  <-- not as asked"
	}
	fmt.Printf("  "+format+mark+"\n", values...)
	return good
}
