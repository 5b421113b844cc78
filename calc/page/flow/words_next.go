package flow

import "striderule/calc/word"

const howTitle = "How to take the readings"

const zeroCaliper = "Wipe the caliper's jaws, close them and set zero."

// How the readings are taken, by way.
var (
	massSteps = []string{
		"Print a solid piece of 20 g or more with the profile you're tuning. The heavier it is, the less the balance's resolution matters.",
		"Weigh everything the slicer's figure includes: skirt, brim and supports too.",
		"Zero the balance, weigh the print, and check that zero comes back.",
		"Print and weigh it at least three times.",
	}
	diameterSteps = []string{
		zeroCaliper,
		"Measure across the filament, then a quarter turn round: it's often oval. Don't squeeze it flat.",
		"Repeat at five places or more, about 10 cm apart.",
	}
	wallSteps = []string{
		"Print a 30 to 40 mm box with no top and no infill, its wall one line thick, or more if that is too thin for your tool.",
		"Use the material, temperature, speed and layer height that you're tuning the flow for.",
		"Let it cool, and scrape off burrs and blobs.",
		zeroCaliper,
		"Measure in the middle of the four flat sides, twice each (eight readings): not at corners, the seam or the first layers. Squeeze lightly: the wall flexes.",
	}
)

// What to do next.
const (
	nextTitle = "What to do next"

	leaveIt                  = "Leave the flow. If surfaces or sizes are still wrong, the amount of plastic isn't the cause."
	noteOld    word.Template = "Write down the old flow first, so you can go back: {flow}."
	setFlow    word.Template = "Set the flow of this material or profile to {flow}, in one place only."
	printAgain word.Template = "Print it again and measure it in the same way. The target is {target}."
	printBand  word.Template = "Print it again and take as many readings in the same way. The target is {target}; their mean should land between {low} and {high}."
	typeAgain  word.Template = "Enter the new readings, and the new flow as “{flow}”. If it's still off in the same direction, the new flow isn't being used."

	setDiameter word.Template = "Enter the measured diameter in your slicer, {diameter}, and leave the flow alone."
	orSetFlow   word.Template = "Or leave the diameter in the slicer as it is, and set the flow to {flow}. Never do both."
	thenWall                  = "Then print a wall and measure it: that shows the total."
)

// What would settle it.
const (
	sayTool = "Take at least three readings, and fill in “Measuring tool”."

	takeThree                   = "Take at least three readings."
	oneMore       word.Template = "One more reading would give about ± {u}; {n} readings in all should settle it."
	oneMoreOnly   word.Template = "One more reading would give about ± {u}."
	oneMoreAbout  word.Template = "One more reading would give about ± {u}. If the next ones are like these, about {n} readings in all settle it."
	moreLines     word.Template = "Print a thicker wall, so that the tool's resolution matters less: {n} lines should settle it."
	toolAndMore                 = "Use a finer tool and take more readings, or accept a larger error."
	gapsWeigh     word.Template = "More lines don't help while there are gaps. Print a solid piece, weigh it, and choose “{weight}” above."
	orWeigh       word.Template = "Or print a solid piece, weigh it, and choose “{weight}” above."
	biggestSource               = "See below where most of the ± comes from. The balance? Use a finer one or print a heavier piece. The density? Find a better value."
)

const belongsTitle = "Steps/mm, flow or slip: which is which?"

// belongs keeps three settings apart that can all hide each other's errors.
var belongs = []string{
	"Steps/mm: how much filament is fed for each millimetre commanded. It belongs to the machine, whatever the material, and comes first.",
	"Flow: how much plastic comes out for each millimetre fed, compared with what the slicer assumes. It belongs to one material and profile, and comes after steps/mm.",
	"Slip: an error that grows with feed speed. Neither setting cures it: print hotter or slower, or clean the drive gear.",
	"A flow that you tuned with a wrong setting: multiply it by the old steps/mm ÷ the new. It made up for the wrong setting: start there and tune it again. One from before a part was changed stays.",
}

// The drawings.
const (
	placesTitle   = "Where to put the caliper"
	placesHere    = "measure here:"
	placesMiddle  = "middle of a flat side"
	placesCorner  = "not at a corner"
	placesSeam    = "not at the seam"
	placesPicture = "A printed box from above. The caliper's jaws take one wall in the middle of a flat side, not at a corner or the seam."
)
