package main

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Browsers work out every element's style again, with each key, where a rule has the whole
// page depend on what is in it.
func TestNoRuleOfTheWholePageLooksIntoIt(t *testing.T) {
	css, err := os.ReadFile("../web/style.css")
	require.NoError(t, err)
	require.Contains(t, string(css), ":has(", "else this shows nothing")
	wide := regexp.MustCompile(`(^|[\s,}])(:root|html|body|main|\.page|\.desk|\.sheet|\.result)[^\s,{]*:has\(`)
	for i, line := range strings.Split(string(css), "\n") {
		assert.NotRegexp(t, wide, line, "line %d", i+1)
	}
}
