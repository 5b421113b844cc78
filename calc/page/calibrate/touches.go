package calibrate

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// facts are the setting before and after, with what is given of the drivetrain.
func (a *solution) facts() (was, is axis.Fact) {
	was = axis.Fact{Setting: a.now, Rotary: a.sheet.rotary(), Gears: &a.sheet.GearEntry,
		NoMotor: a.sheet.MotorEntry.Missing(), NoGears: a.sheet.GearEntry.Missing("")}
	was.Motor = a.sheet.Motor()
	is = was
	is.Setting = a.corrected()
	return was, is
}

// touches says what the change brings with it.
func (a *solution) touches() *report.Part {
	s := a.sheet
	p := &report.Part{ID: "touches", Title: axis.TouchesTitle,
		Needs: lists.Concat(a.allKeys, []string{"angle", "micro"}, s.GearEntry.Keys(""), axis.TunedKeys, axis.SpeedKeys)}
	t := axis.Change{TouchedEntry: &s.TouchedEntry}
	t.Was, t.Is = a.facts()
	if s, ok := a.mended(); ok {
		t.Is.Setting = s
	}
	if !s.rotary() {
		p.Add(t.TunedNumbers(s.isFeed(), a.suspectsMistake() && !a.hasThen)...)
	}
	p.Add(report.Points{Items: axis.Elsewhere(a.old("", a.now).String(), a.withUnit(a.toSet()), !s.isFeed())})
	p.Add(t.Pulses()...)
	if steps, missing := t.Is.In(drive.StepsPerUnit); len(missing) == 0 {
		p.Add(report.Links{All: []report.Link{a.toRate(steps)}})
	}
	return p
}

// toPlan hands over what these readings say about the next test, unless one is under way.
func (a *solution) toPlan() []report.Link {
	if a.scale.Plan > a.scale.Runs {
		return nil
	}
	s := a.sheet
	wanted, scatter := "", ""
	if s.Tol.Given {
		wanted = unit.PlainTrim(s.Tol.Number/2, 3)
	}
	switch {
	case s.Method() == trial.SeveralSpeeds: // what the speed does is no scatter
		if a.slip.HasLack && a.slip.Lack.PureSD > 0 {
			scatter = unit.PlainTrim(a.slip.Lack.PureSD*a.asked, 2)
		}
	case a.test.Scatter > 0:
		scatter = unit.PlainTrim(a.test.Scatter, 2)
	}
	return []report.Link{axis.LinkTo(planLink, "plan", lists.Concat(
		axis.Fills("axis", s.Axis.Chosen(), "path", s.Path.Chosen(), "trial", s.Trial.Chosen(), "wanted", wanted),
		s.tool.Filled(""), axis.Fills("scatter", scatter), s.ScaleEntry.Filled(false), s.MotorEntry.Filled(), s.GearEntry.Filled())...)}
}

// whenRight leads on from a setting that is right.
func (a *solution) whenRight(setting drive.Setting) []report.Link {
	var links []report.Link
	if a.sheet.isFeed() {
		links = append(links, axis.LinkTo(flowLink, "flow", append(axis.Fills("scale", axis.ScaleVerified, "flow", a.sheet.Flow.Bare()), a.sheet.tool.Filled("")...)...))
	}
	f, _ := a.facts()
	f.Setting = setting
	if steps, missing := f.In(drive.StepsPerUnit); len(missing) == 0 {
		links = append(links, a.toRate(steps))
	}
	return links
}

// toRate hands a setting in steps over to the page of step rates.
func (a *solution) toRate(steps drive.Setting) report.Link {
	s := a.sheet
	moves := word.Table{{"feed", "feed"}, {"rotary", "rotary"}}.Of(s.Axis.Word)
	speed := axis.Fill("fast", s.Fastest.Bare())
	if s.isFeed() {
		speed = axis.Fill("back", s.Fastest.Bare())
	}
	return axis.LinkTo(rateLink, "rate", axis.Fill("moves", moves), axis.Fill(axis.SettingKey(drive.StepsPerUnit, s.rotary()), a.number(steps)),
		axis.Fill("angle", s.Angle.Bare()), axis.Fill("micro", s.Micro.Bare()), speed, axis.Fill("limit", s.Limit.Bare()))
}

// touchesBrief is what that is about.
func (a *solution) touchesBrief() string {
	switch {
	case a.sheet.isFeed():
		return touchesExtruder
	case a.sheet.rotary():
		return touchesRotary
	}
	return touchesLinear
}
