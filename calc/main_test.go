package calc_test

import (
	"flag"
	"os"
	"testing"
)

// A share of the properties' cases, other ones each time; STRIDERULE_FULL=1 has all of them.
const shareOfChecks = "30"

func TestMain(m *testing.M) {
	if os.Getenv("STRIDERULE_FULL") == "" {
		if err := flag.Set("rapid.checks", shareOfChecks); err != nil {
			panic(err)
		}
	}
	os.Exit(m.Run())
}
