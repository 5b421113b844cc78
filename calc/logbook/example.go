package logbook

import "striderule/calc"

// Example returns the log of Tidewater Makers' Hall: Heron's extruder, and
// Plover's X axis, over some months.
func Example() []Entry {
	const (
		heron  = "v=1&mark=105&asked=80&tool=caliper-0.05&angle=1.8&micro=16&gears=pairs&driving=12&driven=54&steps="
		plover = "v=1&axis=travel&asked=200&tool=caliper-0.02&angle=1.8&micro=16&steps="
	)
	measure, _ := calc.PageOf("measure")
	var entries []Entry
	for _, k := range []struct{ date, machine, axis, note, sheet string }{
		{"2026-05-02T10:20", exampleHeron, "feed", noteFirst, heron + "538.0&rest=28.7,28.9,28.6"},
		{"2026-05-02T11:05", exampleHeron, "feed", noteAfter, heron + "564.3&rest=25.0,24.9,25.1"},
		{"2026-06-13T18:40", exampleHeron, "feed", "", heron + "564.3&rest=25.2,25.1,25.1"},
		{"2026-07-18T17:30", exampleHeron, "feed", noteBrushed, heron + "564.3&rest=25.0,25.2,25.1"},
		{"2026-08-22T14:10", exampleHeron, "feed", "", heron + "564.3&rest=25.4,25.3,25.3"},
		{"2026-09-26T16:00", exampleHeron, "feed", "", heron + "564.3&rest=25.5,25.3,25.4"},
		{"2026-10-31T15:15", exampleHeron, "feed", noteWorn, heron + "564.3&rest=25.7,25.8,25.7"},
		{"2026-05-09T09:30", examplePlover, "X", noteDelivered, plover + "88.889&moved=199.94,199.92,199.96"},
		{"2026-06-06T10:10", examplePlover, "X", "", plover + "88.889&moved=200.00,199.96,199.94"},
		{"2026-07-04T09:45", examplePlover, "X", "", plover + "88.889&moved=199.98,199.92,199.92"},
		{"2026-08-15T11:20", examplePlover, "X", noteTightened, plover + "88.889&moved=199.94,199.98,199.98"},
		{"2026-10-10T10:05", examplePlover, "X", "", plover + "88.889&moved=199.94,199.98,199.92"},
	} {
		if e, ok := Of(calc.Load(measure, k.sheet), k.date, k.machine, k.axis, k.note); ok {
			entries = append(entries, e)
		}
	}
	return NewBook(entries...).All()
}
