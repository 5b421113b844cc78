package calc_test

import (
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"slices"
	"sort"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The reference vectors: testdata/vectors/README.md says how they are written.
// Another folder of the same schema is run with VECTORS_DIR=folder. With
// VECTORS_FIGURES=1 all figures are printed, to the last bit.

// Embedded, because there are no files in a browser, where these tests run as well
// (scripts/prove/pages/vectors_test.go).
//
//go:embed testdata/vectors/*.json
var vectorFiles embed.FS

// A vectorHandler works a case and returns what the code gives for its
// expected quantities, under their names: float64, int, bool, string, or
// slices of these. An error is the code's refusal. A handler that does not
// know how to put the case to the code returns a notOffered.
type vectorHandler func(c vectorCase) (map[string]any, error)

// vectorHandlers has what the code offers, by "set/kind". A case of any other kind is skipped,
// never put to the code as another kind: readings in pairs are not two series.
var vectorHandlers = map[string]vectorHandler{
	"drivetrain/drivetrain":                    drivetrainCase,
	"drivetrain/microstep_sweep":               microstepSweepCase,
	"drivetrain/inverse_roller_diameter":       inverseRollerCase,
	"drivetrain/inverse_pulley_teeth":          inversePulleyCase,
	"drivetrain/rescale":                       rescaleCase,
	"motor/pulse_rate":                         pulseRateCase,
	"motor/microstep_torque":                   microstepTorqueCase,
	"motor/current_rise_corner":                cornerCase,
	"student_t/quantile_two_sided":             studentCase,
	"student_t/quantile_two_sided_large_nu":    studentCase,
	"student_t/published_rounded_table":        studentCase,
	"student_t/cdf":                            studentCase,
	"outlier/critical_value":                   outlierCase,
	"outlier/test":                             outlierCase,
	"conformity/two_sided_normal":              conformityCase,
	"type_a_b/single_quantity":                 singleCase,
	"type_a_b/mean_and_sd":                     meanCase,
	"type_a_b/welch_satterthwaite":             welchCase,
	"type_a_b/feed_two_measurements":           feedCase,
	"type_a_b/feed_invalid":                    feedCase,
	"type_a_b/feed_paired_runs":                pairedCase,
	"linear_regression/line":                   lineCase,
	"linear_regression/line_with_prediction":   lineCase,
	"linear_regression/line_ill_conditioned":   lineCase,
	"linear_regression/line_zero_residual":     lineCase,
	"linear_regression/line_degenerate":        lineCase,
	"linear_regression/line_inverse":           lineCase,
	"linear_regression/line_through_origin":    originLineCase,
	"regression_scale_offset/scale_and_offset": scaleOffsetCase,
	"regression_scale_offset/no_repeats":       scaleOffsetCase,
	"regression_scale_offset/bidirectional":    bidirectionalCase,
	"slip/slip_line":                           slipCase,
}

// notOffered is why a case cannot be put to the code.
type notOffered string

func (n notOffered) Error() string { return string(n) }

type vectorCase struct {
	Name      string
	Kind      string
	Inputs    map[string]vectorQuantity
	Expected  map[string]vectorQuantity
	Tolerance struct {
		vectorTolerance
		Keys map[string]vectorTolerance
	}
}

type vectorQuantity struct {
	Value  json.RawMessage
	Values json.RawMessage
	Unit   string
}

// raw is the value or the values; a quantity has one of them.
func (q vectorQuantity) raw() json.RawMessage {
	if q.Values != nil {
		return q.Values
	}
	return q.Value
}

type vectorTolerance struct{ Rel, Abs float64 }

// refusals are the expected flags that say, where false, that there is no answer.
var refusals = []string{"valid", "fit_possible", "test_possible", "uncertainty_available", "reachable"}

func TestVectors(t *testing.T) {
	vectors, err := fs.Sub(vectorFiles, "testdata/vectors")
	require.NoError(t, err)
	if dir := os.Getenv("VECTORS_DIR"); dir != "" {
		vectors = os.DirFS(dir)
	}
	files, err := fs.Glob(vectors, "*.json")
	require.NoError(t, err)
	require.NotEmpty(t, files, "no vectors")
	for _, name := range files {
		data, err := fs.ReadFile(vectors, name)
		require.NoError(t, err)
		set, cases, err := readVectors(data)
		if !assert.NoError(t, err, name) {
			continue
		}
		t.Run(set, func(t *testing.T) {
			for _, c := range cases {
				t.Run(c.Name, func(t *testing.T) { runVector(t, set, c) })
			}
		})
	}
}

func runVector(t *testing.T, set string, c vectorCase) {
	kind := set + "/" + c.Kind
	work := vectorHandlers[kind]
	if work == nil {
		t.Skipf("skipped %s: the code does not offer %s", c.Name, kind)
	}
	got, err := work(c)
	if os.Getenv("VECTORS_FIGURES") != "" {
		printFigures(set+"/"+c.Name, got, err)
	}
	var not notOffered
	if errors.As(err, &not) {
		t.Skipf("skipped %s (%s): %s", c.Name, kind, not)
	}
	v := judge(c, got, err)
	if len(v.notOffered) > 0 {
		t.Logf("not offered: %s", strings.Join(v.notOffered, ", "))
	}
	for _, fault := range v.faults {
		t.Error(fault)
	}
}

// readVectors reads one file. It returns an error for whatever could make a
// case vanish without a word.
func readVectors(data []byte) (set string, cases []vectorCase, err error) {
	var file struct {
		Set, Schema string
		Cases       []vectorCase
	}
	if err := json.Unmarshal(data, &file); err != nil {
		return "", nil, err
	}
	if file.Schema != "metro-ref/1" || file.Set == "" || len(file.Cases) == 0 {
		return "", nil, fmt.Errorf("schema %q, set %q, %d cases", file.Schema, file.Set, len(file.Cases))
	}
	seen := map[string]bool{}
	for _, c := range file.Cases {
		if c.Name == "" || c.Kind == "" || len(c.Expected) == 0 || seen[c.Name] {
			return "", nil, fmt.Errorf("case %q: no name, kind or expected quantities, or there twice", c.Name)
		}
		seen[c.Name] = true
		for key, q := range c.Expected {
			if (q.Value == nil) == (q.Values == nil) {
				return "", nil, fmt.Errorf("case %q: %s has not one of value and values", c.Name, key)
			}
		}
	}
	return file.Set, file.Cases, nil
}

type verdict struct{ compared, notOffered, faults []string }

// judge compares what the code gave with what is expected.
func judge(c vectorCase, got map[string]any, err error) verdict {
	var v verdict
	fault := func(format string, args ...any) { v.faults = append(v.faults, fmt.Sprintf(format, args...)) }
	refused := false
	for _, flag := range refusals {
		if q, ok := c.Expected[flag]; ok && string(q.Value) == "false" {
			refused = true
			v.compared = append(v.compared, flag)
			if given, ok := got[flag]; err == nil && (!ok || given != false) {
				fault("%s is false: an error or \"not available\" is expected, but the code gave %v", flag, got)
			}
		}
	}
	if err != nil {
		if !refused {
			fault("the code refused: %v", err)
		}
		return v
	}
	keys := make([]string, 0, len(c.Expected))
	for key := range c.Expected {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	for _, key := range keys {
		value, ok := got[key]
		switch {
		case slices.Contains(v.compared, key):
		case !ok:
			v.notOffered = append(v.notOffered, key)
		default:
			v.compared = append(v.compared, key)
			tol, ok := c.Tolerance.Keys[key]
			if !ok {
				tol = c.Tolerance.vectorTolerance
			}
			if err := compare(c.Expected[key], value, tol); err != nil {
				fault("%s: %v", key, err)
			}
		}
	}
	if len(v.compared) == 0 {
		fault("nothing could be compared")
	}
	return v
}

// compare returns an error unless got is what q says: numbers within the
// tolerance; text, bool and count exactly.
func compare(q vectorQuantity, got any, tol vectorTolerance) error {
	if q.Unit == "text" || q.Unit == "bool" || q.Unit == "count" {
		tol = vectorTolerance{}
	}
	var want, have any
	if err := json.Unmarshal(q.raw(), &want); err != nil {
		return err
	}
	have, ok := got.(float64) // JSON has no infinity
	if !ok {
		text, err := json.Marshal(got)
		if err != nil {
			return err
		}
		if err := json.Unmarshal(text, &have); err != nil {
			return err
		}
	}
	return compareTree(want, have, tol)
}

func compareTree(want, got any, tol vectorTolerance) error {
	switch w := want.(type) {
	case float64:
		g, ok := got.(float64)
		if allowed := math.Max(tol.Abs, tol.Rel*math.Abs(w)); !ok || !(math.Abs(g-w) <= allowed) {
			return fmt.Errorf("expected %v ± %v, got %v", w, allowed, got)
		}
	case []any:
		g, ok := got.([]any)
		if !ok || len(g) != len(w) {
			return fmt.Errorf("expected %d values, got %v", len(w), got)
		}
		for i := range w {
			if err := compareTree(w[i], g[i], tol); err != nil {
				return fmt.Errorf("[%d]: %w", i, err)
			}
		}
	case string:
		if g, ok := got.(float64); w == got || w == "inf" && ok && math.IsInf(g, 1) {
			return nil
		}
		return fmt.Errorf("expected %q, got %v", w, got)
	case bool:
		if got != w {
			return fmt.Errorf("expected %v, got %v", w, got)
		}
	default:
		return fmt.Errorf("cannot compare with %v", want)
	}
	return nil
}
