package axis

import (
	"striderule/calc/measure"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// A ToolEntry asks what lengths or angles are read with.
type ToolEntry struct {
	Kind   sheet.Choice
	Step   unit.Entry
	Limits unit.Entry
	of     *quantity
}

// A quantity is what a tool reads: a length or an angle.
type quantity struct {
	tools      []measure.Instrument
	own        sheet.Option
	resolution string // hint
	suffix     string // of the keys
}

var (
	lengths = quantity{measure.Instruments, ownTool, resolutionHint, ""}
	angles  = quantity{measure.AngleInstruments, ownAngleTool, resolutionDegHint, SuffixAngle}
)

// OwnTool is the word of a tool whose resolution is typed.
const OwnTool = "own"

// SuffixAngle ends the keys of what is asked in degrees, where the same is asked in mm too.
const SuffixAngle = "deg"

// NewToolEntry offers the usual tools for lengths behind a first choice.
func NewToolEntry(first sheet.Option) ToolEntry {
	in := unit.Lengths.Input("mm", 0.0001, 100)
	return newToolEntry(&lengths, first, *in.Entry())
}

// NewAngleToolEntry offers the usual tools for angles behind a first choice. A second of arc
// is 0.00028°.
func NewAngleToolEntry(first sheet.Option) ToolEntry {
	in := unit.Angles.Input("°", 0.0001, 100)
	return newToolEntry(&angles, first, *in.Entry())
}

func newToolEntry(of *quantity, first sheet.Option, in unit.Entry) ToolEntry {
	options := []sheet.Option{first}
	for _, i := range of.tools {
		options = append(options, sheet.Option{Word: i.ID, Label: toolLabels.Of(i.ID), Hint: ""})
	}
	return ToolEntry{Kind: sheet.Choose(append(options, of.own)...), Step: in, Limits: in, of: of}
}

// Fields declares the entry; on is when something is read.
func (t *ToolEntry) Fields(section *sheet.Section, prefix, label string, on []sheet.When) []sheet.Field {
	keys := t.Keys(prefix)
	told := append(append([]sheet.When(nil), on...), sheet.When{Key: keys[0], Words: []string{t.Kind.Options()[0].Word}, Not: true})
	return []sheet.Field{
		{Key: keys[0], Label: label, Section: section, When: on, Cells: sheet.One(&t.Kind)},
		{Key: keys[1], Label: resolutionLabel, Hint: t.of.resolution, Section: section,
			When: sheet.And(on, keys[0], OwnTool), Cells: sheet.One(&t.Step)},
		{Key: keys[2], Label: accuracyLabel, Hint: accuracyHint, Section: section,
			When: told, Cells: sheet.One(&t.Limits)},
	}
}

// Instrument returns what was chosen; ok is false while nothing is chosen. An accuracy that is
// left blank is the usual one of its kind; of a tool of one's own nothing is known.
func (t *ToolEntry) Instrument() (measure.Instrument, bool) {
	with, ok := measure.InstrumentAmong(t.of.tools, t.Kind.Word)
	if t.Kind.Word == OwnTool {
		with, ok = measure.Instrument{ID: OwnTool, Resolution: t.Step.Number}, t.Step.Given
	}
	with.Accuracy = with.Usual
	if t.Limits.Given {
		with.Accuracy = t.Limits.Number
	}
	return with, ok
}

// Assumes says what an answer takes for granted of a tool whose accuracy was left blank; false
// where nothing is.
func (t *ToolEntry) Assumes() (report.Note, bool) {
	with, ok := t.Instrument()
	switch {
	case !ok || t.Limits.Given:
		return report.Note{}, false
	case with.Accuracy == 0:
		return report.TipNote(resolutionOnly), true
	}
	usual := &report.Figure{Value: with.Accuracy, Unit: t.Limits.Unit(), Digits: 2}
	return report.TipNote(usualAccuracy, "tool", ToolName(with), "accuracy", usual), true
}

// Filled fills the same entry of another page in.
func (t *ToolEntry) Filled(prefix string) []Filling {
	if t.Kind.IsDefault() {
		return nil
	}
	keys := t.Keys(prefix)
	return Fills(keys[0], t.Kind.Word, keys[1], t.Step.String(), keys[2], t.Limits.String())
}

// Keys are all that the tool is made of.
func (t *ToolEntry) Keys(prefix string) []string {
	return []string{prefix + "tool" + t.of.suffix, prefix + "step" + t.of.suffix, prefix + "limits" + t.of.suffix}
}

// ToolName is how a sentence calls one of the usual tools: "a 0.05 mm caliper".
func ToolName(i measure.Instrument) string { return toolNames.Of(i.ID) }
