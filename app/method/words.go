package method

import "striderule/calc/word"

// Name is what the menu calls the page.
const (
	Name = "How it works"

	question = "Where do the numbers come from, and can I trust them?"
)

// For the person at the machine.
const (
	measureTitle = "What you measure"
	measureSays  = "You command a length, say 80 mm, and measure how far it really moved. If that's 76 mm, each millimetre needs 80/76 times as many steps: new steps/mm = old steps/mm × commanded ÷ measured. If your controller stores travel per motor turn, the correction is the other way round: × measured ÷ commanded."
	markSays     = "For an extruder, mark the filament before the run and measure afterwards what remains to the mark. The mark is farther away than the length you feed, so it never goes in."

	doubtTitle  = "Is it the machine, or the ruler?"
	doubtSays   = "Measure the same move three times and you get three readings. The new setting can't be better than they are, so it comes with a ±. It depends on how much the runs differ, how finely your tool reads, and how accurate it is. 95% confidence means that the ± holds in 95 of 100 such tests."
	verdictSays = "The verdict compares the error, with its ±, with the error you accept (0.5% for an extruder, unless you say otherwise). If the error is almost certainly smaller: leave it. If it's almost certainly larger: change it. If it may be either: measure more, and the page says what would help most. If your tool can never settle it, the page says so."

	blameTitle = "When the setting isn't to blame"
	slipSays   = "When filament slips, it feeds less the faster you go. Test at several speeds, and the errors lie on a slope: the setting is then read off where the line meets speed 0, where nothing slips."
	otherSays  = "Backlash shows when you reach the same position from both sides. A wrong step angle, microsteps or gear ratio makes the error a plain factor, such as 2: then the page names what to check before you change anything."

	trustTitle                  = "Why you can trust it"
	heldSays      word.Template = "We tried the ± on simulated machines whose true error is known, in 160 mixes of scatter, tool and way of reading. With two runs or more of one length it held in at least {least}% of the tests, in every mix. One run alone claims nothing."
	verdictHeld                 = "We tried the verdicts the same way. If the true error lies exactly at the limit you accept, “leave it” and “change it” are each wrong in at most 5% of tests, even if you check after each run; anywhere else, less often."
	partsShown                  = "Each result shows where its ± comes from, and each formula is below, with its source."
	checkIt                     = "You can check it with a pocket calculator. Or let somebody else: a copied link opens the same sheet on any copy of this site, which says whether it gets the same result."
	noUncertainty               = "What no ± can know: a mark measured from the wrong edge each time, a ruler that is wrong by more than you entered, a reading typed wrong."
)

// chapters of the method page that are for reading once more.
const (
	cautionsTitle  = "Cautions"
	formulasTitle  = "Formulas and their sources"
	coverageTitle  = "How often it holds"
	exampleTitle   = "A worked example"
	linksTitle     = "Link format"
	formulasBrief  = "each with its source"
	coverageBrief  = "by simulation, with 2 to 10 runs"
	exampleBrief   = "three runs of an extruder"
	glossaryBrief  = "what the words mean"
	forDevelopers  = "for developers"
	sheetFileTitle = "Sheet file format"
	logFileTitle   = "Log file format"
	glossaryTitle  = "Glossary"
)

const (
	exactness = "Counts (teeth, starts, steps, microsteps) stay whole numbers until the last division, and π enters last, so results are exact to about 15 digits. “Copy exact value” gives all of them."

	exampleStory                = "Heron, the printer of Tidewater Makers' Hall, got a new extruder: 1.8° motor, 16 microsteps, 12 teeth on the motor side and 54 on the driven side. The setting is 538.0 steps/mm. 80 mm is commanded three times, each time with a new mark at 105 mm; what remains is read with a caliper."
	exampleAnswer word.Template = "{label}: {figure}. {says}"
	openExample                 = "Open this example"
)

