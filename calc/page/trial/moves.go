package trial

import (
	"math"
	"slices"
	"strings"

	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// A MovesEntry asks for the lines that a controller is moved with. Each is a
// template of the person's own; what is empty is taken from a builtin one.
type MovesEntry struct {
	Single                    unit.Input[unit.Length]
	Begin, Move, Stop, Finish sheet.Template
}

// The place that a move's line must have.
const lengthPlace = "{length}"

// builtin are the page's own lines, in the order of lineKeys; the first of each is written
// where nothing is typed. Those for relative and absolute moves depend on the axis.
var builtin = [4][]string{{"G91"}, {builtinMove}, {builtinStop, "G4 S60"}, {"G90"}}

var lineKeys = [4]string{"begin", "move", "stop", "finish"}

// Indices of both.
const (
	begin = iota
	move
	stop
	finish
)

// NewMovesEntry is one with nothing given: the builtin lines.
func NewMovesEntry() MovesEntry {
	return MovesEntry{
		Single: unit.Lengths.Input("mm", 1, 3000),
		Begin:  sheet.NewTemplate(beginAbout),
		Move:   sheet.NewTemplate(moveAbout, lengthPlace, sheet.SpeedPlace, sheet.AxisPlace),
		Stop:   sheet.NewTemplate(stopAbout),
		Finish: sheet.NewTemplate(finishAbout),
	}
}

// Fields declares the entry; on is when long moves may be refused.
func (m *MovesEntry) Fields(section *sheet.Section, on []sheet.When) []sheet.Field {
	return []sheet.Field{
		{Key: "single", Label: singleLabel, Hint: singleHint, Section: section, When: on, Cells: sheet.Input(&m.Single)},
		{Key: "begin", Label: beginLabel, Hint: beginHint, Section: section, Cells: sheet.One(&m.Begin), Suggest: builtin[begin]},
		{Key: "move", Label: moveLabel, Hint: moveHint, Section: section, Cells: sheet.One(&m.Move), Suggest: builtin[move]},
		{Key: "stop", Label: stopLabel, Hint: stopHint, Section: section, Cells: sheet.One(&m.Stop), Suggest: builtin[stop]},
		{Key: "finish", Label: finishLabel, Hint: finishHint, Section: section, Cells: sheet.One(&m.Finish), Suggest: builtin[finish]},
	}
}

// Keys are all that the moves are made of.
func (m *MovesEntry) Keys() []string { return []string{"single", "begin", "move", "stop", "finish"} }

// Problems finds a template for moves that has no place for the length.
func (m *MovesEntry) Problems() []report.Problem {
	if t := m.Move.Value; t != "" && !strings.Contains(t, lengthPlace) {
		return []report.Problem{{Key: "move", Row: 0, Says: lengthMissing.Fill("line", t, "place", lengthPlace, "example", builtinMove)}}
	}
	return nil
}

// A Program is a list of lines for a controller, in the making.
type Program struct {
	*MovesEntry
	axis    string // its letter
	own     [4]*sheet.Template
	builtin [4][]string
	lines   []string
	Path    float64 // mm moved, there and back
	Seconds float64 // that the moves take
}

// Program begins a list of moves of one axis. Extruders have words of their own
// for relative and absolute moves.
func (m *MovesEntry) Program(axis string, feed bool) *Program {
	p := &Program{MovesEntry: m, axis: axis, own: [4]*sheet.Template{&m.Begin, &m.Move, &m.Stop, &m.Finish}, builtin: builtin}
	if feed {
		p.builtin[begin], p.builtin[finish] = []string{"M83", "G91"}, []string{"M82", "G90"}
	}
	return p
}

// Axis is the letter of the axis that is moved.
func (p *Program) Axis() string { return p.axis }

// Custom returns the keys of the lines that are none of the page's own.
func (p *Program) Custom() (keys []string) {
	for i, key := range lineKeys {
		if p.isCustom(i) {
			keys = append(keys, key)
		}
	}
	return keys
}

func (p *Program) isCustom(i int) bool {
	return p.own[i].Value != "" && !slices.Contains(p.builtin[i], p.own[i].Value)
}

// Say adds a remark on a line of its own.
func (p *Program) Say(text string) { p.lines = append(p.lines, "; "+text) }

// line is the person's line, or the builtin one.
func (p *Program) line(i int) string {
	if own := p.own[i].Value; own != "" {
		return own
	}
	return p.builtin[i][0]
}

// add adds a line with what it is for. Of a line that is not its own the page doesn't say what
// it does.
func (p *Program) add(i int, line, why string) {
	if p.isCustom(i) {
		switch i {
		case begin:
			why = customBegin
		case finish:
			why = customFinish
		default:
			why = customRemark.Fill("for", why)
		}
	}
	p.lines = append(p.lines, line+" ; "+why)
}

// Start makes moves relative.
func (p *Program) Start() { p.add(begin, p.line(begin), relativeRemark) }

// Wait waits while something is read.
func (p *Program) Wait(why string) { p.add(stop, p.line(stop), why) }

// End makes moves absolute again.
func (p *Program) End() { p.add(finish, p.line(finish), absoluteRemark) }

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
		p.add(move, p.fill(sign*part, speed), why)
		why = continuedRemark
	}
}

func (p *Program) fill(length float64, speed unit.Speed) string {
	return unit.Replaced(p.line(move), sheet.AxisPlace, p.axis, lengthPlace, Decimal(length), sheet.SpeedPlace, Decimal(float64(speed)*unit.Minute))
}

// String is the program, a line each.
func (p *Program) String() string { return strings.Join(p.lines, "\n") }

// thousandth is how finely moves are commanded, in mm.
const thousandth = 0.001

// Nearest rounds a length to be commanded.
func Nearest(v float64) float64 { return math.Round(v/thousandth) / 1000 }

// Decimal writes a length to be commanded: no exponent, at most three decimals.
func Decimal(v float64) string { return unit.Full(Nearest(v)) }
