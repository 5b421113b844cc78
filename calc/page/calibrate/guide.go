package calibrate

import (
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// guide is the picture of the test beside its fields: to scale as soon as its lengths are given.
func (a *solution) guide() *report.Drawing {
	s := a.sheet
	g := trial.Guide{Show: func(v float64) string { return a.length("", "", v).String() }}
	suffix := ""
	if s.rotary() {
		suffix = axis.SuffixAngle
	}
	if s.Method() == trial.BothSides {
		return g.Sides("target"+suffix, "up"+suffix, "down"+suffix)
	}
	asked := trial.Length{Key: a.askedKey, Value: a.asked, Given: a.hasAsked}
	if s.Method() == trial.SeveralLengths {
		asked = trial.Length{Key: s.wantKey()}
	}
	runs := trial.Counted(a.runs)
	mark := trial.Length{Key: "mark", Value: s.Mark.Number, Given: s.Mark.Given}
	if s.Marks.Word == "each" {
		mark = trial.Length{Key: "eachmark"}
	}
	read := trial.Length{Key: a.runKeys[len(a.runKeys)-1]}
	if len(runs) > 0 && s.Method() != trial.SeveralLengths {
		n := float64(len(runs))
		read.Given = true
		fromMark := runs[0].Mark > 0
		mark.Given, mark.Value = mark.Given || fromMark, 0
		for _, r := range runs {
			g.Fed += r.Moved / n
			mark.Value += r.Mark / n
			if fromMark {
				read.Value += r.Rest / n
			} else {
				read.Value += r.Moved / n
			}
		}
	}
	switch {
	case s.rotary():
		return g.Disc(&asked, &read)
	case !s.isFeed() || s.Read.Word == "fed":
		return g.Move(&asked, &read, s.isFeed())
	}
	return g.Mark(&asked, &mark, &read)
}

// assumed is what blank entries count as.
func (s *entries) assumed() []report.Assumed {
	percent := report.Figure{Value: 100 * s.acceptable(), Unit: "%", Digits: 3}
	return []report.Assumed{{Key: "tol", Says: axis.GoodEnough.Fill("error", percent.String())}}
}
