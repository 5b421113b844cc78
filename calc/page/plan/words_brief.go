package plan

const (
	careHot    = "Hot end burns. Stay, hand near the stop."
	careCold   = "Fingers off the gears. Stay, hand near the stop."
	careLinear = "In range, Z off the bed, hand near the stop."
)

// What folded parts hold.
const (
	beforeBrief  = "checklist and cautions"
	duringBrief  = "mark, move, read, again"
	afterBrief   = "what to put back"
	figuresBrief = "length, runs, time"
	pictureBrief = "to scale"
	speedsBrief  = "speed by speed"
	targetsBrief = "positions to reach"
	tradeBrief   = "more runs or a longer move"
)
