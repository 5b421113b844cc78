package calculator

import (
	"striderule/calc/report"
	"striderule/calc/word"
)

// The form.
const (
	loadExample               = "Example"
	goOn                      = "Back to my sheet"
	clearAll                  = "Clear"
	runIt                     = "Run it with me"
	backBrings                = "To get your entries back, press Back in the browser."
	entriesName               = "Entries"
	moreName                  = "More entries"
	moreTitle                 = "Fill in more"
	assumedName               = "Assumed:"
	setUpTitle                = "What is assumed"
	nothingHeld               = "optional: all blank"
	wrongHeld   word.Template = "▲ {held}"
	doubtHeld   word.Template = "? {held}"
	resultName                = "Result"
	suggestion  word.Template = "{field}: {text}"
	chosenHint  word.Template = "{option} – {hint}"
	unitOfField word.Template = "Unit of {field}"
	addSign                   = "+"
	removeRow   word.Template = "Remove {row}"
	undoRows                  = "Undo"
	typedInVain word.Template = "{field}: “{text}” is kept. It isn't used with the choices of this link."
	rowsUndone                = "Undone. The rows are as they were."
)

// The answer.
const (
	pleaseFix                    = "Please fix"
	toGet          word.Template = "To get {result}, fill in {fields}."
	stillNeeded                  = "Still needed:"
	letterOf       word.Template = "{letter}: {field}"
	andTheLast                   = " and "
	andTheNext                   = ", "
	copyExact                    = "Copy"
	copyExactOf    word.Template = "Copy exact value: {value}"
	copiedValue    word.Template = "Copied {value}"
	verdictAloud   word.Template = "{verdict}. {why}"
	keepAloud      word.Template = "{label}: {figure}."
	answerAloud    word.Template = "{label}: {figure}. {says}"
	lotsTitle                    = "Check by simulation"
	lotsAbout                    = "200,000 random trials with the same sources of error. Their interval should agree with the one above."
	lotsWider                    = "The one above is wider. From five runs on it's never narrower than the Guide's, which takes a tool's error as bell-shaped, though it has limits."
	runLots                      = "Run 200,000 trials"
	lotsSoFar                    = "Trials done"
	stopLots                     = "Stop"
	lotsCaption                  = "The error's interval, worked out in two ways"
	lotsError                    = "Error"
	lotsFrom                     = "From"
	lotsTo                       = "To"
	lotsAsCombined               = "As combined above"
	lotsAsDrawn                  = "From the trials"
)

// Lines for a machine that came with a link, by what becomes of them: of one, and of several.
var broughtWords = [...][2]struct{ says, do string }{
	report.ToAccept: {
		{"This line came with the link or file, and somebody else may have written it. It can heat the machine, move it, or turn a protection off. Read all of it: you can copy it once you have accepted it.", "Accept this line"},
		{"These lines came with the link or file, and somebody else may have written them. They can heat the machine, move it, or turn a protection off. Read all of them: you can copy and save what is made of them once you have accepted them.", "Accept these lines"},
	},
	report.Refused: {
		{says: "This line came with the link or file, and isn't used: the reason is below. If you need such a line, clear its field and type it yourself."},
		{says: "These lines came with the link or file, and aren't used: the reason is below. If you need such lines, clear their fields and type them yourself."},
	},
	report.Accepted: {
		{"This line came with the link or file. It's accepted on this device.", "Take it back"},
		{"These lines came with the link or file. They're accepted on this device.", "Take them back"},
	},
}

const (
	ownSoFar      = "The last one used on this device"
	lineAccepted  = "Accepted."
	lineTakenBack = "Taken back."
)

// Sharing.
const (
	tooLongForLink               = "This sheet is too long for a link. Shorten a text or remove some rows to share it."
	copyLink                     = "Copy link"
	linkCopied                   = "Link copied."
	shareLink                    = "Share…"
	printPage                    = "Print"
	moreWays                     = "More ways to share"
	moreWaysBrief                = "QR code, file, table"
	showCode                     = "Show as QR code"
	hideCode                     = "Hide the QR code"
	saveAsFile                   = "Save as a file"
	saveTable      word.Template = "Save the {rows} as CSV"
	howToReopen                  = "To reopen a file, use “Open a file” here or on the start page, or drop it on the page."
	printedLink    word.Template = "This sheet: {link}"
	printedEntry   word.Template = "{field}: {text}"
	postTitle                    = "Forum post"
	postBrief                    = "text for a thread"
	postFormat                   = "Forum format"
	postText                     = "Text of the post"
	copyPost                     = "Copy text"
	postCopied                   = "Text copied."
	sharePost                    = "Share text…"
)

// A sheet that was received, and what was changed in it.
const (
	differsSo                     = "Find out why before you use either."
	differsBar                    = "≠ Differs from the link: see why"
	seeWhy                        = "See what's odd about the link."
	changedHasSame                = "Changed by the sender, who saw the same result as this page."
	sameAsReceived                = "Same as when this sheet was sent or saved."
	changedSince                  = "Changed since this sheet was sent or saved."
	changedHere                   = "Changed since it was sent or saved"
	changedThere                  = "Changed by the sender"
	undoMyChanges                 = "Undo all my changes"
	openEarlier                   = "Open the sender's earlier version"
	namedResult     word.Template = "{label}: {figure}"
	beforeAndAfter  word.Template = "Result before: {before} · after: {after}"
	changesCaption                = "What was changed"
	changedEntry                  = "Entry"
	changedBefore                 = "Before"
	changedAfter                  = "After"
	changedAlone                  = "Result with only this change"
	tooLongForReply               = "Too long for a link with the changes. Share this sheet on its own."
	copyReply                     = "Copy a link with these changes"
	wasBefore       word.Template = "was {before}"
	remarkLabel                   = "Remark"
	remarkTip                     = "Goes with the link and the post: one line, at most 140 characters."
	theirRemark     word.Template = "Remark that came with the link: {text}"
	replyCopied                   = "Link copied. It shows what was changed."
	emptyEntry                    = "(empty)"
	noResult                      = "no result"
)

// How many entries were changed, and what that did.
var (
	youChanged    = word.Counted{One: "1 entry changed since this sheet was sent or saved: see which.", Other: "{n} entries changed since this sheet was sent or saved: see which."}
	youMoved      = word.Counted{One: "1 entry changed since this sheet was sent or saved, and the result went from {before} to {after}: see which.", Other: "{n} entries changed since this sheet was sent or saved, and the result went from {before} to {after}: see which."}
	senderChanged = word.Counted{One: "The sender changed 1 entry: see which.", Other: "The sender changed {n} entries: see which."}
	senderMoved   = word.Counted{One: "The sender changed 1 entry, and the result went from {before} to {after}: see which.", Other: "The sender changed {n} entries, and the result went from {before} to {after}: see which."}
)
