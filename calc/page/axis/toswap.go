package axis

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// A Swap hands an axis over to the page of swaps, with what is given of it.
type Swap struct {
	Axis  string // feed, travel or rotary
	Scale *ScaleEntry
	Motor *MotorEntry
	Gears *GearEntry
}

// Undo fills the page in with a mistake as the change of a part that it would be after a swap; ok
// is false for one of another sort.
func (s Swap) Undo(m drive.Mistake) (l report.Link, ok bool) {
	motor, gears := s.Motor.Filled(), s.Gears.Filled()
	switch {
	case m.IsMotor():
		fitted, set := drive.CoarseAngle, drive.FineAngle
		if m.Ratio < 1 {
			fitted, set = set, fitted
		}
		return s.link(swapMotorLink, "angle", Fills("angle", unit.Full(float64(set)), "angle"+SuffixNew, unit.Full(float64(fitted))), lists.Concat(motor[1:], gears)), true
	case m.IsMicrosteps():
		var changed []Filling
		if s.Motor.Micro.Given {
			changed = Fills("micro", unit.Full(s.Motor.Micro.Number*m.Ratio), "micro"+SuffixNew, s.Motor.Micro.Bare())
		}
		return s.link(swapMicroLink, "micro", changed, lists.Concat(motor[:1], gears)), true
	case m.IsGears() && math.Abs(m.Ratio*s.Gears.Reduction()-1) < 1e-9: // all of them left out
		return s.link(swapGearsLink, "gears", append(Fills("gears", GearsNone.Word), suffixed(gears, SuffixNew)...), motor), true
	}
	return l, false
}

// Any fills the page in with the setting alone.
func (s Swap) Any() report.Link { return s.link(swapAnyLink, "", nil, nil) }

func (s Swap) link(text, part string, changed, kept []Filling) report.Link {
	moves := word.Table{{"feed", "feed"}, {"rotary", "rotary"}}.Of(s.Axis)
	return LinkTo(text, "swap", lists.Concat(Fills("changed", part, "moves", moves), s.Scale.Filled(s.Axis == "rotary"), changed, suffixed(kept, SuffixKept))...)
}

// suffixed are entries with another ending of their keys.
func suffixed(entries []Filling, suffix string) []Filling {
	all := lists.Concat(entries)
	for i := range all {
		all[i].Key += suffix
	}
	return all
}
