package calibrate

import (
	"math"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// What an axis may be off by itself beside a mistake, as a share: where a drive gear grips is
// known that badly. Belts and screws are true.
const (
	ownOfFeed   = 0.05
	ownOfTravel = 0.01
)

// farOff is the error beyond which something was changed, most likely: wear is rarely that large.
const farOff = 0.2

// readRatio looks the found ratio up among the common mistakes.
func (a *solution) readRatio() drive.RatioReading {
	s := a.sheet
	known := drive.Known{Feed: s.Axis.Word != "travel", Volumetric: s.isFeed() && s.Counted.Word == "volume", // a rotary axis has no belts and no screws either
		StepAngle: s.Angle.Value(), Microsteps: s.Micro.Value()}
	if stages, ok := s.Stages(); ok {
		known.Stages = stages
	}
	own := ownOfTravel
	if s.isFeed() {
		own = ownOfFeed
	}
	u := a.wide / a.scale.Ratio.Value
	r := drive.ReadRatio(a.scale.Ratio.Value, u, own, drive.Mistakes(known))
	if len(r.Fits) > 0 && len(r.Fits[0]) > 1 && u > mostForTwo {
		return drive.RatioReading{}
	}
	return r
}

// mostForTwo is the uncertainty, as a share, up to which two mistakes together say something:
// some two of them come near any ratio.
const mostForTwo = 0.01

// suspectsMistake reports whether the found ratio is one that a common mistake makes, or another
// way to read, so that entering it would only hide that.
func (a *solution) suspectsMistake() bool {
	return (a.judged.Verdict == measure.ChangeIt || a.interim) && len(a.read.Fits)+len(a.misread) > 0
}

// misreadings are the ways in which readings so far off may be meant otherwise. What gears that
// were told of explain is no guess.
func (a *solution) misreadings() []trial.Misreading {
	return lists.Keep(trial.Misreadings(a.sheet.Axis.Word, a.asked, a.runs), func(m trial.Misreading) bool {
		return m.Moved != 0 || len(a.read.Fits) == 0 || !a.sheet.GearEntry.Known()
	})
}

// meant says how readings may be meant otherwise, and what they would give then.
func (a *solution) meant(m trial.Misreading) report.Line {
	asks := report.Say(m.Asks, "fed", readFed.Label, "rest", readRest.Label)
	if m.Moved == 0 || !a.hasNow {
		return asks
	}
	return report.Together(asks, report.Say(wouldBe, "setting", axis.SettingFigure("", a.now.Corrected(m.Asked/m.Moved), a.sheet.rotary(), oldDigits, true)))
}

// leastMended is the share that a mistake must make for its setting to be offered: a smaller one
// may as well be an error of the axis.
const leastMended = 0.05

// mended is the setting with the mistake put right. ok is false where it sits in another entry,
// or where what fits does not agree.
func (a *solution) mended() (s drive.Setting, ok bool) {
	if !a.suspectsMistake() || a.hasThen || len(a.misread) > 0 {
		return s, false
	}
	first := a.read.Fits[0][0].Ratio
	if math.Abs(first-1) < leastMended {
		return s, false
	}
	for _, f := range a.read.Fits {
		if len(f) > 1 || !f[0].Moves(a.now.Convention) || math.Abs(f[0].Ratio/first-1) > 1e-9 {
			return s, false
		}
	}
	return a.now.Corrected(1 / first), true
}

// toSet is the number to be set now, as it is written.
func (a *solution) toSet() string {
	if s, ok := a.mended(); ok {
		return unit.PlainTrim(s.Value, mendedDigits)
	}
	return a.number(a.corrected())
}

// mendedDigits is how precisely a setting is written that comes from one that was typed.
const mendedDigits = 7

// mistakeSays is what the ratio tells beside the verdict.
func (a *solution) mistakeSays() report.Line {
	s, ok := a.mended()
	if !ok {
		return report.Say(mistakeSays)
	}
	times := s.Value / a.now.Value
	rest := a.corrected().Value/s.Value - 1
	says := timesOnly
	switch {
	case a.read.Rest && rest > 0:
		says = timesAndMore
	case a.read.Rest:
		says = timesAndLess
	}
	return report.Say(says, "times", &report.Figure{Value: times, Digits: 4},
		"rest", &report.Figure{Value: 100 * math.Abs(rest), Unit: "%", Digits: 2})
}

// ratio names the common mistakes that would explain what was found.
func (a *solution) ratio() *report.Part {
	fits := a.read.Fits
	if !a.suspectsMistake() {
		return nil
	}
	p := &report.Part{ID: "ratio", Title: mistakesTitle, Needs: lists.Concat(a.allKeys, a.trainKeys())}
	var items report.Sentences
	var links []report.Link
	for _, m := range a.misread {
		items = append(items, a.meant(m))
	}
	for _, f := range fits[:min(len(fits), 4)] {
		items = append(items, trial.Explain(f))
		if l, ok := a.swap().Undo(f[0]); ok && len(f) == 1 {
			links = append(links, l)
		}
	}
	p.Add(report.Para{Line: report.Text(mistakesSay.Fill(len(items)))}, report.Points{Items: items})
	if len(links) > 0 {
		p.Add(report.Links{All: links})
	}
	return p
}

// trainKeys are those of motor and gears.
func (a *solution) trainKeys() []string {
	return lists.Concat([]string{"angle", "micro"}, a.sheet.GearEntry.Keys(""))
}

// swap is what the page of swaps is handed.
func (a *solution) swap() axis.Swap {
	s := a.sheet
	return axis.Swap{Axis: s.Axis.Word, Scale: &s.ScaleEntry, Motor: &s.MotorEntry, Gears: &s.GearEntry}
}
