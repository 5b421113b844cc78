// Package order sorts short lists, in little code: the standard library's sorts
// are made for long ones, and weigh ten times as much for each type in a browser.
package order

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
