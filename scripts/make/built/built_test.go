package built

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFacts(t *testing.T) {
	for _, f := range []Facts{
		{Go: "go1.26.8"},
		{Go: "go1.27-devel_0123 Thu", Address: "https://club.example/tools/striderule/"},
		{Go: "go1.26.8", Without: []string{"trim", "slim"}},
		{Go: "go1.26.8", Address: "https://club.example/", Without: []string{"trim", "slim"}},
	} {
		again, err := Parse(f.String())
		require.NoError(t, err)
		assert.Equal(t, f, again)
	}
	for _, bad := range []string{"", "\n", "For the address https://club.example/\n", "Built with \n", "Built with go1.26.8\nBy somebody\n"} {
		_, err := Parse(bad)
		assert.ErrorContains(t, err, Name, "%q", bad)
	}
}
