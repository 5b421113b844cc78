package link

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Each wide form is its plain one, and each dash a minus; what stands beside them is itself.
func TestPlainRunes(t *testing.T) {
	plain := func(r rune) string {
		to, _ := plainRune(r, "1")
		return to
	}
	for r := '!'; r <= '~'; r++ {
		assert.Equal(t, string(r), plain(r-'!'+'！'))
		assert.Empty(t, plain(r), "it stands for itself")
	}
	for _, dash := range "‐‑‒–—―−" {
		assert.Equal(t, "-", plain(dash))
		to, is := plainRune(dash, "&")
		assert.Empty(t, to, "no minus stands there")
		assert.Equal(t, notRaw, is)
	}
	for _, other := range "＀｟‖∓" {
		assert.Empty(t, plain(other))
	}
}
