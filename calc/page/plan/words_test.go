package plan

import (
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
)

// Some controllers stumble over anything else, even in a remark.
func TestMovesAreASCII(t *testing.T) {
	for _, fragment := range []string{
		"v=1&tool=caliper-0.05", "v=1&path=open&tool=caliper-0.05", "v=1&trial=speeds&tool=caliper-0.05",
		"v=1&axis=travel&letter=z&tool=caliper-0.05&from=0&to=100", "v=1&axis=travel&trip=lengths&tool=caliper-0.05&from=0&to=100",
		"v=1&axis=travel&trip=sides&tool=caliper-0.05&from=0&to=100",
	} {
		a := worked(t, fragment)
		moves := a.program().String()
		assert.Equal(t, -1, strings.IndexFunc(moves, func(r rune) bool { return r > unicode.MaxASCII }), moves)
		assert.NotContains(t, moves, "{")
	}
}
