package axis

import "striderule/calc/word"

// What stands beside a field that was read.
const (
	ratioRead   word.Template = "The motor turns {ratio} times for one output turn."
	ratioFaster word.Template = "The output turns {times} times for one motor turn. If it's the other way, write {turned}."
	pairRead    word.Template = "{driving} → {driven} teeth: ratio {ratio}."
	pairFaster  word.Template = "{driving} → {driven} teeth: the output turns {times} times for one motor turn. If it's the other way, the motor side has {driven}."
	turnRead    word.Template = "One turn moves {travel}."
)

var screwRead = word.Counted{
	One:   "Lead {lead}, 1 start.",
	Other: "Lead {lead}, {n} starts.",
}

// A setting with a point that may stand between thousands.
const thousandsDoubt word.Template = "“{typed}” was read as {read}. Did you mean {rather}?"

// What is asked beside a field that may hold something else.
const (
	littleRead word.Template = "{typed} mm is very little. Do you mean inches? Then write {typed} in."
	oddPitch   word.Template = "Belts with a pitch of {pitch} are rare. Is that the width? The pitch is from tooth to tooth."
)

const leadOrPitch word.Template = "Is {lead} the lead or the pitch? Count the threads that start at the screw's end. With 4 starts write {lead} x 4, with one {lead} x 1."
