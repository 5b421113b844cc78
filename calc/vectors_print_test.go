package calc_test

import (
	"fmt"
	"maps"
	"math"
	"slices"
)

// printFigures prints what a case gave, a line a figure; a number that is not whole
// as its 64 bits.
func printFigures(name string, got map[string]any, err error) {
	if err != nil {
		fmt.Printf("figure %s: %v\n", name, err)
	}
	for _, key := range slices.Sorted(maps.Keys(got)) {
		printFigure(name+" "+key, got[key])
	}
}

func printFigure(name string, got any) {
	switch v := got.(type) {
	case float64:
		fmt.Printf("figure %s: %016x %v\n", name, math.Float64bits(v), v)
	case []float64:
		for i, f := range v {
			printFigure(fmt.Sprintf("%s[%d]", name, i), f)
		}
	case []any:
		for i, f := range v {
			printFigure(fmt.Sprintf("%s[%d]", name, i), f)
		}
	case int, bool, string, []int, []string, []bool:
		fmt.Printf("figure %s: %v\n", name, v)
	default:
		panic(fmt.Sprintf("%s is a %T: say how its bits are printed", name, got))
	}
}
