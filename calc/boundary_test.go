package calc

import (
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The suite is a library on its own: it knows no screen and no network.
func TestNoBrowserBelowCalc(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "./...").CombinedOutput()
	require.NoError(t, err, string(out))
	deps := strings.Fields(string(out))
	assert.Contains(t, deps, "striderule/calc/drive", "the list is what it should be")
	for _, d := range deps {
		assert.NotContains(t, d, "go-app")
		assert.NotContains(t, []string{"syscall/js", "net/http", "striderule/app"}, d)
	}
}
