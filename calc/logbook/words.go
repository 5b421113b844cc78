package logbook

import "striderule/calc/word"

// What an entry's keys hold, for the tables of the method page.
const (
	holdsID      = "at most 40 small letters, digits and hyphens"
	holdsDate    = "when it was saved, by the device's clock: 2026-11-25 or 2026-11-25T10:03"
	holdsMachine = "the machine's name"
	holdsAxis    = "feed, travel or rotary (extruder, linear, rotary), or the name you gave it"
	holdsNote    = "a note"
	holdsPage    = "the page, by its name in addresses"
	holdsSheet   = "what was typed: the part after # in the sheet's link"
	holdsOutput  = "the result's output, as in the tables above; left out if there is no result"
	holdsLabel   = "what the result was called; only older entries have it"
	holdsUnit    = "the result's unit"
	holdsValue   = "the result with all its digits"
	holdsU       = "the result's ± (95% confidence), in the same unit; left out if there is none"
	holdsVerdict = "leave, change, more, either, hopeless, interim, parts or mistake, with after- in front for check runs and -slip at the end for slip; older entries have a title"

	holdsVersion                   = "how the file is to be read: a number, currently 1"
	holdsFileOfSheet word.Template = "says what the file is: {mark}"
	holdsEntries                   = "key and text as in the sheet's link, or a list of texts; saw is the result"
)

// asMeasured is what a setting is called that comes from readings, whatever the verdict was.
const asMeasured word.Template = "{setting}, as measured"

// notGiven stands for what has no text.
const notGiven = "not given"

// axisNames are what axes are called whose key an entry holds: words of the links.
var axisNames = word.Table{
	{"feed", "Extruder"},
	{"travel", "Linear"},
	{"rotary", "Rotary"},
}

// verdictTitles are those of report.Verdict.ID, as the pages have them; what was too coarse,
// only the page says.
var verdictTitles = word.Table{
	{"leave", "Leave it"},
	{"change", "Change it"},
	{"more", "Measure more"},
	{"either", "Either is fine"},
	{"hopeless", tooCoarse},
	{"mistake", "Look for a mistake first"},
	{"parts", "Keep it: the parts say so"},
	{"interim", "Set it for now, and measure better"},
	{"leave-slip", "Leave it – but there is slip"},
	{"change-slip", "Change it – and there is slip"},
	{"more-slip", "Measure more – and there is slip"},
	{"either-slip", "Either is fine – but there is slip"},
	{"hopeless-slip", "Too coarse to settle it – and there is slip"},
	{"mistake-slip", "Look for a mistake first – and there is slip"},
	{"interim-slip", "Set it for now – and there is slip"},
	{"after-leave", "Done: the change worked"},
	{"after-change", "Still off after the change"},
	{"after-more", "Not sure yet: add check runs"},
	{"after-either", "Close enough"},
	{"after-hopeless", tooCoarse},
}

const tooCoarse = "Too coarse to settle it"

// verdictsOnce are titles that older versions stored and nobody says any more, with what
// they are now.
var verdictsOnce = word.Table{
	{"Not with this instrument and length", "hopeless"},
	{"Not with this instrument and wall", "hopeless"},
	{"Not with this instrument", "hopeless"},
	{"Not with this balance and density", "hopeless"},
	{"Not with this instrument and length, and mind the slip", "hopeless-slip"},
	{"Leave it, and mind the slip", "leave-slip"},
	{"Change it, and mind the slip", "change-slip"},
	{"Measure more, and mind the slip", "more-slip"},
	{"Either is fine, and mind the slip", "either-slip"},
	{"Look for a mistake first, and mind the slip", "mistake-slip"},
	{"Done: the change did what it should", "after-leave"},
	{"Not sure yet: add runs after the change", "after-more"},
	{"As near as it matters", "after-either"},
}
