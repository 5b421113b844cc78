package calc_test

import (
	"encoding/json"
	"fmt"
	"math"
)

// Plain figures among the inputs of a case: the statistics library takes
// numbers as they are, not as somebody would type them.

// parseFigure reads a number, or the "inf" of infinite degrees of freedom.
func parseFigure(raw json.RawMessage) (float64, error) {
	var text string
	if json.Unmarshal(raw, &text) == nil && text == "inf" {
		return math.Inf(1), nil
	}
	var v float64
	err := json.Unmarshal(raw, &v)
	return v, err
}

// float takes one number, false if there is none of these names.
func (f facts) float(names ...string) (float64, bool) {
	q, ok := f.take(names...)
	if !ok || q.Value == nil {
		return 0, false
	}
	v, err := parseFigure(q.Value)
	return v, err == nil
}

// floats takes a list of numbers, or a single one.
func (f facts) floats(names ...string) ([]float64, error) {
	q, ok := f.take(names...)
	if !ok {
		return nil, notOffered("no input " + names[0])
	}
	if q.Values == nil {
		v, err := parseFigure(q.Value)
		return []float64{v}, err
	}
	var raw []json.RawMessage
	if err := json.Unmarshal(q.Values, &raw); err != nil {
		return nil, err
	}
	list := make([]float64, len(raw))
	for i, r := range raw {
		v, err := parseFigure(r)
		if err != nil {
			return nil, notOffered(fmt.Sprintf("%s: %v", names[0], err))
		}
		list[i] = v
	}
	return list, nil
}

// lists takes a list of lists of numbers; a plain list is one of single numbers.
func (f facts) lists(names ...string) ([][]float64, error) {
	q, ok := f.take(names...)
	var lists [][]float64
	var plain []float64
	switch {
	case !ok:
	case json.Unmarshal(q.Values, &lists) == nil:
		return lists, nil
	case json.Unmarshal(q.Values, &plain) == nil:
		lists = nil
		for _, v := range plain {
			lists = append(lists, []float64{v})
		}
		return lists, nil
	}
	return nil, notOffered("no lists of numbers " + names[0])
}
