package axis

import (
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// An OutputEntry asks for the element that turns rotation into travel.
type OutputEntry struct {
	Kind     sheet.Choice
	Pitch    unit.Input[unit.Length]
	Teeth    unit.Input[unit.Count]
	Screw    screwValue
	Diameter unit.Input[unit.Length]
	Module   unit.Input[unit.Length]
	Pinion   unit.Input[unit.Count]
	Drum     unit.Input[unit.Length]
	Cable    unit.Input[unit.Length]
	First    screwValue // of a differential screw
	Second   screwValue
}

// fewestTeeth is what a pulley, a pinion or a driven gear has at least.
const fewestTeeth = 4

func outputChoice() sheet.Choice { return sheet.Choose(outputOptions...) }

func pitchInput() unit.Input[unit.Length]    { return unit.Lengths.Input("mm", 0.1, 100) }
func wheelInput() unit.Input[unit.Count]     { return unit.Teeth.Input("", fewestTeeth, 1000) } // pulley or pinion
func diameterInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", 0.1, 1000) }
func moduleInput() unit.Input[unit.Length]   { return unit.Modules.Input("mm", 0.05, 50) }
func cableInput() unit.Input[unit.Length]    { return unit.Lengths.Input("mm", 0.01, 50) }

// NewOutputEntry is one with nothing given.
func NewOutputEntry() OutputEntry {
	return OutputEntry{
		Kind: outputChoice(), Pitch: pitchInput(), Teeth: wheelInput(),
		Diameter: diameterInput(), Module: moduleInput(), Pinion: wheelInput(),
		Drum: diameterInput(), Cable: cableInput(),
	}
}

// Fields declares the entry; on is when there is one.
func (o *OutputEntry) Fields(section *sheet.Section, suffix string, on []sheet.When) []sheet.Field {
	return OutputFields(section, nil, suffix, on, nil, outputCells{
		sheet.One(&o.Kind), sheet.Input(&o.Pitch), sheet.Input(&o.Teeth), sheet.One(&o.Screw), sheet.Input(&o.Diameter), sheet.Input(&o.Module), sheet.Input(&o.Pinion),
		sheet.Input(&o.Drum), sheet.Input(&o.Cable), sheet.One(&o.First), sheet.One(&o.Second),
	})
}

// outputCells are what holds an output element: one, or one a row.
type outputCells struct{ kind, pitch, teeth, screw, roller, module, pinion, drum, cable, first, second sheet.Cells }

// OutputFields declares the kind of element first. sized is when what decides
// its travel per turn is asked for.
func OutputFields(section *sheet.Section, group *sheet.Group, suffix string, on, sized []sheet.When, c outputCells) []sheet.Field {
	with := func(kinds ...string) []sheet.When { return sheet.And(on, "out"+suffix, kinds...) }
	size := func(kinds ...string) []sheet.When { return lists.Concat(with(kinds...), sized) }
	field := func(key, label, hint string, on []sheet.When, cells sheet.Cells, suggest ...string) sheet.Field {
		return sheet.Field{Key: key + suffix, Label: label, Hint: hint, Section: section, When: on, Group: group, Cells: cells, Suggest: suggest}
	}
	return []sheet.Field{
		field("out", outLabel, "", on, c.kind),
		field("pitch", pitchLabel, pitchHint, with("belt", "belt2"), c.pitch, "2 mm", "3 mm"),
		field("teeth", teethLabel, "", size("belt", "belt2"), c.teeth, "16", "18"),
		field("screw", screwLabel, screwHint, size("screw"), c.screw),
		field("roller", diameterLabel, diameterHint, size("roller"), c.roller),
		field("module", moduleLabel, moduleHint, with("rack"), c.module),
		field("pinion", pinionLabel, "", size("rack"), c.pinion),
		field("drum", drumLabel, drumHint, size("drum", "drum2"), c.drum),
		field("cable", cableLabel, cableHint, size("drum", "drum2"), c.cable),
		field("first", firstLabel, firstHint, size("differential"), c.first),
		field("second", secondLabel, secondHint, size("differential"), c.second),
	}
}

// Element returns the output, nil while it is incomplete, and the keys of what
// is missing.
func (o *OutputEntry) Element(suffix string) (drive.Output, []string) {
	var missing []string
	need := func(key string, given bool) {
		if !given {
			missing = append(missing, key+suffix)
		}
	}
	var out drive.Output
	switch o.Kind.Word {
	case "belt", "belt2":
		need("pitch", o.Pitch.Given)
		need("teeth", o.Teeth.Given)
		out = drive.Belt{Pitch: o.Pitch.Value(), Teeth: o.Teeth.Value()}
	case "screw":
		need("screw", o.Screw.Given)
		out = o.Screw.Value
	case "roller":
		need("roller", o.Diameter.Given)
		out = drive.Roller{Diameter: o.Diameter.Value()}
	case "rack":
		need("module", o.Module.Given)
		need("pinion", o.Pinion.Given)
		out = drive.Rack{Module: o.Module.Value(), Teeth: o.Pinion.Value()}
	case "rotary":
		out = drive.Rotary{}
	case "drum", "drum2":
		need("drum", o.Drum.Given)
		need("cable", o.Cable.Given)
		out = drive.Drum{Diameter: o.Drum.Value(), Cable: o.Cable.Value()}
	case "differential":
		need("first", o.First.Given)
		need("second", o.Second.Given && !o.alike())
		out = o.threads()
	}
	if len(missing) > 0 {
		return nil, missing
	}
	if o.Moving() {
		out = drive.MovingPulley{Pulled: out}
	}
	return out, nil
}

// Sort is the kind of element, whether or not it pulls over a moving pulley.
func (o *OutputEntry) Sort() string { return strings.TrimSuffix(o.Kind.Word, "2") }

// Moving reports whether a moving pulley halves the travel.
func (o *OutputEntry) Moving() bool { return o.Kind.Word != o.Sort() }

func (o *OutputEntry) threads() drive.Differential {
	return drive.Differential{First: o.First.Value, Second: o.Second.Value}
}

// alike reports whether both threads of a differential screw are given, and do the same.
func (o *OutputEntry) alike() bool {
	return o.First.Given && o.Second.Given && o.threads().Check() != nil
}

// Problems are those between the facts of the element, in a row of a table or row 0.
func (o *OutputEntry) Problems(suffix string, row int) []report.Problem {
	if o.Kind.Word != "differential" || !o.alike() {
		return nil
	}
	return []report.Problem{{Key: "second" + suffix, Row: row, Says: sameLeads.Fill("typed", o.Second.String(), "lead", millimetres(o.Second.Value.Lead()))}}
}

// Filled fills the same entry of another page in.
func (o *OutputEntry) Filled(suffix string) []Filling {
	return Fills(
		"out"+suffix, o.Kind.Chosen(), "pitch"+suffix, o.Pitch.Bare(), "teeth"+suffix, o.Teeth.Bare(), "screw"+suffix, o.Screw.String(),
		"roller"+suffix, o.Diameter.Bare(), "module"+suffix, o.Module.Entry().Typed(), "pinion"+suffix, o.Pinion.Bare(),
		"drum"+suffix, o.Drum.Bare(), "cable"+suffix, o.Cable.Bare(), "first"+suffix, o.First.String(), "second"+suffix, o.Second.String(),
	)
}

// Keys are all that the element is made of.
func (o *OutputEntry) Keys(suffix string) []string {
	keys := []string{"out", "pitch", "teeth", "screw", "roller", "module", "pinion", "drum", "cable", "first", "second"}
	for i := range keys {
		keys[i] += suffix
	}
	return keys
}
