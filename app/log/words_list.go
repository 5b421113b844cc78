package log

import "striderule/calc/word"

// The list, and what chooses from it.
const (
	machineLabel = "Machine"
	allMachines  = "All machines"
	axisLabel    = "Axis"
	allAxes      = "All axes"
	chooseAxis   = "Choose a machine and an axis to see how its results change over time."
	theEntries   = "Entries"
	tickTwo      = "Tick two to compare them."
	showMore     = "Show more"
	openLabel    = "Open"
	testLabel    = "Test again"
	noSuchPage   = "This version has no such page."
	deleteIt     = "Delete"
	noResultYet  = "No result yet"
	noMachine    = "No machine named"

	machineAndAxis word.Template = "{machine} · {axis}"
	entryOfDate    word.Template = "{entry}, {date}"
	openEntry      word.Template = "Open {entry}"
	testEntry      word.Template = "Test again: {entry}"
	deleteEntry    word.Template = "Delete {entry}"
	compareEntry   word.Template = "Compare {entry}"
	deleteListed   word.Template = "Delete these {n} entries"
)

var listHeading = word.Counted{
	One:   "1 entry",
	Other: "{n} entries",
}

// Two of them, side by side.
const (
	tickOneMore                   = "Tick one more to compare."
	onlyTwo         word.Template = "Only two can be compared; {n} are ticked."
	compareTwo                    = "Compare the two"
	clearTicks                    = "Clear ticks"
	comparisonLabel               = "Comparison"
	machineAxis                   = "Machine and axis"
	sideBySide                    = "Side by side"
	whatDiffers                   = "What differs:"
	otherPages      word.Template = "They come from different pages ({before} and {after}), so only the results can be compared."
	restIsSame                    = "Everything else is the same."
	aResult                       = "Result"
	aVerdict                      = "Verdict"
	noResult                      = "no result"
	namedResult     word.Template = "{name}: {result}"
)

// What belongs to none of the machines here.
const (
	sortingWhy                  = "Put under its machine, an entry counts in that machine's trend, and “Test again” starts from its setting."
	chooseMachine               = "Choose a machine"
	isItThat      word.Template = "Is it {machine}?"
	sortIn                      = "Put it there"
	sortNameIn    word.Template = "Put {name} under the chosen machine"
	chooseFirst   word.Template = "Choose the machine of {name} first."
)

var (
	sortingHeading = word.Counted{
		One:   "“{name}” in the log isn't one of your machines yet",
		Other: "{n} names in the log aren't machines of yours yet",
	}
	entriesNamed = word.Counted{
		One:   "{name}, 1 entry.",
		Other: "{name}, {n} entries.",
	}
	sortedIn = word.Counted{
		One:   "1 entry is now under {machine}.",
		Other: "{n} entries are now under {machine}.",
	}
	noRoom = word.Counted{
		One:   "1 entry is so long that it has no room for the name. It was left alone.",
		Other: "{n} entries are so long that they have no room for the name. They were left alone.",
	}
	backAgain = word.Counted{
		One:   "1 entry is back under its old name.",
		Other: "{n} entries are back under their old names.",
	}
)
