package frame

import "striderule/calc/word"

const (
	skipToContent               = "Skip to content"
	toStart       word.Template = "{site}: start" // of the mark that leads there
	menuName                    = "Menu"
	pagesName                   = "Pages"
	nothingLeaves               = "Nothing you type leaves this device, except in a link you choose to share."
	manualFirst                 = "Your machine's manual comes first. No warranty: check every value before it moves a machine."
)
