package run

import "striderule/calc/word"

// What the buttons of the cards do.
const (
	toTheSheet                = "To Calibrate"
	back                      = "Back"
	goOn                      = "Next"
	allSeen                   = "All done"
	iAmReady                  = "I'm ready"
	done                      = "Done"
	iHaveSent                 = "I've sent it"
	itStopped                 = "It has stopped: next"
	useUsual    word.Template = "Use {value}"
	iHaveSetIt                = "I have set it"
	tryAgain                  = "Try again"
	nextRun                   = "Next run"
	seeResult                 = "See the result"
	toSetting                 = "Set it"
	toSaving                  = "Keep the record"
	redo                      = "Make this run again"
	leaveOut                  = "Leave this run out"
	countIn                   = "Count this run"
	saveIt                    = "Save to the log"
	openLog                   = "Open the log"
	takeUpAgain               = "Go on with the test"
	signOn                    = "Signal at the end: on"
	signOff                   = "Signal at the end: off"
	useKeyboard               = "Keyboard"
	usePad                    = "Number pad"
	erase                     = "Erase"
	yesItIs     word.Template = "Yes, {reading}"
	thatIsIt    word.Template = "It's {reading}"

	nothingMoved = "Nothing moved"
	otherWay     = "Other way"
	markWentIn   = "Mark went in"
)

// Beside them.
const (
	ofMachine  word.Template = "{machine} · {where}"
	linesLabel               = "Send"
	thenTap                  = "Send them once, on the controller's console: this page sends nothing. Stay with the machine, a hand near the off switch."
	sentBefore               = "You've sent these lines. Sending them again moves it again."
	orAnother                = "Or begin another test:"
	mayDim                   = "This browser can't keep the screen awake: it may go dark during a move."
	leftToWait word.Template = "{minutes}:{seconds}"
	stay                     = "Stay with it. Tap when nothing moves any more."
	itIsOver                 = "Over"
	setTo      word.Template = "Set it to {setting}."
	usualLine                = "For example"
	padName                  = "Number pad"
	typeIt     word.Template = "{field}: type what you read, or tap what happened."
	nameLabel                = "Machine"
	nameIt                   = "Machine: please enter a name."
	notSaved                 = "Not saved."
	savedIt                  = "Saved in the log of this device."
)

// The page before the program is there.
const beforeStart = "These are the steps. The program is starting: it leads you through them one at a time."

var steps = []string{
	"Get the machine ready: don't touch the hot end. Stay with the machine, a hand near the off switch.",
	"Mark the filament, farther from the inlet than it will feed; or set the tool to zero.",
	"Send one slow move, and wait until nothing moves.",
	"Measure what remains to the mark, or how far it moved.",
	"Repeat at least twice. New steps/mm = steps/mm × commanded ÷ measured.",
	"Set it, and check it with another run.",
}