// How often the interval holds.
const (
	coverageSays    = "Three runs give a fair answer, five a good one: two give a much wider ±. “95% confidence” was tried on simulated machines whose true error is known: 160 mixes of scatter (0.05 to 5 times the tool's resolution), accuracy (none to 5 times the resolution) and kind of test. The table has the worst of the 160."
	coverageCaption = "How often the interval held the true error, worst of 160 mixes"
	coverageRuns    = "Runs"
	coverageShown   = "The ± shown holds in"
	coverageGuide   = "k · u holds in"
	coverageWidth   = "Mean width, times"

	coverageWhy                 = "k · u is the expanded uncertainty of the Guide (JCGM 100). It takes one t for everything. Where few runs happen to scatter little, that t becomes small as well, and the interval too narrow. So the ± shown gives the scatter its own t, and takes the tool's errors for what they are: evenly spread, within limits. The last column has its mean width, compared with a test whose scatter is known beforehand."
	coverageLevel               = "You may check after every run, and stop when there is a verdict. Each look is a chance to err, so a verdict at n runs may err in 5.5% / n (0.5% at two). Looking from 3 to 50 runs, at an error that is just at the limit, that errs in at most 5% either way. If you planned the number of runs, the first look is at that number, and may err in 5%."
	coverageRow   word.Template = "{n} runs"
)

// Links.
const (
	linksAbout                 = "A link is the page's address, a #, and the entries: key=value, joined by &. v=1 is the version; links made today will always open. A bare number is in the field's unit; another unit follows the number: 80, 80mm, 3.15in. Lists are joined by commas, so the decimal mark in a link is the point. What is left out has its default. saw=ID:value:U:edition:sum is the result the sender saw, its uncertainty, the edition of the calculations behind it and a sum of the entries; the page checks them against its own, and notices if a part of the link is missing. A link that you edit yourself needs no saw. In a reply, was-key holds what a changed entry was before, and remark a line of text. machine and axisname say whose axis a sheet is about, id tells it from others on a device, and set is the day of its setting; on the Machines page each of these and each fact is a list, one cell an axis. card is the step of Run the test, in an address of your own only. Nothing after the # is ever sent to the host."
	figuresAbout               = "Every computed figure is a data element with the id out-… and the full value. The IDs are those of the outputs below, followed by -1, -2 … where each row has one, and by -u for the expanded uncertainty."
	pageAndPath  word.Template = "{page}: {path}"
	keysOf       word.Template = "Keys of {page}"
	outputsOf    word.Template = "Outputs of {page}"
	headKey                    = "Key"
	headEntry                  = "Entry"
	headTakes                  = "Takes"
	headOutput                 = "Output"
	headFigure                 = "Figure"
	headUnit                   = "Unit"
)

// Files.
const (
	sheetFileAbout   = "“Save as a file” writes a sheet as one text file in JSON (UTF-8). Open it again on the start page or on any calculator's page."
	sheetFileCaption = "Keys of a sheet file"
	sheetFileRead    = "Only page and entries are read: the result is worked out again and checked against saw. Entries may be texts, numbers or lists of them; a key that the page doesn't know is kept. Rows are saved for a spreadsheet as CSV (RFC 4180), with the decimal point. Text that a spreadsheet would take for a formula gets an apostrophe in front."
	logFileAbout     = "The log is saved as one text file in JSON (UTF-8), one entry to a line. log says what it is, version how to read it, and entries holds the entries, newest first. Empty values are left out."
	logFileCaption   = "Keys of an entry of the log"
	logFileRead      = "A file that is damaged, cut off or of a newer version is imported as far as it can be read, and each fault is listed with its line. An entry that is there already is skipped; one with the same id and different content gets an id of its own. Unknown keys are kept if they hold a text or a number."
	logFileStored    = "In the browser each entry is one item: the same keys in the form of a link, log=1&id=…&date=…, under a key that names this site's folder. As CSV it has words for axis, result and verdict."
	headHolds        = "Holds"
	headIs           = "Is"
	isText           = "text"
	isNumber         = "number"
)
