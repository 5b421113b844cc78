package logbook

// What the people of Tidewater Makers' Hall wrote into their log.
const (
	exampleHeron  = "Heron"
	examplePlover = "Plover"

	noteFirst     = "First test with the new extruder."
	noteAfter     = "After the change."
	noteBrushed   = "Drive gear brushed clean before the test."
	noteWorn      = "Teeth of the drive gear look worn."
	noteDelivered = "Belt as delivered."
	noteTightened = "Belt tightened."
)
