package calc

import (
	"math"
	"strings"

	"striderule/calc/unit"
)

// A movesEntry asks for the lines that a controller is moved with. Each is a
// template of the person's own; what is empty is taken from a builtin one.
type movesEntry struct {
	Single                    unit.Input[unit.Length]
	Begin, Move, Stop, Finish Template
}

// Places in the templates.
const (
	lengthPlace = "{length}"
	speedPlace  = "{speed}"
	axisPlace   = "{axis}"
)

const (
	builtinMove = "G1 " + axisPlace + lengthPlace + " F" + speedPlace
	builtinStop = "M0"
)

func newMovesEntry() movesEntry {
	return movesEntry{
		Single: unit.Lengths.Input("mm", 1, 3000),
		Begin:  newTemplate("a line before the first move"),
		Move:   newTemplate("the line of a move, with {length}, {speed} in mm/min and {axis} where they go"),
		Stop:   newTemplate("the line that waits while you read"),
		Finish: newTemplate("a line after the last move"),
	}
}

func (m *movesEntry) fields(section *Section, on []When) []Field {
	return []Field{
		{Key: "single", Label: "Longest move at a time", Hint: "If the controller refuses long single feeds: they are then split.", Section: section, When: on, Cells: input(&m.Single)},
		{Key: "begin", Label: "Line before the first move", Hint: "Empty: M83 for feeding, G91 for travel; moves are then relative.", Section: section, Cells: one(&m.Begin), Suggest: []string{"G91"}},
		{Key: "move", Label: "Line of a move", Hint: "Empty: " + builtinMove + ". {speed} is put in as mm/min.", Section: section, Cells: one(&m.Move), Suggest: []string{builtinMove}},
		{Key: "stop", Label: "Line that waits while you read", Hint: "Empty: " + builtinStop + ". If your controller does not know it, put in what yours waits with, and send the moves one by one until you know that it works.", Section: section, Cells: one(&m.Stop), Suggest: []string{builtinStop, "G4 S60"}},
		{Key: "finish", Label: "Line after the last move", Hint: "Empty: M82 for feeding, G90 for travel; moves are then absolute again.", Section: section, Cells: one(&m.Finish), Suggest: []string{"G90"}},
	}
}

func (m *movesEntry) keys() []string { return []string{"single", "begin", "move", "stop", "finish"} }

// problems finds a template for moves that has no place for the length.
func (m *movesEntry) problems() []Problem {
	if t := m.Move.Value; t != "" && !strings.Contains(t, lengthPlace) {
		return []Problem{{"move", 0, quote(t) + " has no " + lengthPlace + ". Write " + lengthPlace + " where the length goes, as in " + builtinMove + "."}}
	}
	return nil
}

// A program is a list of lines for a controller, in the making.
type program struct {
	*movesEntry
	axis               string // its letter
	relative, absolute string // built in
	lines              []string
	path               float64 // mm moved, there and back
	seconds            float64 // that the moves take
}

// program begins a list of moves of one axis. Feed axes have words of their own
// for relative and absolute moves.
func (m *movesEntry) program(axis string, feed bool) *program {
	if feed {
		return &program{movesEntry: m, axis: axis, relative: "M83", absolute: "M82"}
	}
	return &program{movesEntry: m, axis: axis, relative: "G91", absolute: "G90"}
}

// orElse is the person's line, or the builtin one.
func orElse(own Template, builtin string) string {
	if own.Value != "" {
		return own.Value
	}
	return builtin
}

// say adds a remark on a line of its own.
func (p *program) say(text string) { p.lines = append(p.lines, "; "+text) }

func (p *program) add(line, why string) { p.lines = append(p.lines, line+" ; "+why) }

func (p *program) begin() { p.add(orElse(p.Begin, p.relative), "moves are relative from here on") }

func (p *program) wait(why string) { p.add(orElse(p.Stop, builtinStop), why) }

func (p *program) finish() {
	p.add(orElse(p.Finish, p.absolute), "back to absolute moves; leave it out if yours are always relative")
}

// move adds a move of a length in mm at a speed in mm/s, split where the
// controller takes no longer ones.
func (p *program) move(length float64, speed unit.Speed, why string) {
	sign, rest := 1.0, length
	if rest < 0 {
		sign, rest = -1, -rest
	}
	p.path, p.seconds = p.path+rest, p.seconds+rest/float64(speed)
	single := rest
	if p.Single.Given {
		single = p.Single.Number
	}
	for rest > 0 {
		part := min(rest, single)
		rest = nearest(rest - part)
		p.add(p.fill(sign*part, speed), why)
		why = "goes on"
	}
}

func (p *program) fill(length float64, speed unit.Speed) string {
	return unit.Replaced(orElse(p.Move, builtinMove), axisPlace, p.axis, lengthPlace, decimal(length), speedPlace, decimal(float64(speed)*unit.Minute))
}

func (p *program) String() string { return strings.Join(p.lines, "\n") }

// thousandth is how finely moves are commanded, in mm.
const thousandth = 0.001

// nearest rounds a length to be commanded.
func nearest(v float64) float64 { return math.Round(v/thousandth) / 1000 }

// decimal writes a length to be commanded: no exponent, at most three decimals.
func decimal(v float64) string { return unit.Full(nearest(v)) }
