package run

import "striderule/calc/word"

// heads say where in the test a card is.
var heads = [Save + 1]string{Ask: "Before the test", Ready: "Get ready", Care: "Before the first move", Slack: "Get ready", Result: "The result", Set: "Set it", Save: "The record"}

const (
	runHead   word.Template = "Run {n}"
	runOfHead word.Template = "Run {n} of {all}"
	checkHead word.Template = "Check run {n}"
)

// sayings are what to do, by the step, and by the sort of test or the entry where they differ. Their
// parts: {wanted} is commanded, {mark} is its place, {low} and {far} is the way, {more} takes up the backlash.
var sayings = word.Table{
	{"ask", "Which setting does the controller have now?"},
	{"ask axis", "What are you calibrating?"},
	{"ask asked", "How far should it move in one run?"},
	{"ask askeddeg", "How far should it turn in one run?"},
	{"ask mark", "Where will you mark the filament?"},
	{"ask speed", "How fast should it move?"},
	{"ask tool", "What are you measuring with?"},
	{"ask tooldeg", "What are you measuring with?"},

	{"care", "The extruder will feed {far} of filament in each run, when you send the lines."},
	{"care travel", "The axis will move up to {far} in the + direction, and back. Put it near its low end, Z off the bed."},
	{"care rotary", "The axis will turn by up to {far} in the + direction, and back."},
	{"care sides", "The axis will move between {low} and {far} in machine coordinates. Home it first."},
	{"care later", "The axis will move as far as you choose for each run, plus up to {more}, and back. Put it where there is room."},
	{"slack", "Send these lines: they take up the slack."},

	{"choose at", "How fast is this run?"},
	{"choose want", "How long is this run?"},
	{"choose wantdeg", "By how much should it turn in this run?"},
	{"choose", "Which position should it reach?"},

	{"mark", "Mark the filament {mark} from the inlet."},
	{"mark each", "Mark the filament. How far is the mark from the inlet?"},
	{"mark fed", "Mark the filament where it goes in."},
	{"mark cut", "Cut the filament off flush where it comes out."},
	{"zero", "Send these lines, then set the tool to zero."},
	{"move", "Send these lines: they feed {wanted}."},
	{"move travel", "Send these lines: they move it {wanted}."},
	{"move rotary", "Send these lines: they turn it by {wanted}."},
	{"read", "What remains, from the inlet to the mark?"},
	{"read fed", "How much was fed?"},
	{"read cut", "How much was fed?"},
	{"read travel", "How far did it move?"},
	{"read rotary", "How far did it turn?"},
	{"return", "Send these lines: it goes back to where it began."},
	{"to-up", "Send these lines: it moves to {wanted} in the + direction."},
	{"to-down", "Send these lines: it moves to {wanted} in the − direction."},
	{"up", "What position do you read?"},
	{"down", "What position do you read?"},
	{"save", "Keep the record."},
}

// hints are what else to know.
var hints = word.Table{
	{"ask asked", "A longer move shows more."},
	{"ask askeddeg", "A larger angle shows more."},
	{"ask mark", "From the inlet: about 25 mm more than commanded."},
	{"ask speed", "Slowly: a fast move may slip or lose steps."},
	{"ask tool", "Its resolution counts in the ±."},
	{"ask tooldeg", "Its resolution counts in the ±."},
	{"choose", "Three different ones, three times each, make a good test."},
	{"mark mark", "A thin mark, read square-on, the filament straight along the ruler."},
	{"mark each", "A thin mark, read square-on, the filament straight along the ruler."},
	{"zero", "They take up the backlash."},
	{"to-up", "The last of them takes up the backlash."},
	{"to-down", "The last of them takes up the backlash."},
	{"save", "The log on this device keeps it. On the sheet you can share it."},
}

// What to see to.
const (
	seeToFilament                 = "Look at the filament."
	seeToController               = "Look at the controller's settings."
	seeToDriver                   = "Look at the driver."
	seeToHot                      = "Heat the hot end."
	heated                        = "It is at printing temperature, and steady."
	loaded                        = "The filament is in use, and comes out when you feed a little."
	seeToCold                     = "Disconnect the extruder from the hot end (Bowden: take the tube off)."
	offThePath                    = "The filament comes out of the extruder, or of its tube, into the open."
	guardOff                      = "Cold-extrusion protection is off. Turn it back on after the test."
	seeToAxis                     = "Look at the axis."
	readyPoint      word.Template = "{check}: {hint}."
	wayClear                      = "Nothing is in its way."
	cablesClear                   = "No cable can wind up or snag as it turns."
	usualTension                  = "Belts, screws and gears are as tight as you normally use them."
	toolAlong                     = "The ruler, caliper or dial gauge lies along the axis and can't move."
	discFixed                     = "The scale or dial is centred and can't slip."
)

// Of a reading that is due.
const (
	about        word.Template = "About {about} if all is right."
	aboutAndLast word.Template = "About {about} if all is right; {last} last time."
	goneTitle                  = "The mark went in"
	goneSays                   = "Then nobody knows how much was fed. Mark the filament farther out, and make this run again. Feeding twice as much is common after a swap: keep a hand near the off switch."

	doubtMark                   = "That's within the commanded length: the mark would go in. Mark it farther out."
	doubtRoom     word.Template = "On the way it goes to {low}. Is there room, with no endstop in between?"
	doubtReading  word.Template = "{reading}? It would have moved {moved}, of {asked} commanded."
	doubtPosition word.Template = "{reading}? The target was {target}."
)

// Where there is no answer yet.
const (
	wrongTitle  = "Something is wrong with an entry"
	notYetTitle = "No answer yet"
	notYetSays  = "The readings so far give none: make the next run, or look at the sheet."
)

// Units behind a number.
const (
	millimetres = " mm"
	degrees     = "°"
)

// usual are usual texts for entries; several are for runs that have each their own, in turn.
var usual = word.Table{
	{"asked feed", "80"}, {"asked", "100"}, {"askeddeg", "90"}, {"speed feed", "60"}, {"speed", "600"},
	{"at", "60 120 180"}, {"want", "20 60 100"}, {"wantdeg", "30 90 180"}, {"target", "10 50 100"}, {"targetdeg", "10 90 180"},
}

// The lines are built in: those of a link are no part of this page.
const (
	relativeFeed                = "M83"
	relative                    = "G91"
	absolute                    = "G90"
	moveLine      word.Template = "G1 {axis}{length}"
	moveLineSpeed word.Template = "G1 {axis}{length} F{speed}"
)

// usualSetting is a line that sets steps per mm, where the sheet has none of the person's own.
const usualSetting word.Template = "M92 {axis}{value}"
