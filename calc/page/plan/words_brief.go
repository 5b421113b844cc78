package plan

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
