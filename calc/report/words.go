package report

import "striderule/calc/word"

// Hazards are the suite's cautions, in full on the method page.
var Hazards = []Hazard{
	{"maker", always, "Your machine's manual comes first. If it disagrees with this page, follow the manual."},
	{"stay", whileMoving, "Stay with the machine while it moves, with a hand near the off switch."},
	{"hot", "Hot test", "The hot end and the molten plastic from it will burn you: touch neither. Keep the room ventilated: hot plastic gives off fumes."},
	{"rollers", whileMoving, "Keep fingers, hair, sleeves and tools away from drive gears, pulleys, belts and screws."},
	{"cold", coldTest, "Never push filament into a cold hot end: the drive gear will grind it down or strain the extruder. Feed cold only with the extruder disconnected from the hot end."},
	{"guard", coldTest, "Turn cold-extrusion protection off for the cold test only, and back on afterwards."},
	{"range", "Test of a linear axis", "Keep every move inside the machine's range, and Z well away from the bed."},
	{"turn", "Test of a rotary axis", "Keep every move inside the machine's range. Nothing on the table may hit anything, and no cable may wind up or snag."},
	{"wiring", "Motors and drivers", "Switch off and wait before you touch wiring or jumpers. Never connect or disconnect a motor under power."},
	{"mains", "Mains side", "Work on the mains side is for qualified people, to local codes."},
	{"swap", "After a motor swap", "Set the driver current for the new motor before you run it, and check its direction with a short, slow move."},
}

// What stands beside fields, in plain text.
const (
	asRead                   = "As read"
	remarkLine word.Template = "{key}: {says}"
)

// Steps that several cautions belong to.
const (
	always      = "Always"
	whileMoving = "While it moves"
	coldTest    = "Cold test"
)

// What is said of a chart beside what it says itself.
const (
	pointAt      word.Template = "{label}: {value}"       // a value of a point, of a curve, of a band
	pointAtPlace word.Template = "{label}: {at}, {value}" // a point where x is a quantity too
	withInterval word.Template = "{value} ({from} to {to})"
	fromTo       word.Template = "{from} to {to}"
	axisTitle    word.Template = "{label}, {unit}"
	valuesOf     word.Template = "{chart}: values"
)

var pointsWithin = word.Counted{One: "1 point at {from}", Other: "{n} points from {from} to {to}"}

// ReadingWords are how a chart of readings calls them.
type ReadingWords struct {
	Title, Says string
	One         string        // for the legend
	Point       word.Template // one by its number {n}
}

// What is read: runs of a test, or walls and pieces of a print.
var (
	RunWords = ReadingWords{
		Title: "Runs, their mean and what is acceptable",
		Says:  "Each run, the mean of the runs that count, and the band that is acceptable.",
		One:   "run", Point: "run {n}",
	}
	PrintWords = ReadingWords{
		Title: "Readings, their mean and what is acceptable",
		Says:  "Each reading, the mean of the readings that count, and the band that is acceptable.",
		One:   "reading", Point: "reading {n}",
	}
)

// The legend of a chart of readings.
const (
	leftOutKey    = "left out"
	outlierKey    = "outlier"
	meanKey       = "mean with its ±"
	checkRunKey   = "check run"
	acceptableKey = "acceptable"
	meanLabel     = "mean"
)

// A report as plain text.
const (
	onRequest   = "Cross-check by simulation: on request"
	tipKind     = "Tip"
	doubtKind   = "Check"
	cautionKind = "Caution"
)

const neededFor word.Template = "Needed for {result}: {keys}"

var broughtLines = [...]word.Template{
	ToAccept: "Came with the link, to be read before it is sent: {label}: {line}",
	Refused:  "Came with the link, not to be accepted: {label}: {line}",
	Accepted: "Came with the link, and was accepted: {label}: {line}",
}
