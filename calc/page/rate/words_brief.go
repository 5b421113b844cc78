package rate

// What folded parts hold.
const (
	rowBrief      = "step rate, microstep"
	togetherBrief = "sum of the step rates"
	torqueBrief   = "of one microstep"
	cornerBrief   = "from the data sheet"
	aboutBrief    = "pulses, limit, speed"
)
