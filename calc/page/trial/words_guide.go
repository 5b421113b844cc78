package trial

import "striderule/calc/word"

// The caution in sight, by the sort of test.
const (
	CareHot    = "Hot end burns. Stay near the off switch."
	careCold   = "Fingers off the gears. Stay with the machine, hand near the off switch."
	careLinear = "In range, Z off the bed, hand near the off switch."
	careRotary = "Nothing in the way, no cable can snag, hand near the off switch."
)

// What the guides say in words; {asked}, {mark} and {read} are lengths or angles.
const (
	markGuide     word.Template = "A mark test. A: the length that is commanded ({asked}). B: from the extruder's inlet to the mark, before ({mark}). C: what remains to the mark, after ({read})."
	pieceGuide    word.Template = "A test in which the fed length is measured. A: the length that is commanded ({asked}). B: the length that was fed ({read})."
	carriageGuide word.Template = "A carriage before and after a move. A: the length that is commanded ({asked}). B: how far it moved ({read})."
	discGuide     word.Template = "A turning axis. A: the angle that is commanded ({asked}). B: how far it turned ({read})."
	sidesGuide                  = "A carriage at a target. A: the target. B: the position reached moving +. C: the position reached moving −."
	notGiven                    = "not given yet"

	fedOf word.Template = "{asked}, fed {fed}"
)
