package run

import (
	"slices"
	"strconv"
	"strings"
)

// A Card is one step of a test.
type Card struct {
	Step  Step
	Check bool // of the runs after the change
	N     int  // of the run, of the lot of Ready, or of the entry of Ask, from 0
}

// A Step is what a card is for.
type Step uint8

const (
	Ask   Step = iota // an entry that the test needs
	Ready             // what to see to
	Care              // what will move, and how far
	Slack             // of an extruder is taken up

	// In each run.
	Choose // its length, speed or target, where each has its own
	Mark   // the filament
	Zero   // the slack is taken up, and the tool set to zero
	Move   // what is commanded
	Read   // what it did
	Return // the axis goes back to where the run began
	ToUp   // the target is approached moving +
	Up     // where it stands then
	ToDown // and moving −
	Down
	After // what is known by now
	Still // nothing moved
	Back  // it went the other way
	Gone  // the mark went in

	// After the runs.
	Result
	Set
	Save
)

// listed are the names in a list.
func listed(list string) []string {
	if list == "" {
		return nil
	}
	return strings.Split(list, ",")
}

// names are those of the steps, as an address has them.
var names = listed("ask,ready,care,slack,choose,mark,zero,move,read,return,to-up,up,to-down,down,after,still,back,gone,result,set,save")

// String is the name of a step.
func (s Step) String() string { return names[s] }

// askKeys are the entries that a test needs, in the order in which they are asked for.
var askKeys = listed("axis,steps,turn,output,stepsdeg,turndeg,outputdeg,asked,askeddeg,mark,speed,tool,tooldeg")

// AskFor is the card that asks for an entry.
func AskFor(key string) Card { return Card{N: slices.Index(askKeys, key)} }

// inRun reports whether a card is one of a run.
func (c Card) inRun() bool { return c.Step >= Choose && c.Step <= Gone }

// moves reports whether something is commanded at a card that depends on how far, or comes of it.
func (c Card) moves() bool { return c.Step >= Zero && c.Step <= Down }

const checkMark = "check-"

// String is the card as an address has it.
func (c Card) String() string {
	s := c.Step.String()
	switch {
	case c.Step == Ask:
		s += "-" + askKeys[c.N]
	case c.inRun(), c.Step == Ready:
		s += "-" + strconv.Itoa(c.N+1)
	}
	if c.Check {
		s = checkMark + s
	}
	return s
}

// parse reads a card back; that it is one of the test is not said.
func parse(text string) (c Card, ok bool) {
	text, c.Check = strings.CutPrefix(text, checkMark)
	if key, ask := strings.CutPrefix(text, "ask-"); ask {
		c.N = slices.Index(askKeys, key)
		return c, c.N >= 0
	}
	if cut := strings.LastIndexByte(text, '-'); cut >= 0 {
		if n, err := strconv.Atoi(text[cut+1:]); err == nil {
			text, c.N = text[:cut], n-1
		}
	}
	step := slices.Index(names, text)
	c.Step = Step(max(step, 0))
	return c, step > 0
}
