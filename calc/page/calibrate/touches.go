package calibrate

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
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

// touches says what the change of scale brings with it.
func (a *solution) touches() *report.Part {
	s := a.sheet
	p := &report.Part{ID: "touches", Title: axis.TouchesTitle,
		Needs: lists.Concat(a.allKeys, []string{"angle", "micro"}, s.GearEntry.Keys(""), axis.TunedKeys, axis.SpeedKeys)}
	t := axis.Change{TouchedEntry: &s.TouchedEntry}
	t.Was, t.Is = a.facts()
	var items report.Sentences
	switch s.Axis.Word {
	case "feed":
		items = t.TunedFeed()
	case "travel":
		items = t.TunedTravel()
	}
	items = append(items, axis.Elsewhere(a.old("", a.now).String(), a.entered(t.Is.Setting), !s.isFeed())...)
	p.Add(report.Points{Items: items})
	p.Add(t.Pulses()...)
	if steps, missing := t.Is.In(drive.StepsPerUnit); len(missing) == 0 {
		p.Add(report.Links{All: []report.Link{a.toRate(steps)}})
	}
	return p
}

// toPlan hands over what these readings say about the next test.
func (a *solution) toPlan() report.Link {
	s := a.sheet
	wanted, scatter := "", ""
	if s.Tol.Given {
		wanted = unit.Trim(s.Tol.Number/2, 3)
	}
	if a.test.Scatter > 0 {
		scatter = unit.Trim(a.test.Scatter, 2)
	}
	return axis.LinkTo("Plan a test that settles it", "plan", lists.Concat(
		axis.Fills("axis", s.Axis.Chosen(), "path", s.Path.Chosen(), "wanted", wanted),
		s.tool.Filled(""), axis.Fills("scatter", scatter), s.ScaleEntry.Filled(false), s.MotorEntry.Filled(), s.GearEntry.Filled())...)
}

// whenRight leads on from a scale that is right, at a setting.
func (a *solution) whenRight(setting drive.Setting) []report.Link {
	var links []report.Link
	if a.sheet.isFeed() {
		links = append(links, axis.LinkTo("Trim the flow", "flow", append(axis.Fills("scale", axis.ScaleVerified, "flow", a.sheet.Flow.Bare()), a.sheet.tool.Filled("")...)...))
	}
	f, _ := a.facts()
	f.Setting = setting
	if steps, missing := f.In(drive.StepsPerUnit); len(missing) == 0 {
		links = append(links, a.toRate(steps))
	}
	return links
}

// toRate hands a setting in steps over to the page of pulse rates.
func (a *solution) toRate(steps drive.Setting) report.Link {
	s := a.sheet
	moves := word.Table{{"feed", "feed"}, {"rotary", "rotary"}}.Of(s.Axis.Word)
	speed := axis.Fill("fast", s.Fastest.Bare())
	if s.isFeed() {
		speed = axis.Fill("back", s.Fastest.Bare())
	}
	return axis.LinkTo("Speed and step rate", "rate", axis.Fill("moves", moves), axis.Fill(axis.SettingKey(drive.StepsPerUnit, s.rotary()), a.number(steps)),
		axis.Fill("angle", s.Angle.Bare()), axis.Fill("micro", s.Micro.Bare()), speed, axis.Fill("limit", s.Limit.Bare()))
}
