package axis

import (
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// Describe is what a sentence calls the element: "a belt of 2 mm pitch on 20 teeth".
func (o *OutputEntry) Describe() string { return outputNames.of(o) }

// An outputWords says each element by its facts.
type outputWords struct {
	belt, movingBelt, screw, roller, rack word.Template
	drum, movingDrum, differential        word.Template
	rotary                                string
}

// of says the element. It is complete.
func (w *outputWords) of(o *OutputEntry) string {
	switch o.Kind.Word {
	case "belt", "belt2":
		says := w.belt
		if o.Moving() {
			says = w.movingBelt
		}
		return says.Fill("pitch", unit.Lengths.Text(o.Pitch.Value()), "teeth", strconv.Itoa(int(o.Teeth.Value())))
	case "screw":
		return w.screw.Fill("lead", millimetres(o.Screw.Value.Lead()))
	case "roller":
		return w.roller.Fill("diameter", unit.Lengths.Text(o.Diameter.Value()))
	case "rack":
		return w.rack.Fill("module", unit.Trim(o.Module.Number, Digits), "teeth", strconv.Itoa(int(o.Pinion.Value())))
	case "drum", "drum2":
		says := w.drum
		if o.Moving() {
			says = w.movingDrum
		}
		return says.Fill("diameter", unit.Lengths.Text(o.Drum.Value()), "cable", unit.Lengths.Text(o.Cable.Value()))
	case "differential":
		return w.differential.Fill("travel", millimetres(unit.Length(drive.PerTurn(o.threads()))))
	}
	return w.rotary
}

// Given states what turns rotation into travel: "Belt: 2 mm pitch, 20 teeth".
func (o *OutputEntry) Given() string { return outputFacts.of(o) }

// millimetres is a length for reading.
func millimetres(l unit.Length) string {
	return report.Figure{Value: float64(l), Unit: "mm", Digits: Digits}.String()
}
