package axis

import (
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/sheet"
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
func (s *screwValue) Plain(text string) string { return strings.TrimSpace(text) }

// About says what is read.
func (s *screwValue) About() string {
	return "a screw: its designation such as Tr8x8(P2) or M8x1.25, its lead, or pitch x starts"
}

// An OutputEntry asks for the element that turns rotation into travel.
type OutputEntry struct {
	Kind     sheet.Choice
	Pitch    unit.Input[unit.Length]
	Teeth    unit.Input[unit.Count]
	Screw    screwValue
	Diameter unit.Input[unit.Length]
	Module   unit.Input[unit.Length]
	Pinion   unit.Input[unit.Count]
}

func outputChoice() sheet.Choice {
	return sheet.Choose(
		sheet.Option{Word: "belt", Label: "Belt and pulley", Hint: ""},
		sheet.Option{Word: "screw", Label: "Screw", Hint: ""},
		sheet.Option{Word: "roller", Label: "Drive roller", Hint: ""},
		sheet.Option{Word: "rack", Label: "Rack and pinion", Hint: ""},
		sheet.Option{Word: "rotary", Label: "Turns the work", Hint: "a rotary table"},
	)
}

func pitchInput() unit.Input[unit.Length]    { return unit.Lengths.Input("mm", 0.1, 100) }
func wheelInput() unit.Input[unit.Count]     { return unit.Teeth.Input("", 4, 1000) } // pulley or pinion
func diameterInput() unit.Input[unit.Length] { return unit.Lengths.Input("mm", 0.1, 1000) }
func moduleInput() unit.Input[unit.Length]   { return unit.Lengths.Input("mm", 0.05, 50) }

// NewOutputEntry is one with nothing given.
func NewOutputEntry() OutputEntry {
	return OutputEntry{
		Kind: outputChoice(), Pitch: pitchInput(), Teeth: wheelInput(),
		Diameter: diameterInput(), Module: moduleInput(), Pinion: wheelInput(),
	}
}

// Fields declares the entry; on is when there is one.
func (o *OutputEntry) Fields(section *sheet.Section, suffix string, on []sheet.When) []sheet.Field {
	return OutputFields(section, nil, suffix, on, nil, outputCells{
		sheet.One(&o.Kind), sheet.Input(&o.Pitch), sheet.Input(&o.Teeth), sheet.One(&o.Screw), sheet.Input(&o.Diameter), sheet.Input(&o.Module), sheet.Input(&o.Pinion),
	})
}

// outputCells are what holds an output element: one, or one a row.
type outputCells struct{ kind, pitch, teeth, screw, roller, module, pinion sheet.Cells }

// OutputFields declares the kind of element first. sized is when what decides
// its travel per turn is asked for.
func OutputFields(section *sheet.Section, group *sheet.Group, suffix string, on, sized []sheet.When, c outputCells) []sheet.Field {
	with := func(kind string) []sheet.When { return sheet.And(on, "out"+suffix, kind) }
	size := func(kind string) []sheet.When { return lists.Concat(with(kind), sized) }
	field := func(key, label, hint string, on []sheet.When, cells sheet.Cells, suggest ...string) sheet.Field {
		return sheet.Field{Key: key + suffix, Label: label, Hint: hint, Section: section, When: on, Group: group, Cells: cells, Suggest: suggest}
	}
	return []sheet.Field{
		field("out", "What moves the work", "", on, c.kind),
		field("pitch", "Belt pitch", "From tooth to tooth.", with("belt"), c.pitch, "2 mm", "3 mm"),
		field("teeth", "Pulley teeth", "", size("belt"), c.teeth, "16", "20"),
		field("screw", "Screw", "Its designation such as Tr8x8(P2), its lead (8 mm), or pitch x starts (2 mm x 4).", size("screw"), c.screw),
		field("roller", "Effective diameter of the roller", "Where it grips: a little less than its outer diameter. The listed one will do to begin with; measure afterwards.", size("roller"), c.roller),
		field("module", "Module of the rack", "", with("rack"), c.module),
		field("pinion", "Pinion teeth", "", size("rack"), c.pinion),
	}
}

// OutputRows is an outputEntry for each row.
type OutputRows struct {
	Kind     sheet.ChoiceList
	Pitch    sheet.LengthList
	Teeth    sheet.CountList
	Screw    sheet.List[screwValue, *screwValue]
	Diameter sheet.LengthList
	Module   sheet.LengthList
	Pinion   sheet.CountList
}

// NewOutputRows is a table without rows.
func NewOutputRows() OutputRows {
	wheels := func() sheet.CountList { return sheet.ColumnOf(wheelInput()) }
	return OutputRows{
		Kind:  sheet.ListOf(outputChoice()),
		Pitch: sheet.LengthsOf(pitchInput()), Teeth: wheels(),
		Screw:    sheet.ListOf(screwValue{}),
		Diameter: sheet.LengthsOf(diameterInput()), Module: sheet.LengthsOf(moduleInput()), Pinion: wheels(),
	}
}

// Cells are the columns.
func (o *OutputRows) Cells() outputCells {
	return outputCells{&o.Kind, o.Pitch.Cells(), o.Teeth.Cells(), &o.Screw, o.Diameter.Cells(), o.Module.Cells(), o.Pinion.Cells()}
}

// At is the entry of one row.
func (o *OutputRows) At(i int) *OutputEntry {
	return &OutputEntry{o.Kind.Rows[i], o.Pitch.Row(i), o.Teeth.Row(i), o.Screw.Rows[i], o.Diameter.Row(i), o.Module.Row(i), o.Pinion.Row(i)}
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
	case "belt":
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
	}
	if len(missing) > 0 {
		return nil, missing
	}
	return out, nil
}

// Filled fills the same entry of another page in.
func (o *OutputEntry) Filled(suffix string) []Filling {
	return Fills(
		"out"+suffix, o.Kind.Chosen(), "pitch"+suffix, o.Pitch.Bare(), "teeth"+suffix, o.Teeth.Bare(), "screw"+suffix, o.Screw.String(),
		"roller"+suffix, o.Diameter.Bare(), "module"+suffix, o.Module.Bare(), "pinion"+suffix, o.Pinion.Bare(),
	)
}

// Keys are all that the element is made of.
func (o *OutputEntry) Keys(suffix string) []string {
	keys := []string{"out", "pitch", "teeth", "screw", "roller", "module", "pinion"}
	for i := range keys {
		keys[i] += suffix
	}
	return keys
}

// Describe says what the element is: "belt of 2 mm pitch on 20 teeth".
func (o *OutputEntry) Describe() string {
	switch o.Kind.Word {
	case "belt":
		return "a belt of " + unit.Lengths.Text(o.Pitch.Value()) + " pitch on " + strconv.Itoa(int(o.Teeth.Value())) + " teeth"
	case "screw":
		return "a screw of " + unit.Lengths.Text(o.Screw.Value.Lead()) + " lead"
	case "roller":
		return "a roller of " + unit.Lengths.Text(o.Diameter.Value()) + " effective diameter"
	case "rack":
		return "a rack of module " + unit.Full(o.Module.Number) + " on " + strconv.Itoa(int(o.Pinion.Value())) + " teeth"
	}
	return "turning the work directly"
}
