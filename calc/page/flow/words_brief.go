package flow

import "striderule/calc/word"

const (
	guideWall     word.Template = "A printed wall in section. A: the width of a line ({width}). B: the height of a layer ({layer}). C: how many lines lie side by side ({walls}). D: the thickness that the caliper reads ({read})."
	guideDiameter word.Template = "Filament in section. A: the diameter that is set in the slicer ({set}). B: the diameter that the caliper reads."
	notGiven                    = "not given yet"
)

// What folded parts hold.
const (
	howBrief     = "step by step"
	whyBrief     = "every source of error"
	belongsBrief = "steps/mm, flow, diameter"
	nextBrief    = "nothing more"
)

var readingsBrief = word.Counted{One: "1 reading", Other: "{n} readings"}
