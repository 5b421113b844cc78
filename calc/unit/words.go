package unit

import "striderule/calc/word"

// What is wrong with a typed text: {field} is where it was typed, {typed} the text. What would
// be right follows as a sentence of its own, that of the kind.
const (
	notNumber word.Template = "{field}: “{typed}” isn't a number."
	notUnit   word.Template = "{field}: “{unit}” in “{typed}” isn't a unit this field takes."
	notWhole  word.Template = "{field}: “{typed}” isn't a whole number."
	twoWays   word.Template = "{field}: “{typed}” could mean {decimal} or {thousands}. Write one of these."
)

// What is asked about a number without its unit, of a size that is unlikely in that of the
// field: {read} is what it was read as, {rather} what may have been meant.
const (
	readAs   word.Template = "{field}: “{typed}” was read as {read}. Did you mean {rather}? Write the unit with it."
	readSlow word.Template = "{field}: “{typed}” was read as {read}: 100 mm take {minutes} minutes. Did you mean {rather}? Write the unit with it."
)

// A ranged is a sentence about a range, by the ends that it has.
type ranged struct{ both, least, most, none word.Template }

var (
	outside = ranged{
		both:  "{field}: “{typed}” is out of range. It must be from {least} to {most}.",
		least: "{field}: “{typed}” is out of range. It must be at least {least}.",
		most:  "{field}: “{typed}” is out of range. It must be at most {most}.",
		none:  "{field}: “{typed}” is out of range. It must be a finite number.",
	}
	about = ranged{
		both:  "{kind}, {least} to {most}",
		least: "{kind}, at least {least}",
		most:  "{kind}, at most {most}",
		none:  "{kind}, any finite number",
	}
)

// decimalMark is how a number is written for people.
const decimalMark = "."

// perWord is how people write the slash of a unit.
const perWord = " per "

// Words are what a kind is called, and how it is written.
type Words struct {
	Noun string        // with its article: "a length"
	Like word.Template // a sentence with an example
}

var (
	lengthWords       = Words{"a length", "Write it like 80 mm or 1.75 mm."}
	angleWords        = Words{"an angle", "Write it like 90°."}
	stepAngleWords    = Words{"a step angle", "Write it like 1.8° or 200 steps."}
	speedWords        = Words{"a speed", "Write it like 90 mm/min or 1.5 mm/s."}
	ratioWords        = Words{"a ratio", "Write it like 4.5 or 54:12."}
	percentWords      = Words{"a percentage", "Write it like 0.5%."}
	perLengthWords    = Words{"a steps/mm value", "Write it like 538 or 538 steps/mm."}
	perAngleWords     = Words{"a steps/° value", "Write it like 80 or 80 steps/°."}
	lengthByTurnWords = Words{"travel per turn", "Write it like 8 or 8 mm/rev."}
	angleByTurnWords  = Words{"an angle per turn", "Write it like 4 or 4°/rev."}
	turningWords      = Words{"a rotation speed", "Write it like 90°/s or 15 rev/min."}
	accelerationWords = Words{"an acceleration", "Write it like 1000 mm/s²."}
	timeWords         = Words{"a time", "Write it like 20 s or 2 min."}
	stepRateWords     = Words{"a step rate", "Write it like 40 kHz or 40000 pulses/s."}
	meltWords         = Words{"a melt rate", "Write it like 8 mm³/s."}
	flowWords         = Words{"a flow setting", "Write it like 0.97 or 97%."}
	massWords         = Words{"a mass", "Write it like 12.4 g."}
	densityWords      = Words{"a density", "Write it like 1.24 g/cm³."}
	voltageWords      = Words{"a voltage", "Write it like 24 V."}
	currentWords      = Words{"a current", "Write it like 1.5 A."}
	inductanceWords   = Words{"an inductance", "Write it like 3.2 mH."}
	resistanceWords   = Words{"a resistance", "Write it like 3.3 Ω or 3.3 ohm."}
	torqueWords       = Words{"a torque", "Write it like 0.4 N·m or 40 N·cm."}
	teethWords        = Words{"a number of teeth", "Write it like 20."}
	linesWords        = Words{"a number of lines", "Write it like 2."}
	startsWords       = Words{"a number of starts", "Write it like 4."}
	moduleWords       = Words{"a module", "Write it like 0.8 mm or 24 DP."}
	threadsWords      = Words{"threads per inch", "Write it like 20 tpi."}
	microstepWords    = Words{"a number of microsteps", "Write it like 16 or 1/16."}
)
