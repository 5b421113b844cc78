package built

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// scripts/verify reads these lines.
func TestFacts(t *testing.T) {
	assert.Equal(t, "Built with go1.26.8\n", Facts{Go: "go1.26.8"}.String())
	assert.Equal(t, "Built with go1.26.8\nFor the address https://club.example/\nWithout trim\nWithout slim\n",
		Facts{Go: "go1.26.8", Address: "https://club.example/", Without: []string{"trim", "slim"}}.String())
	assert.Equal(t, "Without trim", Without("trim"))
}
