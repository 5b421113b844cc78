package link

import "striderule/calc/word"

// What was done to a link that had been changed on its way. The first and the last sentence
// stand around those of the changes.
const (
	// FromPost is said instead of the first where there was no link.
	FromPost = "This sheet was read from the text of a post."

	mendedFirst = "The link was damaged on the way and has been repaired."
	mendedLast  = "Check the entries against what was sent."

	mendedSpaces   = "Spaces were removed."
	mendedEncoding = "The link was percent-encoded more than once."
	mendedCommas   = "Commas between values had been percent-encoded."
	mendedEntity   = "The code that web pages write for “&” was read as “&”."
	mendedMicro    = "“µ” was read as “&micro”."
	mendedStart    = "“?” was read as “#”."

	mendedSemicolons = "“;” was read as “&”."

	mendedDecimals = "Commas within numbers were read as decimal points."
	mendedPlus     = "“+” was read as a space."
	mendedText     = "Spaces or signs that weren't in the link as it was sent were removed or read as plain ones."

	firstPart                   = "Only the first part of this long text was read."
	behindDropped word.Template = "“{text}” after the link was dropped."
	spacesLeft                  = "Spaces within values were left as they are."
	openEnd                     = "Where the link ends isn't certain, so the rest of its line was kept."
)

// mendedCharacters says what was done to characters that links do not have.
var mendedCharacters = [...]string{
	rawBreak:     "Line breaks were removed.",
	rawInvisible: "Invisible characters were removed.",
	rawWide:      "Wide letters and digits were read as plain ones.",
	rawDash:      "A long dash was read as a minus.",
	rawBlank:     "Special spaces were read as plain ones.",
}
