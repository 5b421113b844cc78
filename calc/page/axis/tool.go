package axis

import (
	"striderule/calc/measure"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// A ToolEntry asks what lengths are read with.
type ToolEntry struct {
	Kind   sheet.Choice
	Step   unit.Input[unit.Length]
	Limits unit.Input[unit.Length]
}

var toolNames = word.Table{
	{"tape", "Tape, 1 mm"}, {"rule", "Steel rule, 1 mm"},
	{"caliper-0.1", "Caliper, 0.1 mm"}, {"caliper-0.05", "Caliper, 0.05 mm"},
	{"caliper-0.02", "Caliper, 0.02 mm"}, {"caliper-0.01", "Caliper, 0.01 mm"},
}

// OwnTool is the word of an instrument whose step is typed.
const OwnTool = "own"

// NewToolEntry offers the usual instruments behind a first choice.
func NewToolEntry(first sheet.Option) ToolEntry {
	options := []sheet.Option{first}
	for _, i := range measure.Instruments {
		options = append(options, sheet.Option{Word: i.ID, Label: toolNames.Of(i.ID), Hint: ""})
	}
	options = append(options, sheet.Option{Word: OwnTool, Label: "Another", Hint: "say its step below"})
	return ToolEntry{
		Kind:   sheet.Choose(options...),
		Step:   unit.Lengths.Input("mm", 0.0001, 100),
		Limits: unit.Lengths.Input("mm", 0.0001, 100),
	}
}

// Fields declares the entry; on is when something is read.
func (t *ToolEntry) Fields(section *sheet.Section, prefix, label string, on []sheet.When) []sheet.Field {
	told := append(append([]sheet.When(nil), on...), sheet.When{Key: prefix + "tool", Words: []string{t.Kind.Options()[0].Word}, Not: true})
	return []sheet.Field{
		{Key: prefix + "tool", Label: label, Section: section, When: on, Cells: sheet.One(&t.Kind)},
		{Key: prefix + "step", Label: "Its step", Hint: "The step of its display, or from line to line.", Section: section,
			When: sheet.And(on, prefix+"tool", OwnTool), Cells: sheet.Input(&t.Step)},
		{Key: prefix + "limits", Label: "Its accuracy, ±", Hint: "The limits of error that its maker states. Empty: only its step counts.", Section: section,
			When: told, Cells: sheet.Input(&t.Limits)},
	}
}

// Instrument returns what was chosen; ok is false while nothing is chosen.
func (t *ToolEntry) Instrument() (measure.Instrument, bool) {
	with, ok := measure.InstrumentOf(t.Kind.Word)
	if t.Kind.Word == OwnTool {
		with, ok = measure.Instrument{ID: OwnTool, Resolution: t.Step.Number}, t.Step.Given
	}
	with.Accuracy = t.Limits.Number
	return with, ok
}

// Filled fills the same entry of another page in.
func (t *ToolEntry) Filled(prefix string) []Filling {
	if t.Kind.IsDefault() {
		return nil
	}
	return Fills(prefix+"tool", t.Kind.Word, prefix+"step", t.Step.Text(), prefix+"limits", t.Limits.Text())
}

// Keys are all that the instrument is made of.
func (t *ToolEntry) Keys(prefix string) []string {
	return []string{prefix + "tool", prefix + "step", prefix + "limits"}
}

// ToolName is how a sentence calls one of the usual instruments.
func ToolName(i measure.Instrument) string { return "a " + word.Lower(toolNames.Of(i.ID)) }
