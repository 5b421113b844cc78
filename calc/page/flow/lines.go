package flow

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// How the lines of a wall are spaced: who doesn't say has them overlap.
const (
	linesOverlap = "overlap"
	linesSide    = "side"
)

// When a piece was printed.
const printedBefore = "before"

// sideBySide reports whether lines are counted width by width. Then a wall of n lines is n
// widths thick, and its plastic is in proportion to that.
func (s *entries) sideBySide() bool { return s.Lines.Word == linesSide }

// rounding is what the round flanks take off the width of a line, mm.
func (s *entries) rounding() float64 {
	if s.sideBySide() {
		return 0
	}
	return float64(drive.Rounding(s.Layer.Value()))
}

// The other way of counting is asked about where readings come as near to it as this, and so
// many times nearer than to the one in use.
const (
	nearEnough = flowTolerance / 2
	farBetter  = 5
)

// bySide is what the readings mean where lines lie side by side: ok is false unless nobody has
// said how they lie, and the readings fit that far better.
func (a *solution) bySide() (g gauge, ok bool) {
	s := a.sheet
	if s.By.Word != byWalls || s.Lines.Word != linesUnsaid.Word || s.Spacing.Given || !s.Width.Given || s.walls() == 1 {
		return gauge{}, false
	}
	side := *s
	side.Lines.Word = linesSide
	g, _ = side.gaugeOf()
	off := func(g gauge) float64 { return math.Abs(g.ratio(a.raw.Length) - 1) }
	return g, off(g) <= nearEnough && off(a.gauge) > max(flowTolerance, farBetter*off(g))
}

// lineWidth is how wide a spacing that is given makes a line, and whether another width was typed.
func (a *solution) lineWidth() (wide float64, other bool) {
	s := a.sheet
	wide = s.spacing() + s.rounding()
	return wide, s.By.Word == byWalls && s.Spacing.Given && s.Width.Given && math.Abs(wide-s.Width.Number) > 0.01*wide
}

// unclear is what must be said before the readings mean anything; nil if all is clear.
func (a *solution) unclear() *report.Verdict {
	set := func(v float64) *report.Figure { return &report.Figure{Value: v, Unit: "mm", Digits: 4} }
	unclear := func(title string, says word.Template, parts ...any) *report.Verdict {
		return &report.Verdict{Kind: report.MeasureMore, Title: title, Says: report.Say(says, parts...)}
	}
	if wide, other := a.lineWidth(); other {
		return unclear(widthTitle, widthUnused, "spacing", set(a.sheet.spacing()), "wide", set(wide),
			"width", set(a.sheet.Width.Number), "side", linesAreSide.Label)
	}
	side, ok := a.bySide()
	if n, other, found := a.otherLines(); found && !ok {
		return unclear(linesTitle.Fill("n", n), linesOtherwise, "n", n, "given", unit.Whole(a.sheet.walls()), "target", set(other.at(1)),
			"flow", a.flowBy(other), "lines", wallsLabel)
	}
	if !ok {
		return nil
	}
	return unclear(spacedTitle, spacedTwoWays, "target", set(a.gauge.at(1)), "flow", &report.Figure{Value: a.factor().Value, Digits: flowDigits},
		"sidetarget", set(side.at(1)), "sideflow", a.flowBy(side))
}

// farOffBy is an error that is rarely just flow. The number of lines is asked about where readings
// are as far off, and as near to another number of lines as linesNear.
const (
	farOffBy  = 0.2
	linesNear = 0.1
)

// otherLines is the wall of 2, 3 or 4 lines that readings fit which are far off those of the lines
// that are given: who leaves the number blank has measured more than one.
func (a *solution) otherLines() (n string, g gauge, found bool) {
	if a.sheet.By.Word != byWalls || math.Abs(a.gauge.ratio(a.raw.Length)-1) <= farOffBy {
		return "", gauge{}, false
	}
	other, nearest := *a.sheet, linesNear
	for lines := 2; lines <= 4; lines++ {
		other.Walls.Number, other.Walls.Given = float64(lines), true
		of, _ := other.gaugeOf()
		if off := math.Abs(of.ratio(a.raw.Length) - 1); off <= nearest {
			n, g, found, nearest = strconv.Itoa(lines), of, true, off
		}
	}
	return n, g, found
}

// flowBy is the new flow by what the readings mean where the lines are others.
func (a *solution) flowBy(g gauge) *report.Figure {
	return &report.Figure{Value: a.sheet.flow() / g.ratio(a.raw.Length), Digits: flowDigits}
}

// oldPiece says that a piece from before the calibration tells nothing of what is set now.
var oldPiece = report.Part{ID: "printed", Title: oldPieceTitle, Needs: []string{"scale", "by", "printed"}, Blocks: []report.Block{
	report.DoubtNote(oldPieceSays),
}}
