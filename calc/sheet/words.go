package sheet

import "striderule/calc/word"

// What is wrong with a typed text; see unit.Error.
const (
	noOption  word.Template = "{field}: “{typed}” isn't one of the options. Write one of these: {options}."
	noFlag    word.Template = "{field}: “{typed}” is neither yes nor blank. Write yes, or leave it blank."
	noASCII   word.Template = "{field}: “{typed}” isn't all printable ASCII. Use only plain letters, digits and signs."
	tooLong   word.Template = "{field}: “{typed}” is longer than {n} characters. Shorten it."
	notToRead word.Template = "{field}: This can't be read."
)

// What a field is called.
const (
	inRow    word.Template = "{field} in {row}"
	inRows   word.Template = "{field} ({rows})"
	withUnit word.Template = "{field} ({unit})"
)

// What a field takes, and when it applies: {what} is the name of a text, {meaning} what yes
// stands for.
const (
	anyOption word.Template = "any of {options}"
	aboutFlag word.Template = "yes ({meaning})"
	aboutText word.Template = "{what} (at most {n} characters)"
	aboutLine word.Template = "{what} (printable ASCII, at most {n} characters; in a link one command, and no ; or bracket)"
	onlyWith  word.Template = "{takes}; only with {choices}"
)

// What is wrong with a line for a controller, or may be.
const (
	oddSign      word.Template = "“{line}” holds “{sign}”. A line from a link is taken only if it's made of letters, digits, blanks and these: . , : = + - _ $ ' \""
	placeTwice   word.Template = "“{line}” has {place} twice. A line from a link is taken only if it has it once."
	manyCommands word.Template = "“{line}” holds more than one command: {commands}. The machine would obey all of them."
	besideOther  word.Template = "“{line}”: a digit, a point, a sign or an E stands beside {place}, so the machine would read another number."
	onlyRemark   word.Template = "“{line}” has {place} only behind the “;”: the machine takes that for a remark."
	noSpeed      word.Template = "“{line}” has no {place}: the moves won't have the planned speed."
	namesAxis    word.Template = "“{line}” names the axis {letter}, which this sheet isn't about."
)
