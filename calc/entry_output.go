package calc

import (
	"striderule/calc/drive"
	"striderule/calc/unit"
)

// A screwValue reads designations and leads; see drive.ParseScrew.
type screwValue struct {
	Value drive.Screw
	Given bool
	text  string
}

// Set reads a screw.
func (s *screwValue) Set(text string) error {
	text = s.Plain(text)
	*s = screwValue{}
	if text == "" {
		return nil
	}
	v, err := drive.ParseScrew(text)
	if err != nil {
		return err
	}
	*s = screwValue{v, true, text}
	return nil
}

// String returns the designation.
func (s *screwValue) String() string { return s.text }

// Plain returns the text, trimmed.
func (s *screwValue) Plain(text string) string { return plainText(text) }

// About says what is read.
func (s *screwValue) About() string {
	return "a screw: its designation such as Tr8x8(P2) or M8x1.25, its lead, or pitch x starts"
}

// An outputEntry asks for the element that turns rotation into travel.
type outputEntry struct {
	Kind     Choice
	Pitch    unit.Input[unit.Length]
	Teeth    unit.Input[unit.Count]
	Screw    screwValue
	Diameter unit.Input[unit.Length]
	Module   unit.Input[unit.Length]
	Pinion   unit.Input[unit.Count]
}

func newOutputEntry() outputEntry {
	return outputEntry{
		Kind: choose(
			Option{"belt", "Belt and pulley", ""},
			Option{"screw", "Screw", ""},
			Option{"roller", "Drive roller", ""},
			Option{"rack", "Rack and pinion", ""},
			Option{"rotary", "Turns the work", "a rotary table"},
		),
		Pitch:    unit.Lengths.Input("mm", 0.1, 100),
		Teeth:    unit.Teeth.Input("", 4, 1000),
		Diameter: unit.Lengths.Input("mm", 0.1, 1000),
		Module:   unit.Lengths.Input("mm", 0.05, 50),
		Pinion:   unit.Teeth.Input("", 4, 1000),
	}
}

func (o *outputEntry) fields(section *Section, suffix string, on []When) []Field {
	with := func(kind string) []When { return and(on, "out"+suffix, kind) }
	return []Field{
		{Key: "out" + suffix, Label: "Output element", Section: section, When: on, Cells: one(&o.Kind)},
		{Key: "pitch" + suffix, Label: "Belt pitch", Hint: "From tooth to tooth.", Section: section, When: with("belt"), Cells: one(&o.Pitch), Suggest: []string{"2 mm", "3 mm"}},
		{Key: "teeth" + suffix, Label: "Pulley teeth", Section: section, When: with("belt"), Cells: one(&o.Teeth), Suggest: []string{"16", "20"}},
		{Key: "screw" + suffix, Label: "Screw", Hint: "Its designation such as Tr8x8(P2), its lead (8 mm), or pitch x starts (2 mm x 4).", Section: section, When: with("screw"), Cells: one(&o.Screw)},
		{Key: "roller" + suffix, Label: "Effective diameter of the roller", Hint: "Where it grips: less than its outer diameter. Measure afterwards, whatever is listed.", Section: section, When: with("roller"), Cells: one(&o.Diameter)},
		{Key: "module" + suffix, Label: "Module of the rack", Section: section, When: with("rack"), Cells: one(&o.Module)},
		{Key: "pinion" + suffix, Label: "Pinion teeth", Section: section, When: with("rack"), Cells: one(&o.Pinion)},
	}
}

// element returns the output, nil while it is incomplete, and the keys of what
// is missing.
func (o *outputEntry) element(suffix string) (drive.Output, []string) {
	var missing []string
	need := func(key string, given bool) {
		if !given {
			missing = append(missing, key+suffix)
		}
	}
	var out drive.Output
	switch o.Kind.Word {
	case "belt":
		need("pitch", o.Pitch.Given)
		need("teeth", o.Teeth.Given)
		out = drive.Belt{Pitch: o.Pitch.Value, Teeth: o.Teeth.Value}
	case "screw":
		need("screw", o.Screw.Given)
		out = o.Screw.Value
	case "roller":
		need("roller", o.Diameter.Given)
		out = drive.Roller{Diameter: o.Diameter.Value}
	case "rack":
		need("module", o.Module.Given)
		need("pinion", o.Pinion.Given)
		out = drive.Rack{Module: o.Module.Value, Teeth: o.Pinion.Value}
	case "rotary":
		out = drive.Rotary{}
	}
	if len(missing) > 0 {
		return nil, missing
	}
	return out, nil
}

func (o *outputEntry) keys(suffix string) []string {
	keys := []string{"out", "pitch", "teeth", "screw", "roller", "module", "pinion"}
	for i := range keys {
		keys[i] += suffix
	}
	return keys
}

// describe says what the element is: "belt of 2 mm pitch on 20 teeth".
func (o *outputEntry) describe() string {
	switch o.Kind.Word {
	case "belt":
		return "a belt of " + unit.Lengths.Text(o.Pitch.Value) + " pitch on " + itoa(int(o.Teeth.Value)) + " teeth"
	case "screw":
		return "a screw of " + unit.Lengths.Text(o.Screw.Value.Lead()) + " lead"
	case "roller":
		return "a roller of " + unit.Lengths.Text(o.Diameter.Value) + " effective diameter"
	case "rack":
		return "a rack of module " + unit.Full(float64(o.Module.Value)) + " on " + itoa(int(o.Pinion.Value)) + " teeth"
	}
	return "turning the work directly"
}
