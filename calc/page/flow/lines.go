package flow

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/report"
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
	if !ok {
		return nil
	}
	return unclear(spacedTitle, spacedTwoWays, "target", set(a.gauge.at(1)), "flow", &report.Figure{Value: a.factor().Value, Digits: flowDigits},
		"sidetarget", set(side.at(1)), "sideflow", a.sideFlow("", side))
}

// sideFlow is the new flow by what the readings mean where lines lie side by side.
func (a *solution) sideFlow(id string, side gauge) *report.Figure {
	return &report.Figure{ID: id, Label: sideFlowLabel, Value: a.sheet.flow() / side.ratio(a.raw.Length), Digits: flowDigits}
}

// oldPiece says that a piece from before the calibration tells nothing of what is set now.
var oldPiece = report.Part{ID: "printed", Title: oldPieceTitle, Needs: []string{"scale", "by", "printed"}, Blocks: []report.Block{
	report.DoubtNote(oldPieceSays),
}}
