package calc_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

// facts are the inputs of a drivetrain case under plain names: "belt_pitch",
// "starts". What nobody takes is left over, and the case is then skipped.
type facts struct {
	all   map[string]vectorQuantity
	taken map[string]bool
}

func inputsOf(c vectorCase) facts {
	f := facts{map[string]vectorQuantity{}, map[string]bool{}}
	for key, q := range c.Inputs {
		f.all[key] = q
	}
	return f
}

// configOf reads an object such as old_config, whose keys carry the units.
func configOf(f facts, key string) (drive.Parts, error) {
	q, ok := f.take(key)
	var object map[string]json.RawMessage
	if !ok || json.Unmarshal(q.Value, &object) != nil {
		return drive.Parts{}, notOffered("no object " + key)
	}
	c := facts{map[string]vectorQuantity{}, map[string]bool{}}
	for name, value := range object {
		q := vectorQuantity{Value: value}
		for suffix, u := range map[string]string{"_mm": "mm", "_in": "in", "_deg": "deg", "_driving_driven": ""} {
			if plain, ok := strings.CutSuffix(name, suffix); ok {
				name, q.Unit = plain, u
				break
			}
		}
		c.all[name] = q
	}
	p, err := c.parts()
	return p, errors.Join(err, c.leftOver())
}

func (f facts) take(names ...string) (vectorQuantity, bool) {
	for _, name := range names {
		if q, ok := f.all[name]; ok {
			f.taken[name] = true
			return q, true
		}
	}
	return vectorQuantity{}, false
}

func (f facts) leftOver() error {
	var names []string
	for name := range f.all {
		if !f.taken[name] {
			names = append(names, name)
		}
	}
	if names == nil {
		return nil
	}
	slices.Sort(names)
	return notOffered("inputs not known here: " + strings.Join(names, ", "))
}

// number reads the first of the names that is there, as a person would type it.
func number[T unit.Quantity](f facts, kind unit.Kind[T], bare string, names ...string) (T, bool, error) {
	q, ok := f.take(names...)
	if !ok {
		return 0, false, nil
	}
	var text string
	if json.Unmarshal(q.Value, &text) != nil {
		text = strings.TrimSpace(string(q.Value))
		switch u := strings.Replace(q.Unit, "pulses/", "steps/", 1); u {
		case "", "1", "count", "pulses", "teeth":
		default:
			text += " " + u
		}
	}
	least := T(0)
	if kind.Whole {
		least = 1
	}
	in := kind.Input(bare, least, T(math.MaxInt32))
	err := in.Entry().Set(text)
	switch {
	case errors.Is(err, unit.ErrUnit):
		return 0, false, notOffered(fmt.Sprintf("%s: %v", names[0], err))
	case err == nil && (!in.Given || in.Value() == 0):
		err = fmt.Errorf("%s is not above 0", names[0])
	}
	return in.Value(), true, err
}

// parts reads whatever parts of a drivetrain are named.
func (f facts) parts() (drive.Parts, error) {
	angle, _, errAngle := number(f, unit.StepAngles, "°", "step_angle")
	perTurn, hasPerTurn, errPerTurn := number(f, unit.StepAngles, "steps", "full_steps_per_rev")
	if hasPerTurn {
		angle = perTurn
	}
	microsteps, _, errMicrosteps := number(f, unit.Microsteps, "", "microsteps")
	stages, errStages := f.stages()
	output, errOutput := f.output()
	p := drive.Parts{StepAngle: angle, Microsteps: microsteps, Stages: stages, Output: output}
	err := errors.Join(errAngle, errPerTurn, errMicrosteps, errStages, errOutput)
	if kind := f.text("type", "output", "output_type"); kind != "" && err == nil {
		switch {
		case p.Output == nil && slices.Contains([]string{"rotary", "worm", "rotary_worm"}, kind):
			p.Output = drive.Rotary{}
		case kind == "worm":
		case p.Output == nil || p.Output.Name() != strings.TrimSuffix(strings.TrimPrefix(kind, "ball_"), "_pinion"):
			err = notOffered("an output of type " + kind + " is not described in a way that is known here")
		}
	}
	return p, err
}

