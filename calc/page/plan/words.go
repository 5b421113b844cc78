package plan

import "striderule/calc/word"

// A wording is how a plan says the runs of one sort of test: {n} is how often the same is
// measured, {places} at how many speeds, lengths or targets, {all} the runs in all.
type wording struct {
	answer word.Template // what the length is of
	says   word.Template // below it: {speed}, {mark}, and the uncertainty {u}
	finer  word.Template // what a finer {tool} needs
	repeat word.Template // the last step of each run
	title  word.Template // above the moves: {axis} and {length}; ASCII, as all remarks there
}

var (
	feedWording = wording{
		answer: "{n} runs, each",
		says:   "Feed at {speed}, with the mark at {mark}: you'll know the error to ± {u}.",
		finer:  "With {tool}, {n} runs of {length} would do.",
		repeat: "Mark again and repeat: {n} runs in all.",
		title:  "Extruder test: {n} runs of {length} mm",
	}
	speedsWording = wording{
		answer: "{all} runs ({n} at each of {places} speeds), each",
		says:   "Put the mark at {mark}: you'll know the error to ± {u}.",
		finer:  "With {tool}, {n} runs of {length} at each of {places} speeds would do.",
		repeat: "Mark again and repeat: {n} runs at each of {places} speeds.",
		title:  "Extruder test: {n} runs of {length} mm at each of {places} speeds",
	}
	moveWording = wording{
		answer: "{n} runs, each",
		says:   "Move at {speed}: you'll know the error to ± {u}.",
		finer:  "With {tool}, {n} runs of {length} would do.",
		repeat: "Go back past the start and repeat: {n} runs in all.",
		title:  "Test of the {axis} axis: {n} runs of {length} mm",
	}
	lengthsWording = wording{
		answer: "{all} runs ({n} of each of {places} lengths), the longest",
		says:   "Move at {speed}: you'll know the error to ± {u}.",
		finer:  "With {tool}, {n} runs of each of {places} lengths up to {length} would do.",
		repeat: "Go back past the start and repeat: {n} runs of each of {places} lengths.",
		title:  "Test of the {axis} axis: {n} runs of each of {places} lengths, up to {length} mm",
	}
	sidesWording = wording{
		answer: "{places} targets, first to last",
		says:   "Move at {speed}: you'll know the backlash to ± {u}.",
		repeat: "Wait until nothing moves, and write down the position as you read it: each of the {places} targets {n} times from each side.",
		title:  "Backlash test of the {axis} axis: each of {places} targets {n} times from each side",
	}
)

// What is asked for, and what an answer says besides.
const (
	missingTitle = "Still needed"
	forPlan      = "a plan"
	forRange     = "a test that stays inside the machine's range"
	forMelt      = "the melt rate"

	notAsWanted word.Template = "You asked for ± {wanted}."

	// Problems with an entry, behind the name of its field.
	rangeReversed word.Template = "“{to}” isn't above the lowest position, {from}. Enter the highest one here."
	rangeTooShort word.Template = "Only {free} mm is free. A test needs at least {least} mm."
	tooLong       word.Template = "“{length}” doesn't fit: {free} mm is free, and {slack} mm of that takes up backlash. Enter {most} mm at most."
	tooManyRuns   word.Template = "That makes {all} runs, and the limit is {most}. Enter {n} at most."
	oneSpeedOnly  word.Template = "All runs are at one speed. Enter at least two that differ, or choose “{choice}”."
)

// Where no plan is good enough, and what would help.
const (
	cannotTitle = "Can't be done like this"

	noRoom               = "The measuring tool doesn't reach the mark. Use one that reaches farther, or put the mark nearer."
	bestIs word.Template = "Even {n} runs and a length of {length} only get you to ± {best}; you asked for ± {wanted}."
	accept               = "Or accept a wider ±, as long as you can still tell whether the error is acceptable."

	improveTitle = "What would make it good enough"
	finerMark    = "A finer mark, read from the same edge each time, reduces the scatter."
	longerFeed   = "A longer move makes every error count for less."
	finerReading = "Reading square-on, from the same edge each time, reduces the scatter."
	longerMove   = "A longer move makes every error count for less."
)

// The test in numbers.
const (
	figuresTitle = "The test in numbers"
	runsLabel    = "Runs in all"
	errorLabel   = "Expected uncertainty of the error, ±"
	lostLabel    = "Expected uncertainty of the backlash, ±"
	markLabel    = "Mark at"
	speedLabel   = "Speed"
	fLabel       = "Speed as an F value"
	meltLabel    = "Melt rate needed"
	usedLabel    = "Filament used"
	timeLabel    = "Time, including measuring"

	beyondReach word.Template = "Your measuring tool usually reaches {reach}; here you'd have to measure {longest}."
	nearMark                  = "The mark is less than 10% beyond the commanded length: it may go into the extruder."
	fastTest                  = "That's fast for a test: the drive gear may slip."
	meltsLess   word.Template = "At {speed} the hot end has to melt {rate} but can only melt {limit}: the extruder would slip. Feed no faster than {most}."
)

// Length against runs.
const (
	tradeTitle = "Longer runs or more runs"

	chartTitle    = "Uncertainty to expect"
	chartSays     = "Uncertainty by length and number of runs. Where the lines meet, more runs don't help."
	lengthScale   = "Length of a run"
	errorScale    = "Uncertainty of the error"
	wantedLevel   = "Wanted"
	thisPlan      = "This plan"
	bestThereIs   = "The best there's room for"
	tableCaption  = "Tests that are equally good"
	runsColumn    = "Runs"
	lengthColumn  = "Length, mm"
	totalColumn   = "Total, mm"
	targetColumn  = "Target"
	atColumn      = "Position, mm"
	feedColumn    = "Speed, mm/min"
	secondsColumn = "mm/s"
	meltColumn    = "Melt rate, mm³/s"

	runsCurve word.Template = "{n} runs"
	eachCurve word.Template = "{n} runs at each"
	equal     word.Template = "Each of these tests gives ± {wanted}. Pick the one that suits you, and enter it under “{section}”."

	speedsTitle   = "What the speeds can show"
	speedsCaption = "Speeds"
	slipLabel     = "Smallest slip you'd notice, slowest to fastest"

	targetsTitle   = "Where to go"
	targetsCaption = "Targets"
	targetsSay     = "Moving +, reach each target from below; moving −, from above. The ends of the range are for turning round."
)

// The test as a drawing.
const (
	pictureTitle = "The test as a drawing"
	feedDrawing  = "One run, to scale"
	moveDrawing  = "The free range and the moves, to scale"
	freeDim      = "free"
	runDim       = "run"
	backDim      = "back"
	slackDim     = "backlash"
	turnDim      = "to turn round"
	movingPlus   = "moving +"
	movingMinus  = "moving −"
	between      = ", " // numbers in a row

	endAt word.Template = "{axis} {position}"

	runAlt     word.Template = "{axis} is free from {from} to {to}, which is {free}. The first {slack} takes up backlash. From there a run is {lengths}, and the way back {back}."
	lengthsAlt word.Template = "{axis} is free from {from} to {to}, which is {free}. The first {slack} takes up backlash. From there the runs are {lengths}, and the way back is {back} at most."
	sidesAlt   word.Template = "{axis} is free from {from} to {to}, which is {free}. Targets at {targets}, reached from below moving + and from above moving −. At least {slack} at each end is for turning round."
)
