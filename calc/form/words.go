package form

import "striderule/calc/word"

// ofField names the field that a page's sentence about its entries is about.
const ofField word.Template = "{field}: {problem}"

// These ask about a machine's setting of now, and the sheet's; one with the day of that.
const (
	whichSetting     word.Template = "Which setting did the machine have for this? It has had {current} since {date}; this sheet says {sheet}."
	whichSettingOnce word.Template = "Which setting did the machine have for this? It has {current} now; this sheet says {sheet}."
)

// What is odd about a link.
const (
	longLink     word.Template = "The link is longer than {n} characters; the rest wasn't read."
	encodedTwice               = "The link seems to be percent-encoded twice. Texts in it are shown as they came."
	otherVersion word.Template = "The link is version “{theirs}”; this page knows version {ours}. It was read as far as possible."
	noField      word.Template = "“{key}” in the link isn't a field of this page."
	noValue      word.Template = "“{key}” in the link has no value. Write {key}=value."
	keyTwice     word.Template = "“{key}” is in the link twice; the first one is used."
	manyValues   word.Template = "{field}: the link has {n} values; {most} are read."
	noPart       word.Template = "“{field}” is in the link but isn't used with these choices."
	commaInValue word.Template = "{field}: “{typed}” in the link was read as {value}. Two values need a plain comma between them."
	badClaim     word.Template = "The sender's result, “{typed}”, isn't a number: there's nothing to compare with."
)

// Whether the sender saw the same result. {theirs} and {ours} are figures, {output} and
// {other} their names.
const (
	sameResult                  = "Same result as when this sheet was sent or saved."
	otherInterval word.Template = "Same value; the ± has been worked out differently since {since}."
	otherValue    word.Template = "Differs: the link said {theirs}; these entries give {ours}."
	otherOutput   word.Template = "Differs: the link said {theirs} ({output}); these entries give {ours} ({other})."
	noResult      word.Template = "Differs: the link said {theirs}; these entries give no result."
	otherEdition  word.Template = "The link was made by edition {theirs} of the calculations; this is edition {ours}."
)

// eitherUnit stands between the units of an output that may have one of two.
const eitherUnit = ", "

// What became of a link's entries on the way; {last} names the last one that came.
const (
	otherEntries  = "The entries aren't those that this result was sent with: something in the link was changed."
	resultChanged = "The entries are those that were sent: the result in the link was changed."
	eitherChanged = "The result or an entry in the link was changed after it was sent."
	stillSame     = "The result is still the one that was sent."
)

var cutShort = word.Counted{
	One:   "This link seems to be cut short: 1 character is missing. The last entry in it is “{last}”.",
	Other: "This link seems to be cut short: {n} characters are missing. The last entry in it is “{last}”.",
}

// What came of pasting: {rows} are named, as in “runs 2 to 4”.
const (
	pastedInto word.Template = "Pasted into {rows}."
	rowRemoved word.Template = "Removed {row}."
)

var (
	pastedOver   = word.Counted{One: "1 value was replaced.", Other: "{n} values were replaced."}
	pastedBeyond = word.Counted{
		One:   "1 line didn't fit: there are {most} rows at most.",
		Other: "{n} lines didn't fit: there are {most} rows at most.",
	}
	notPasted = word.Counted{
		One:   "Skipped 1 value: no matching column, or not one of the options.",
		Other: "Skipped {n} values: no matching column, or not one of the options.",
	}
)

// PostKinds are the kinds of a post, by name.
var PostKinds = [...]string{PlainPost: "Plain text", MarkdownPost: "Markdown", BBCodePost: "BBCode"}

// What a post says, by its kind.
const (
	plainLink    word.Template = "Sheet to check or correct: {address}"
	markdownLink word.Template = "[Sheet to check or correct](<{address}>)"
	bbCodeLink   word.Template = "[url={address}]Sheet to check or correct[/url]"
	noResultYet                = "No result yet."
	noResultThen               = "no result"

	postChanged               = "Changed"
	postResult                = "Result"
	postRemark                = "Remark"
	postChange  word.Template = "{entry}: {before} → {after}"
	postMoved   word.Template = "{before} → {after}"
	postUnread  word.Template = "“{line}” in it wasn't understood."
	postOther                 = "It gives a different result from these entries."
)

// What fields hold, in few words: {rows} are the rows of a group, {n} how many.
const (
	entryHeld    word.Template = "{field} {text}"
	ticksHeld    word.Template = "{n} of {all}"
	rowsHeld     word.Template = "{n} {rows}"
	betweenCells               = " → "
)
