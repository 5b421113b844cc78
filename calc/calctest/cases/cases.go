// Package cases gives the properties the same cases each time, so that a change fails for what
// it did and not for its luck. With STRIDERULE_FULL=1 they are other ones each time. A package
// whose tests have properties imports it for this alone; -rapid.seed on the command line wins.
package cases

import (
	"flag"
	"os"

	_ "pgregory.net/rapid" // which has the flag
)

const seed = "20261129"

func init() {
	if os.Getenv("STRIDERULE_FULL") != "" {
		return
	}
	if err := flag.Set("rapid.seed", seed); err != nil {
		panic(err)
	}
}
