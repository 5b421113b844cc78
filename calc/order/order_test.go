package order_test

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"striderule/calc/order"
)

// Sort does what the standard library's stable sort does.
func TestSort(t *testing.T) {
	type item struct{ key, place int }
	rapid.Check(t, func(t *rapid.T) {
		var list []item
		for i, key := range rapid.SliceOfN(rapid.IntRange(0, 9), 0, 30).Draw(t, "keys") {
			list = append(list, item{key, i})
		}
		want := slices.Clone(list)
		slices.SortStableFunc(want, func(a, b item) int { return cmp.Compare(a.key, b.key) })
		order.Sort(list, func(a, b item) bool { return a.key < b.key })
		assert.Equal(t, want, list)
	})
}
