// Package lists has what the calculators do with short lists, in little code: what the
// standard library has for it is made for long ones, and weighs ten times as much for each
// type in a browser.
package lists

// Concat joins lists into a new one.
func Concat[T any](parts ...[]T) []T {
	var all []T
	for _, p := range parts {
		all = append(all, p...)
	}
	return all
}

// Keep returns what is good of a list, in a new one.
func Keep[T any](list []T, good func(T) bool) []T {
	var all []T
	for _, v := range list {
		if good(v) {
			all = append(all, v)
		}
	}
	return all
}

// Sort sorts a list so that nothing stands behind what it comes before. What
// comes in no order stays as it was. It moves by hand: meant for what is short,
// or small, or sorted but for a few.
func Sort[T any](list []T, before func(a, b T) bool) {
	for i, v := range list {
		at, end := 0, i
		for at < end {
			if middle := (at + end) / 2; before(v, list[middle]) {
				end = middle
			} else {
				at = middle + 1
			}
		}
		copy(list[at+1:i+1], list[at:i])
		list[at] = v
	}
}
