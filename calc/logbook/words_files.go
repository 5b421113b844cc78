package logbook

import "striderule/calc/word"

// What is wrong with an entry. Each stands behind a colon or a dash.
const (
	newerEntry                       = "saved by a newer version of this site; reload the page to get that version"
	longEntry                        = "longer than an entry can be"
	noEntry                          = "not an entry of the log"
	notANumber         word.Template = "{key} is {text}, which isn't a number"
	badID              word.Template = "its ID is {id}; only small letters, digits and hyphens are allowed"
	noDate                           = "it has no date"
	badDate            word.Template = "its date is {date}; a date looks like 2026-11-25 or 2026-11-25T10:03"
	badPage            word.Template = "its page is {page}; that should be the name of a page, such as measure"
	noSheet                          = "it has no sheet"
	badNumber                        = "its value or uncertainty isn't a valid number"
	valueWithoutOutput               = "a result needs both a value and an output"
)

// What is wrong with a file of the log, by line.
const (
	inLine       word.Template = "Line {line}: {damage}"
	leftOut      word.Template = "entry left out – {why}"
	startMissing               = `the start of the file is missing: {"log":"striderule", …`
	textAfterLog               = "there is text after the end of the log"
	logEndless                 = "a comma or the end of the log is missing"
	noColon                    = "a colon is missing"
	noList                     = "a [ is missing before the entries"
	noVersion    word.Template = "the version isn't a number; read as version {version}"
	cutOff                     = "the file ends here, before the end of the log; it was cut off"
	noObject                   = "there should be an entry in { } here"
	noComma                    = "a comma is missing"
	unknownKey   word.Template = "{key} isn't a known key and was left out"
	tooLarge     word.Template = "entry left out – {key} is too large a number"
	wantsNumber  word.Template = "entry left out – {key} must be a number"
	wantsText    word.Template = "entry left out – {key} must be text in quotes"
)

// Where JSON ends to be JSON.
const (
	cutOffWithin                = "the file ends here, in the middle of an entry; it was cut off"
	tooDeep                     = "nested too deeply"
	noValue                     = "a value is missing, or isn't text in quotes or a number"
	listEndless                 = "a comma or ] is missing"
	noColonAfter  word.Template = "a colon is missing after {key}"
	objectEndless word.Template = "a comma or } is missing after {key}"
	noQuote                     = "a quotation mark is missing"
	textEndless                 = "the closing quotation mark of a text is missing"
	badEscape                   = "unknown backslash escape"
)

// Why a file cannot be opened as a sheet.
const (
	isALog                      = "It's a log: import it on the Log page."
	longSheet                   = "It's longer than a sheet can be."
	damagedSheet  word.Template = "It's damaged in line {line}: {damage}."
	textAfterEnd                = "there is text after the end of the sheet"
	notASheet                   = `It isn't a sheet of this site; such a file begins with {"sheet":"striderule".`
	unknownPage   word.Template = "It belongs to a page that this version of the site doesn't have: {page}."
	noEntries     word.Template = "{key} is missing from it, or isn't an object."
	textInEntries word.Template = "In line {line}, {key} must be text in quotes."
)
