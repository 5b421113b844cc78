package lists_test

import (
	"cmp"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	_ "striderule/calc/calctest/cases"
	"striderule/calc/lists"
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
		lists.Sort(list, func(a, b item) bool { return a.key < b.key })
		assert.Equal(t, want, list)
	})
}

func TestConcat(t *testing.T) {
	first := append(make([]int, 0, 9), 1, 2)
	all := lists.Concat(first, nil, []int{3})
	assert.Equal(t, []int{1, 2, 3}, all)
	all[0] = 7
	assert.Equal(t, 1, first[0], "what was joined stays as it was")
	assert.Nil(t, lists.Concat[int]())
}

func TestKeep(t *testing.T) {
	list := []int{1, 2, 3, 4}
	assert.Equal(t, []int{2, 4}, lists.Keep(list, func(n int) bool { return n%2 == 0 }))
	assert.Equal(t, []int{1, 2, 3, 4}, list)
}
