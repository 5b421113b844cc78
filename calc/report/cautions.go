package report

// A Hazard is a caution with the step that it belongs to. The maker's
// instructions go before all of them.
type Hazard struct {
	ID   string
	When string // the step
	Says string
}

// Hazards are the suite's cautions, in full on the method page.
var Hazards = []Hazard{
	{"maker", "Always", "The maker's instructions for your machine go first. Where they and this page disagree, follow them."},
	{"stay", "While it moves", "Stay with the machine while it moves, with a hand near the stop."},
	{"hot", "Hot test", "The hot end and the plastic that comes out of it burn skin. Touch neither, and keep air moving: melted plastic gives off fumes."},
	{"rollers", "While it moves", "Keep fingers, hair, sleeves and tools away from rollers, gears, belts and screws."},
	{"cold", "Open-path test", "Feed cold only while no filament stands in a cold hot end: it would be ground down at the roller, or the drive would be strained."},
	{"guard", "Open-path test", "A guard against cold feeding may be lifted for an open-path test only. Put it back afterwards."},
	{"range", "Travel test", "Keep every move inside the machine's range, and Z well away from the bed."},
	{"wiring", "Motors and drivers", "Switch off and wait before touching wiring or jumpers. Never connect or disconnect a motor under power."},
	{"mains", "Mains side", "Work on the mains side is for qualified people, under the local codes."},
	{"swap", "After a motor swap", "Set the driver's current for the new motor before it runs, and check its direction with a short, slow move."},
}

// CautionOf returns a hazard as a note for the step that needs it.
func CautionOf(id string) Note {
	for _, h := range Hazards {
		if h.ID == id {
			return CautionNote(h.Says)
		}
	}
	panic("calc: no hazard " + id)
}