func (f facts) text(names ...string) string {
	q, _ := f.take(names...)
	var s string
	_ = json.Unmarshal(q.Value, &s) // anything but text is no text
	return s
}

func (f facts) stages() (drive.Stages, error) {
	q, given := f.take("gear_stages", "stages")
	var pairs [][]float64
	if given && json.Unmarshal(q.raw(), &pairs) != nil {
		return nil, notOffered("gear stages that are not pairs of numbers")
	}
	var stages drive.Stages
	if given {
		stages = drive.Stages{} // a direct drive is known, too
	}
	for _, pair := range pairs {
		if len(pair) != 2 || pair[0] != math.Trunc(pair[0]) || pair[1] != math.Trunc(pair[1]) {
			return nil, notOffered("gear stages that are not pairs of whole numbers")
		}
		stages = append(stages, drive.Stage{Driving: unit.Count(pair[0]), Driven: unit.Count(pair[1])})
	}
	starts, hasStarts, err := number(f, unit.Starts, "", "worm_starts")
	if err != nil {
		return nil, err
	}
	teeth, hasTeeth, err := number(f, unit.Teeth, "", "worm_wheel_teeth", "wheel_teeth")
	if err != nil {
		return nil, err
	}
	worm := drive.Stage{Driving: starts, Driven: teeth}
	switch {
	case hasStarts != hasTeeth:
		return nil, notOffered("a worm needs starts and wheel teeth")
	case hasStarts && !slices.Contains(stages, worm): // it may be among the stages as well
		stages = append(stages, worm)
	}
	return stages, stages.Check()
}

// output reads the output element, nil if none is described.
func (f facts) output() (drive.Output, error) {
	var out drive.Output
	found := 0
	use := func(o drive.Output) { out = o; found++ }
	if designation := f.text("screw_designation", "designation"); designation != "" {
		s, err := drive.ParseScrew(designation)
		if err != nil {
			return nil, err
		}
		use(s)
	}
	starts, hasStarts, err := number(f, unit.Starts, "", "starts", "screw_starts")
	if err != nil {
		return nil, err
	}
	sizes := map[string]unit.Length{}
	for name, spellings := range map[string][]string{
		"belt pitch": {"belt_pitch"}, "module": {"rack_module", "module"}, "diameter": {"roller_effective_diameter", "effective_diameter", "roller_diameter"},
		"lead": {"screw_lead", "lead"}, "pitch": {"screw_pitch", "pitch"},
	} {
		size, ok, err := number(f, unit.Lengths, "mm", spellings...)
		if err != nil {
			return nil, err
		}
		if ok {
			sizes[name] = size
		}
	}
	pulley, hasPulley, err := number(f, unit.Teeth, "", "pulley_teeth")
	if err != nil {
		return nil, err
	}
	pinion, hasPinion, err := number(f, unit.Teeth, "", "pinion_teeth")
	if err != nil {
		return nil, err
	}
	if pitch, ok := sizes["belt pitch"]; ok || hasPulley {
		use(drive.Belt{Pitch: pitch, Teeth: pulley})
	}
	if module, ok := sizes["module"]; ok || hasPinion {
		use(drive.Rack{Module: module, Teeth: pinion})
	}
	if diameter, ok := sizes["diameter"]; ok {
		use(drive.Roller{Diameter: diameter})
	}
	lead, hasLead := sizes["lead"]
	pitch, hasPitch := sizes["pitch"]
	switch {
	case hasLead && hasPitch:
		return nil, notOffered("a screw with lead and pitch, other than as a designation")
	case hasLead && hasStarts:
		use(drive.Screw{Pitch: lead / unit.Length(starts), Starts: starts})
	case hasLead:
		use(drive.Screw{Pitch: lead, Starts: 1})
	case hasPitch && hasStarts:
		use(drive.Screw{Pitch: pitch, Starts: starts})
	case hasPitch:
		use(drive.Screw{Pitch: pitch, Starts: 1})
	case hasStarts:
		return nil, notOffered("starts without a pitch or a lead")
	}
	if found > 1 {
		return nil, notOffered("more than one output element")
	}
	if out == nil {
		return nil, nil
	}
	return out, out.Check()
}
