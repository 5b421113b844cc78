package calc_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The judge itself: a check that cannot fail is none.
func TestVectorsJudge(t *testing.T) {
	expect := func(text string) vectorCase {
		t.Helper()
		var c vectorCase
		require.NoError(t, json.Unmarshal([]byte(text), &c))
		return c
	}
	type got = map[string]any
	passes := func(c vectorCase, g got, err error) {
		t.Helper()
		assert.Empty(t, judge(c, g, err).faults)
	}
	fails := func(c vectorCase, g got, err error) {
		t.Helper()
		assert.NotEmpty(t, judge(c, g, err).faults)
	}
	refused := errors.New("refused")

	number := expect(`{"expected": {"x": {"value": 100, "unit": "mm"}}, "tolerance": {"rel": 1e-3, "abs": 0}}`)
	passes(number, got{"x": 100.}, nil)
	passes(number, got{"x": 100.1}, nil) // 0.1 is allowed
	fails(number, got{"x": 100.2}, nil)
	fails(number, got{"x": 99.8}, nil)
	fails(number, got{"x": math.NaN()}, nil)
	fails(number, got{"x": math.Inf(1)}, nil)
	fails(number, got{"x": "100"}, nil)
	fails(number, got{"x": []float64{100}}, nil)
	fails(number, got{"x": []float64{math.NaN()}}, nil)
	fails(number, got{"y": 100.}, nil) // nothing compared
	fails(number, nil, nil)
	fails(number, got{"x": 100.}, refused)

	keyed := expect(`{"expected": {"x": {"value": 100, "unit": "mm"}, "y": {"value": 100, "unit": "mm"}},
		"tolerance": {"rel": 0, "abs": 0.5, "keys": {"y": {"rel": 0, "abs": 0.01}}}}`)
	passes(keyed, got{"x": 100.4, "y": 100.}, nil)
	fails(keyed, got{"x": 100.4, "y": 100.4}, nil)
	fails(keyed, got{"x": 100.6, "y": 100.}, nil)
	passes(keyed, got{"x": 100.4}, nil)
	assert.Equal(t, []string{"y"}, judge(keyed, got{"x": 100.}, nil).notOffered)

	exact := expect(`{"expected": {"n": {"value": 4, "unit": "count"}, "b": {"value": true, "unit": "bool"}, "w": {"value": "inside", "unit": "text"}},
		"tolerance": {"rel": 1, "abs": 10}}`)
	passes(exact, got{"n": 4, "b": true, "w": "inside"}, nil)
	fails(exact, got{"n": 5, "b": true, "w": "inside"}, nil)
	fails(exact, got{"n": 4, "b": false, "w": "inside"}, nil)
	fails(exact, got{"n": 4, "b": 1, "w": "inside"}, nil)
	fails(exact, got{"n": 4, "b": true, "w": "Inside"}, nil)
	fails(exact, got{"n": 4, "b": true, "w": math.Inf(1)}, nil)

	list := expect(`{"expected": {"x": {"values": [[1, 2], [3]], "unit": "mm"}}, "tolerance": {"rel": 1e-3, "abs": 0}}`)
	passes(list, got{"x": [][]float64{{1, 2}, {3}}}, nil)
	fails(list, got{"x": [][]float64{{1, 2}, {3, 4}}}, nil)
	fails(list, got{"x": [][]float64{{1, 2}}}, nil)
	fails(list, got{"x": [][]float64{{1, 2}, {4}}}, nil)
	fails(list, got{"x": 1.}, nil)

	inf := expect(`{"expected": {"nu": {"value": "inf", "unit": "1"}}, "tolerance": {"rel": 1, "abs": 1}}`)
	passes(inf, got{"nu": math.Inf(1)}, nil)
	fails(inf, got{"nu": math.Inf(-1)}, nil)
	fails(inf, got{"nu": 1e308}, nil)

	null := expect(`{"expected": {"x": {"values": [null], "unit": "mm"}}, "tolerance": {"rel": 1, "abs": 1}}`)
	fails(null, got{"x": []any{nil}}, nil)

	for _, flag := range refusals {
		no := expect(`{"expected": {"` + flag + `": {"value": false, "unit": "bool"}, "n": {"value": 3, "unit": "count"}}}`)
		passes(no, nil, refused)
		passes(no, got{flag: false, "n": 3}, nil)
		fails(no, got{flag: false, "n": 4}, nil)
		fails(no, got{flag: true, "n": 3}, nil)
		fails(no, got{"n": 3}, nil) // a number where there is none
		fails(no, nil, nil)
		yes := expect(`{"expected": {"` + flag + `": {"value": true, "unit": "bool"}, "n": {"value": 3, "unit": "count"}}}`)
		passes(yes, got{"n": 3}, nil)
		fails(yes, got{flag: false, "n": 3}, nil)
		fails(yes, nil, refused)
	}
}

func TestVectorsMalformed(t *testing.T) {
	fails := func(text string) {
		t.Helper()
		_, _, err := readVectors([]byte(text))
		assert.Error(t, err)
	}
	const good = `{"name": "a", "kind": "k", "expected": {"x": {"value": 1, "unit": "1"}}}`
	set, cases, err := readVectors([]byte(`{"schema": "metro-ref/1", "set": "s", "cases": [` + good + `]}`))
	require.NoError(t, err)
	assert.Equal(t, "s", set)
	assert.Len(t, cases, 1)
	fails(``)
	fails(`{`)
	fails(`[]`)
	fails(`{"schema": "metro-ref/2", "set": "s", "cases": [` + good + `]}`)
	fails(`{"schema": "metro-ref/1", "cases": [` + good + `]}`)
	fails(`{"schema": "metro-ref/1", "set": "s", "cases": []}`)
	fails(`{"schema": "metro-ref/1", "set": "s", "cases": [` + good + `, ` + good + `]}`)
	fails(`{"schema": "metro-ref/1", "set": "s", "cases": [{}]}`)
	fails(`{"schema": "metro-ref/1", "set": "s", "cases": [{"name": "a", "kind": "k", "expected": {}}]}`)
	fails(`{"schema": "metro-ref/1", "set": "s", "cases": [{"name": "a", "kind": "k", "expected": {"x": {"unit": "1"}}}]}`)
	fails(`{"schema": "metro-ref/1", "set": "s", "cases": [{"name": "a", "kind": "k", "expected": {"x": 1}}]}`)
}
