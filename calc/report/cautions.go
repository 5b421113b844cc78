package report

// A Hazard is a caution with the step that it belongs to. The machine's manual
// comes before all of them.
type Hazard struct {
	ID   string
	When string // the step
	Says string
}

// CautionOf returns a hazard as a note for the step that needs it.
func CautionOf(id string) Note {
	for _, h := range Hazards {
		if h.ID == id {
			return Note{Caution, Text(h.Says)}
		}
	}
	panic("calc: no hazard " + id)
}
