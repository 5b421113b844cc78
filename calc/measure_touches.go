package calc

import (
	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/unit"
)

// facts are the setting before and after, with what is told of the drivetrain.
func (a *measured) facts() (was, is fact) {
	was = fact{setting: a.now, rotary: a.sheet.rotary(), gears: &a.sheet.gearEntry,
		noMotor: a.sheet.motorEntry.missing(), noGears: a.sheet.gearEntry.missing("")}
	was.motor = a.sheet.motor()
	is = was
	is.setting = a.corrected()
	return was, is
}

// touches says what the change of scale brings with it.
func (a *measured) touches() *Part {
	s := a.sheet
	p := &Part{ID: "touches", Title: touchesTitle,
		Needs: lists.Concat(a.allKeys, []string{"angle", "micro"}, s.gearEntry.keys(""), tunedKeys, speedKeys)}
	t := touched{touchedEntry: &s.touchedEntry}
	t.was, t.is = a.facts()
	var items sentences
	switch s.Axis.Word {
	case "feed":
		items = t.tunedFeed()
	case "travel":
		items = t.tunedTravel()
	}
	items = append(items, elsewhere(a.old("", a.now).String(), a.entered(t.is.setting), !s.isFeed())...)
	p.add(Points{items})
	p.add(t.pulses()...)
	if steps, missing := t.is.in(drive.StepsPerUnit); len(missing) == 0 {
		p.add(Links{[]Link{a.toRate(steps)}})
	}
	return p
}

// toPlan hands over what these readings say about the next test.
func (a *measured) toPlan() Link {
	s := a.sheet
	wanted, scatter := "", ""
	if s.Tol.Given {
		wanted = unit.Trim(s.Tol.Number/2, 3)
	}
	if a.test.Scatter > 0 {
		scatter = unit.Trim(a.test.Scatter, 2)
	}
	return hand("Plan a test that settles it", "plan", lists.Concat(
		fills("axis", s.Axis.told(), "path", s.Path.told(), "wanted", wanted),
		s.tool.handed(""), fills("scatter", scatter), s.scaleEntry.handed(false), s.motorEntry.handed(), s.gearEntry.handed())...)
}

// whenRight leads on from a scale that is right, at a setting.
func (a *measured) whenRight(setting drive.Setting) []Link {
	var links []Link
	if a.sheet.isFeed() {
		links = append(links, hand("Trim the flow", "flow", append(fills("scale", scaleVerified, "flow", a.sheet.Flow.Bare()), a.sheet.tool.handed("")...)...))
	}
	f, _ := a.facts()
	f.setting = setting
	if steps, missing := f.in(drive.StepsPerUnit); len(missing) == 0 {
		links = append(links, a.toRate(steps))
	}
	return links
}

// toRate hands a setting in steps over to the page of pulse rates.
func (a *measured) toRate(steps drive.Setting) Link {
	s := a.sheet
	moves := worded{{"feed", "feed"}, {"rotary", "rotary"}}.of(s.Axis.Word)
	speed := fill("fast", s.Fastest.Bare())
	if s.isFeed() {
		speed = fill("back", s.Fastest.Bare())
	}
	return hand("Speed and step rate", "rate", fill("moves", moves), fill(settingKey(drive.StepsPerUnit, s.rotary()), a.number(steps)),
		fill("angle", s.Angle.Bare()), fill("micro", s.Micro.Bare()), speed, fill("limit", s.Limit.Bare()))
}
