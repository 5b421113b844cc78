package trial

import (
	"math"
	"strings"

	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// A MovesEntry asks for the lines that a controller is moved with. Each is a
// template of the person's own; what is empty is taken from a builtin one.
type MovesEntry struct {
	Single                    unit.Input[unit.Length]
	Begin, Move, Stop, Finish sheet.Template
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

// NewMovesEntry is one with nothing given: the builtin lines.
func NewMovesEntry() MovesEntry {
	return MovesEntry{
		Single: unit.Lengths.Input("mm", 1, 3000),
		Begin:  sheet.NewTemplate("a line before the first move"),
		Move:   sheet.NewTemplate("the line of a move, with {length}, {speed} in mm/min and {axis} where they go"),
		Stop:   sheet.NewTemplate("the line that waits while you read"),
		Finish: sheet.NewTemplate("a line after the last move"),
	}
}

// Fields declares the entry; on is when long moves may be refused.
func (m *MovesEntry) Fields(section *sheet.Section, on []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "single", Label: "Longest move at a time", Hint: "If the controller refuses long single feeds: they are then split.", Section: section, When: on, Cells: sheet.Input(&m.Single)},
		{Key: "begin", Label: "Line before the first move", Hint: "Empty: M83 for feeding, G91 for travel; moves are then relative.", Section: section, Cells: sheet.One(&m.Begin), Suggest: []string{"G91"}},
		{Key: "move", Label: "Line of a move", Hint: "Empty: " + builtinMove + ". {speed} is put in as mm/min.", Section: section, Cells: sheet.One(&m.Move), Suggest: []string{builtinMove}},
		{Key: "stop", Label: "Line that waits while you read", Hint: "Empty: " + builtinStop + ". If your controller does not know it, put in what yours waits with, and send the moves one by one until you know that it works.", Section: section, Cells: sheet.One(&m.Stop), Suggest: []string{builtinStop, "G4 S60"}},
		{Key: "finish", Label: "Line after the last move", Hint: "Empty: M82 for feeding, G90 for travel; moves are then absolute again.", Section: section, Cells: sheet.One(&m.Finish), Suggest: []string{"G90"}},
	}
}

// Keys are all that the moves are made of.
func (m *MovesEntry) Keys() []string { return []string{"single", "begin", "move", "stop", "finish"} }

// Problems finds a template for moves that has no place for the length.
func (m *MovesEntry) Problems() []report.Problem {
	if t := m.Move.Value; t != "" && !strings.Contains(t, lengthPlace) {
		return []report.Problem{{Key: "move", Row: 0, Says: word.Quote(t) + " has no " + lengthPlace + ". Write " + lengthPlace + " where the length goes, as in " + builtinMove + "."}}
	}
	return nil
}

// A Program is a list of lines for a controller, in the making.
type Program struct {
	*MovesEntry
	axis               string // its letter
	relative, absolute string // built in
	lines              []string
	Path               float64 // mm moved, there and back
	Seconds            float64 // that the moves take
}

// Program begins a list of moves of one axis. Feed axes have words of their own
// for relative and absolute moves.
func (m *MovesEntry) Program(axis string, feed bool) *Program {
	if feed {
		return &Program{MovesEntry: m, axis: axis, relative: "M83", absolute: "M82"}
	}
	return &Program{MovesEntry: m, axis: axis, relative: "G91", absolute: "G90"}
}

// orElse is the person's line, or the builtin one.
func orElse(own sheet.Template, builtin string) string {
	if own.Value != "" {
		return own.Value
	}
	return builtin
}

// Say adds a remark on a line of its own.
func (p *Program) Say(text string) { p.lines = append(p.lines, "; "+text) }

func (p *Program) add(line, why string) { p.lines = append(p.lines, line+" ; "+why) }

// Start makes moves relative.
func (p *Program) Start() { p.add(orElse(p.Begin, p.relative), "moves are relative from here on") }

// Wait waits while something is read.
func (p *Program) Wait(why string) { p.add(orElse(p.Stop, builtinStop), why) }

// End makes moves absolute again.
func (p *Program) End() {
	p.add(orElse(p.Finish, p.absolute), "back to absolute moves; leave it out if yours are always relative")
}

// Go adds a move of a length in mm at a speed in mm/s, split where the
// controller takes no longer ones.
func (p *Program) Go(length float64, speed unit.Speed, why string) {
	sign, rest := 1.0, length
	if rest < 0 {
		sign, rest = -1, -rest
	}
	p.Path, p.Seconds = p.Path+rest, p.Seconds+rest/float64(speed)
	single := rest
	if p.Single.Given {
		single = p.Single.Number
	}
	for rest > 0 {
		part := min(rest, single)
		rest = Nearest(rest - part)
		p.add(p.fill(sign*part, speed), why)
		why = "goes on"
	}
}

func (p *Program) fill(length float64, speed unit.Speed) string {
	return unit.Replaced(orElse(p.Move, builtinMove), axisPlace, p.axis, lengthPlace, Decimal(length), speedPlace, Decimal(float64(speed)*unit.Minute))
}

// String is the program, a line each.
func (p *Program) String() string { return strings.Join(p.lines, "\n") }

// thousandth is how finely moves are commanded, in mm.
const thousandth = 0.001

// Nearest rounds a length to be commanded.
func Nearest(v float64) float64 { return math.Round(v/thousandth) / 1000 }

// Decimal writes a length to be commanded: no exponent, at most three decimals.
func Decimal(v float64) string { return unit.Full(Nearest(v)) }
