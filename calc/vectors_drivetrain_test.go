package calc_test

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

func drivetrainCase(c vectorCase) (map[string]any, error) {
	d, err := machineOf(c, inputsOf(c))
	if err != nil {
		return nil, err
	}
	return figuresOf(d), nil
}

// machineOf builds the whole drivetrain that is described, and nothing else.
func machineOf(c vectorCase, f facts) (drive.Drivetrain, error) {
	p, err := f.parts()
	if err != nil {
		return drive.Drivetrain{}, err
	}
	if err := f.leftOver(); err != nil {
		return drive.Drivetrain{}, err
	}
	if p.Output == nil && expectsDegrees(c) {
		p.Output = drive.Rotary{}
	}
	if p.StepAngle == 0 || p.Microsteps == 0 || p.Output == nil {
		return drive.Drivetrain{}, notOffered("the case does not name motor, microsteps and an output element in a way that is known here")
	}
	d := drive.Drivetrain{Motor: drive.Motor{StepAngle: p.StepAngle, Microsteps: p.Microsteps}, Stages: p.Stages, Output: p.Output}
	return d, d.Check()
}

func expectsDegrees(c vectorCase) bool {
	for key := range c.Expected {
		if key == "steps_per_deg" || key == "steps_per_degree" {
			return true
		}
	}
	return false
}

func figuresOf(d drive.Drivetrain) map[string]any {
	got := map[string]any{
		"valid":                               true,
		"full_steps_per_rev":                  d.Motor.FullSteps(),
		"pulses_per_motor_rev":                d.Motor.Pulses(),
		"reduction_motor_revs_per_output_rev": d.Stages.Reduction(),
		"travel_per_output_rev":               drive.PerTurn(d.Output),
		"travel_per_motor_rev":                d.PerMotorTurn(),
		"travel_per_full_step":                d.PerFullStep(),
		"travel_per_microstep":                d.PerMicrostep(),
	}
	if d.Output.Angular() {
		got["steps_per_deg"], got["steps_per_degree"] = d.Steps(), d.Steps()
		return got
	}
	got["steps_per_mm"] = d.Steps()
	for _, u := range unit.StepsPerLengths.Units {
		if u.Symbol == "steps/in" {
			got["steps_per_inch"] = u.FromBase(d.Steps())
		}
	}
	if s, ok := d.Output.(drive.Screw); ok {
		got["lead"], got["pitch"], got["starts"] = float64(s.Lead()), float64(s.Pitch), int(s.Starts)
		got["left_hand"] = s.LeftHand
		if s.Diameter > 0 {
			got["thread_diameter"] = float64(s.Diameter)
		}
	}
	return got
}

// microstepSweepCase runs one machine with a list of microsteps; a quantity
// that is expected once must be the same for all.
func microstepSweepCase(c vectorCase) (map[string]any, error) {
	var sweep []json.RawMessage
	if err := json.Unmarshal(c.Inputs["microsteps"].Values, &sweep); err != nil || len(sweep) == 0 {
		return nil, notOffered("no list of microsteps")
	}
	lists := map[string][]any{}
	for _, m := range sweep {
		f := inputsOf(c)
		f.all["microsteps"] = vectorQuantity{Value: m, Unit: "count"}
		d, err := machineOf(c, f)
		if err != nil {
			return nil, err
		}
		for key, value := range figuresOf(d) {
			lists[key] = append(lists[key], value)
		}
	}
	got := map[string]any{}
	for key, list := range lists {
		got[key] = list
		if c.Expected[key].Values == nil {
			got[key] = list[0]
			for _, v := range list {
				if !reflect.DeepEqual(v, list[0]) {
					got[key] = fmt.Sprint("differs with the microsteps: ", list)
				}
			}
		}
	}
	return got, nil
}

// inverseRollerCase finds what a measured travel implies.
func inverseRollerCase(c vectorCase) (map[string]any, error) {
	f := inputsOf(c)
	pulses, _, err := number(f, unit.Ratios, "", "pulses_sent")
	if err != nil {
		return nil, err
	}
	travel, _, err := number(f, unit.Lengths, "mm", "measured_travel")
	if err != nil {
		return nil, err
	}
	p, err := f.parts()
	if err != nil {
		return nil, err
	}
	if err := f.leftOver(); err != nil {
		return nil, err
	}
	if p.Output != nil || pulses == 0 || travel == 0 {
		return nil, notOffered("not a roller of unknown diameter with pulses sent and travel measured")
	}
	m := drive.Motor{StepAngle: p.StepAngle, Microsteps: p.Microsteps}
	if err := m.Check(); err != nil {
		return nil, err
	}
	steps := drive.Setting{Convention: drive.StepsPerUnit, Value: float64(pulses) / float64(travel)}
	perOutputTurn := steps.In(drive.TravelPerOutputTurn, m, p.Stages)
	diameter := drive.EffectiveDiameter(perOutputTurn.Value)
	found := drive.Drivetrain{Motor: m, Stages: p.Stages, Output: drive.Roller{Diameter: diameter}}
	return map[string]any{
		"effective_diameter":   float64(diameter),
		"steps_per_mm":         found.Steps(), // of the roller that was found
		"travel_per_motor_rev": steps.In(drive.TravelPerTurn, m, p.Stages).Value,
	}, found.Check()
}

