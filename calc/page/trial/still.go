package trial

import (
	"errors"
	"slices"

	"striderule/calc/report"
)

// Of readings that show no move, or one the wrong way, no setting comes: something else is the
// cause.
var (
	ErrStill = errors.New("still")
	ErrBack  = errors.New("back")
)

// leastMoved is the share of what was commanded below which nothing moved: no mistake of the
// setting alone makes a machine creep like that.
const leastMoved = 0.01

// Moving returns why runs show no move that a setting could come from; asked is what was
// commanded in each, 0 where each has its own.
func Moving(runs []Run, asked float64) error {
	moved, least := 0.0, 0.0
	for _, r := range runs {
		moved += r.Moved
		least += leastMoved * (asked + r.Want)
	}
	switch {
	case moved < -least:
		return ErrBack
	case len(runs) > 0 && (moved <= 0 || moved < least):
		return ErrStill
	}
	return nil
}

// Strays are readings of nothing, or of the wrong way, beside others that moved, which are
// misread, most likely; and of a mark that went in. choice is where the length itself is read.
func Strays(runs []Run, key, choice string) []report.Problem {
	runs = Counted(runs)
	var problems []report.Problem
	for _, r := range runs {
		if r.Mark > 0 && r.Rest == 0 {
			problems = append(problems, report.Problem{Key: key, Row: r.Row, Says: markGone.Fill("remaining", r.Reading.String())})
		}
	}
	if !slices.ContainsFunc(runs, func(r Run) bool { return r.Moved > 0 }) {
		return problems
	}
	for _, r := range runs {
		switch {
		case r.Moved > 0:
		case r.Mark > 0:
			problems = append(problems, report.Problem{Key: key, Row: r.Row,
				Says: beyondMark.Fill("remaining", r.Reading.String(), "mark", r.MarkedAt.String(), "choice", choice)})
		default:
			problems = append(problems, report.Problem{Key: key, Row: r.Row, Says: strayReading.Fill("reading", r.Reading.String())})
		}
	}
	return problems
}

// Stuck says what to look at where nothing moved, or all the wrong way, going by the error of
// Moving; there are no blocks for another one. choice is where the length itself is read, if
// remains were entered.
func Stuck(cause error, feed bool, choice string) (title string, blocks []report.Block) {
	switch {
	case errors.Is(cause, ErrStill):
		look := stillMoving
		if feed {
			look = stillFeeding
		}
		return stillTitle, []report.Block{report.DoubtNote(stillSays), report.CautionOf("wiring"), report.PointsOf(look...)}
	case errors.Is(cause, ErrBack):
		blocks = []report.Block{report.DoubtNote(backSays)}
		if choice != "" {
			blocks = append(blocks, report.TipNote(backOrFed, "choice", choice))
		}
		return backTitle, blocks
	}
	return "", nil
}
