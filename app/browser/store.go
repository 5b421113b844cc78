package browser

import (
	"strings"
)

// What is kept on this device. A browser may refuse all of it: failed is then the name of
// its error.

// Kept returns the keys behind a prefix and their texts, in turn.
func Kept(prefix string) (keysAndTexts []string, failed string) {
	found := keptTexts.call(prefix)
	if lines := found.Index(1).String(); lines != "" {
		keysAndTexts = strings.Split(lines, "\n")
	}
	for i := 2; i < found.Length(); i++ {
		keysAndTexts = append(keysAndTexts, found.Index(i).String())
	}
	return keysAndTexts, found.Index(0).String()
}

// Keep keeps a text under a key.
func Keep(key, text string) (failed string) { return keepText.call(key, text).String() }

// Drop forgets what is kept under a key.
func Drop(key string) (failed string) { return dropText.call(key).String() }

// IsKept reports whether something is kept under a key.
func IsKept(key string) bool { return isKept.call(key).Truthy() }
