package calc

import (
	"striderule/calc/measure"
	"striderule/calc/unit"
)

// A toolEntry asks what lengths are read with.
type toolEntry struct {
	Kind   Choice
	Step   unit.Input[unit.Length]
	Limits unit.Input[unit.Length]
}

var toolNames = worded{
	{"tape", "Tape, 1 mm"}, {"rule", "Steel rule, 1 mm"},
	{"caliper-0.1", "Caliper, 0.1 mm"}, {"caliper-0.05", "Caliper, 0.05 mm"},
	{"caliper-0.02", "Caliper, 0.02 mm"}, {"caliper-0.01", "Caliper, 0.01 mm"},
}

const ownTool = "own"

// newToolEntry offers the usual instruments behind a first choice.
func newToolEntry(first Option) toolEntry {
	options := []Option{first}
	for _, i := range measure.Instruments {
		options = append(options, Option{i.ID, toolNames.of(i.ID), ""})
	}
	options = append(options, Option{ownTool, "Another", "say its step below"})
	return toolEntry{
		Kind:   choose(options...),
		Step:   unit.Lengths.Input("mm", 0.0001, 100),
		Limits: unit.Lengths.Input("mm", 0.0001, 100),
	}
}

func (t *toolEntry) fields(section *Section, prefix, label string, on []When) []Field {
	told := append(append([]When(nil), on...), When{Key: prefix + "tool", Words: []string{t.Kind.Options()[0].Word}, Not: true})
	return []Field{
		{Key: prefix + "tool", Label: label, Section: section, When: on, Cells: one(&t.Kind)},
		{Key: prefix + "step", Label: "Its step", Hint: "The step of its display, or from line to line.", Section: section,
			When: and(on, prefix+"tool", ownTool), Cells: input(&t.Step)},
		{Key: prefix + "limits", Label: "Its accuracy, ±", Hint: "The limits of error that its maker states. Empty: only its step counts.", Section: section,
			When: told, Cells: input(&t.Limits)},
	}
}

// instrument returns what was chosen; ok is false while nothing is told.
func (t *toolEntry) instrument() (measure.Instrument, bool) {
	with, ok := measure.InstrumentOf(t.Kind.Word)
	if t.Kind.Word == ownTool {
		with, ok = measure.Instrument{ID: ownTool, Resolution: t.Step.Number}, t.Step.Given
	}
	with.Accuracy = t.Limits.Number
	return with, ok
}

// handed fills the same entry of another page in.
func (t *toolEntry) handed(prefix string) []entry {
	if t.Kind.isDefault() {
		return nil
	}
	return fills(prefix+"tool", t.Kind.Word, prefix+"step", t.Step.Text(), prefix+"limits", t.Limits.Text())
}

// keys are all that the instrument is made of.
func (t *toolEntry) keys(prefix string) []string {
	return []string{prefix + "tool", prefix + "step", prefix + "limits"}
}

// toolName is how a sentence calls one of the usual instruments.
func toolName(i measure.Instrument) string { return "a " + lower(toolNames.of(i.ID)) }