// inversePulleyCase finds the teeth that a setting implies on a belt.
func inversePulleyCase(c vectorCase) (map[string]any, error) {
	f := inputsOf(c)
	steps, _, err := number(f, unit.StepsPerLengths, "steps/mm", "steps_per_mm")
	if err != nil {
		return nil, err
	}
	pitch, _, err := number(f, unit.Lengths, "mm", "belt_pitch")
	if err != nil {
		return nil, err
	}
	delete(f.all, "belt_pitch") // no belt as a whole: its pulley is looked for
	p, err := f.parts()
	if err != nil {
		return nil, err
	}
	if err := f.leftOver(); err != nil {
		return nil, err
	}
	m := drive.Motor{StepAngle: p.StepAngle, Microsteps: p.Microsteps}
	if err := m.Check(); err != nil {
		return nil, err
	}
	perOutputTurn := drive.Setting{Convention: drive.StepsPerUnit, Value: float64(steps)}.In(drive.TravelPerOutputTurn, m, p.Stages)
	return map[string]any{"pulley_teeth": drive.PulleyTeeth(perOutputTurn.Value, pitch), "travel_per_output_rev": perOutputTurn.Value}, nil
}

// rescaleCase swaps parts under a setting, given in either convention.
func rescaleCase(c vectorCase) (map[string]any, error) {
	f := inputsOf(c)
	was, errWas := configOf(f, "old_config")
	now, errNow := configOf(f, "new_config")
	for _, err := range []error{errWas, errNow} {
		if err != nil {
			return nil, err
		}
	}
	factors, err := drive.Rescale(was, now)
	if err != nil {
		return nil, err
	}
	got := map[string]any{
		"factor": factors.Steps, "travel_per_rev_factor": factors.Turn,
		"travel_per_output_rev_factor": factors.Output, "ratio_factor": factors.Ratio,
	}
	steps, hasSteps, err := number(f, unit.StepsPerLengths, "steps/mm", "old_steps_per_mm")
	if err != nil {
		return nil, err
	}
	turn, hasTurn, err := number(f, unit.LengthsPerTurn, "mm/rev", "old_travel_per_motor_rev")
	if err != nil {
		return nil, err
	}
	nominal, hasNominal, err := number(f, unit.StepsPerLengths, "steps/mm", "old_nominal_steps_per_mm")
	if err != nil {
		return nil, err
	}
	if err := f.leftOver(); err != nil {
		return nil, err
	}
	machine := func(p drive.Parts) drive.Drivetrain {
		return drive.Drivetrain{Motor: drive.Motor{StepAngle: p.StepAngle, Microsteps: p.Microsteps}, Stages: p.Stages, Output: p.Output}
	}
	before, after := machine(was), machine(now)
	motorKnown := before.Motor.Check() == nil
	if hasNominal && before.Check() == nil && math.Abs(before.Steps()/float64(nominal)-1) > 1e-13 {
		got["factor"] = fmt.Sprint("the parts before the swap give ", before.Steps(), " steps/mm, not ", nominal)
	}
	old := drive.Setting{Convention: drive.StepsPerUnit, Value: float64(steps)}
	switch {
	case hasSteps:
		got["new_steps_per_mm"] = old.Rescaled(factors).Value
	case hasTurn:
		old = drive.Setting{Convention: drive.TravelPerTurn, Value: float64(turn)}
		got["new_travel_per_motor_rev"] = old.Rescaled(factors).Value
	default:
		return got, nil
	}
	if motorKnown {
		inTurns := old.In(drive.TravelPerTurn, before.Motor, was.Stages)
		got["old_travel_per_motor_rev"] = inTurns.Value
		got["new_travel_per_motor_rev"] = inTurns.Rescaled(factors).Value
		inSteps := old.In(drive.StepsPerUnit, before.Motor, was.Stages).Rescaled(factors)
		got["new_steps_per_mm"] = inSteps.Value
		if after.Check() == nil { // the correction is in the new setting still
			got["calibration_correction_kept"] = inSteps.Value / after.Steps()
		}
	}
	return got, nil
}
