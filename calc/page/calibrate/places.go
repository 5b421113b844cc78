package calibrate

import (
	"slices"

	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// want are the commanded lengths, or angles, of the runs.
func (s *entries) want() *sheet.Entries {
	if s.rotary() {
		return s.WantDeg.Cells()
	}
	return s.Want.Cells()
}

// positions are the columns of positions that were approached from both sides.
func (s *entries) positions() (targets, up, down *sheet.Entries) {
	if s.rotary() {
		return s.TargetsDeg.Cells(), s.UpDeg.Cells(), s.DownDeg.Cells()
	}
	return s.Targets.Cells(), s.Up.Cells(), s.Down.Cells()
}

// wantKey and sideKeys are the keys of those columns.
func (s *entries) wantKey() string { return "want" + s.suffix() }

func (s *entries) sideKeys() []string {
	return []string{"target" + s.suffix(), "up" + s.suffix(), "down" + s.suffix()}
}

// suffix ends the keys of what is asked in mm or in degrees.
func (s *entries) suffix() string {
	if s.rotary() {
		return axis.SuffixAngle
	}
	return ""
}

// approached are the targets with what was reached from either side, and the means of both
// sides, a point a row.
func (s *entries) approached() (targets []measure.Target, means []measure.Point) {
	positions, ups, downs := s.positions()
	for i, in := range positions.Rows {
		up, down := &ups.Rows[i], &downs.Rows[i]
		if !in.Given || !up.Given && !down.Given {
			continue
		}
		at := in.Number
		place := slices.IndexFunc(targets, func(t measure.Target) bool { return t.Position == at })
		if place < 0 {
			place = len(targets)
			targets = append(targets, measure.Target{Position: at})
		}
		t := &targets[place]
		if up.Given {
			t.Forward = append(t.Forward, up.Number)
		}
		if down.Given {
			t.Backward = append(t.Backward, down.Number)
		}
		if up.Given && down.Given {
			means = append(means, measure.Point{X: at, Y: (up.Number + down.Number) / 2})
		}
	}
	return targets, means
}

// moves is what is said of the axis as one that moves, or turns.
func (s *entries) moves() *trial.MoveWording {
	if s.rotary() {
		return &trial.AngleWords
	}
	return &trial.LengthWords
}

// doubt is the sentence of a warning.
func (s *entries) doubt(w measure.Warning) word.Template { return s.moves().Doubt(w) }
