package calc_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// The page of the parts is held against the same reference as the model: each
// case is typed into it.
func TestPartsPageVectors(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("testdata", "vectors", "drivetrain.json"))
	require.NoError(t, err)
	_, cases, err := readVectors(data)
	require.NoError(t, err)
	typed := map[string]int{}
	for _, c := range cases {
		var got map[string]any
		switch c.Kind {
		case "drivetrain":
			d, err := machineOf(c, inputsOf(c))
			require.NoError(t, err, c.Name)
			got = shownOf(t, typedParts(d))
		case "microstep_sweep":
			got = typedSweep(t, c)
		case "inverse_roller_diameter":
			got = shownOf(t, typedInverse(t, c))
		default:
			continue
		}
		typed[c.Kind]++
		t.Run(c.Name, func(t *testing.T) {
			v := judge(c, got, nil)
			assert.Empty(t, v.faults)
			assert.GreaterOrEqual(t, len(v.compared), 3)
		})
	}
	assert.Equal(t, map[string]int{"drivetrain": 19, "microstep_sweep": 1, "inverse_roller_diameter": 2}, typed)
}

// typedParts is a drivetrain as it is typed into the page.
func typedParts(d drive.Drivetrain) string {
	var element string
	switch o := d.Output.(type) {
	case drive.Belt:
		element = "&pitch=" + unit.Full(float64(o.Pitch)) + "&teeth=" + unit.Full(float64(o.Teeth))
	case drive.Screw:
		element = "&out=screw&screw=" + unit.Full(float64(o.Pitch)) + " x " + unit.Full(float64(o.Starts))
	case drive.Roller:
		element = "&out=roller&roller=" + unit.Full(float64(o.Diameter))
	case drive.Rack:
		element = "&out=rack&module=" + unit.Full(float64(o.Module)) + "&pinion=" + unit.Full(float64(o.Teeth))
	case drive.Rotary:
		element = "&out=rotary"
	}
	return "v=1" + element + typedMotor(d.Motor, d.Stages)
}

func typedMotor(m drive.Motor, stages drive.Stages) string {
	s := "&angle=" + unit.Full(float64(m.StepAngle)) + "&micro=" + unit.Full(float64(m.Microsteps))
	if len(stages) == 0 {
		return s
	}
	var driving, driven []string
	for _, st := range stages {
		driving, driven = append(driving, unit.Full(float64(st.Driving))), append(driven, unit.Full(float64(st.Driven)))
	}
	return s + "&gears=pairs&driving=" + strings.Join(driving, "x") + "&driven=" + strings.Join(driven, "x")
}

// shownOf is what the page shows, under the names of the vectors.
func shownOf(t *testing.T, fragment string) map[string]any {
	page, ok := calc.PageOf("parts")
	require.True(t, ok)
	f := calc.Load(page, fragment)
	require.Empty(t, f.Problems(), fragment)
	got := map[string]any{}
	for _, p := range f.Report().Parts {
		for _, b := range p.Blocks {
			figures, _ := b.(report.Figures)
			for _, fig := range figures.All {
				if name, ok := vectorNames[fig.ID]; ok {
					got[name] = fig.Value
				}
			}
		}
	}
	return got
}

var vectorNames = map[string]string{
	"steps-1": "steps_per_mm", "stepsin-1": "steps_per_inch", "turn-1": "travel_per_motor_rev", "output-1": "travel_per_output_rev",
	"fullsteps-1": "full_steps_per_rev", "fullstep-1": "travel_per_full_step", "microstep-1": "travel_per_microstep",
	"ratio-1": "reduction_motor_revs_per_output_rev", "diameter-1": "effective_diameter",
}

func typedSweep(t *testing.T, c vectorCase) map[string]any {
	var sweep []json.RawMessage
	require.NoError(t, json.Unmarshal(c.Inputs["microsteps"].Values, &sweep))
	var steps, microstep []any
	var turn any
	for _, m := range sweep {
		f := inputsOf(c)
		f.all["microsteps"] = vectorQuantity{Value: m, Unit: "count"}
		d, err := machineOf(c, f)
		require.NoError(t, err)
		got := shownOf(t, typedParts(d))
		if turn != nil {
			assert.Equal(t, turn, got["travel_per_motor_rev"], "the same for all microsteps")
		}
		turn = got["travel_per_motor_rev"]
		steps, microstep = append(steps, got["steps_per_mm"]), append(microstep, got["travel_per_microstep"])
	}
	return map[string]any{"steps_per_mm": steps, "travel_per_microstep": microstep, "travel_per_motor_rev": turn}
}

func typedInverse(t *testing.T, c vectorCase) string {
	f := inputsOf(c)
	pulses, _, err := number(f, unit.Ratios, "", "pulses_sent")
	require.NoError(t, err)
	travel, _, err := number(f, unit.Lengths, "mm", "measured_travel")
	require.NoError(t, err)
	p, err := f.parts()
	require.NoError(t, err)
	return "v=1&out=roller&find=element&steps=" + unit.Full(float64(pulses)/float64(travel)) + typedMotor(drive.Motor{StepAngle: p.StepAngle, Microsteps: p.Microsteps}, p.Stages)
}
