package swap

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A setting that was corrected by a measurement, or a drive gear whose diameter was measured
// with a caliper, is off by less than fits; what is explained by a mistake agrees to explains.
const (
	fits     = 0.08
	explains = 0.02
)

// A clash is a setting that the parts beside it contradict.
type clash struct {
	fit     drive.Setting // that they give
	over    float64       // the setting, as steps, by that
	guessed bool          // nobody said whether there are gears: none are assumed
	fact    axis.Fact
	output  *axis.OutputEntry
}

// clash compares the old setting with the old parts, where they are given.
func (a *solution) clash() (c clash, found bool) {
	c.fact, c.output = a.before(), &a.sheet.was.output
	if !a.sheet.Changed.Has("out") {
		c.output = &a.sheet.kept.output
	}
	element, missing := c.output.Element("")
	if len(missing) > 0 || element.Angular() != a.sheet.rotary() {
		return c, false
	}
	parts := c.fact
	parts.Setting = drive.Setting{Convention: drive.TravelPerOutputTurn, Value: drive.PerTurn(element)}
	if c.guessed = len(parts.NoGears) > 0; c.guessed {
		parts.Gears, parts.NoGears = axis.PlainRatio(1), nil
	}
	if c.fit, missing = parts.In(a.setting.Convention); len(missing) > 0 {
		return c, false
	}
	c.over = a.setting.Value / c.fit.Value
	if a.setting.Convention != drive.StepsPerUnit {
		c.over = 1 / c.over
	}
	if c.guessed && c.over > 1 && (c.output.Kind.Word == "roller" || !doubled(c.over)) {
		return c, false // gears that nobody told of explain it
	}
	return c, math.Abs(math.Log(c.over)) > fits
}

func near(x, y float64) bool { return math.Abs(x/y-1) < explains }

// doubled reports whether a factor is 2, 4, 8 or 16, or one of these parts.
func doubled(factor float64) bool {
	for n := 2.0; n <= 16; n *= 2 {
		if near(factor, n) || near(factor, 1/n) {
			return true
		}
	}
	return false
}

// note says what disagrees, what the parts give before and after, and what the setting fits.
func (c *clash) note(a *solution) report.Note {
	figure := func(s drive.Setting) *report.Figure {
		return axis.SettingFigure("", s, a.sheet.rotary(), 7, false)
	}
	what := disagrees
	if c.guessed {
		what = disagreesPlain
	}
	says := report.Sentences{report.Say(what, "setting", figure(a.setting), "fit", figure(c.fit), "new", figure(c.fit.Rescaled(a.factors)))}
	steps := a.setting.Convention == drive.StepsPerUnit
	if micro := math.Round(float64(c.fact.Motor.Microsteps) * c.over); steps && doubled(c.over) && micro >= 1 && micro <= 256 {
		says.Say(fitsMicro, "setting", figure(a.setting), "micro", unit.Whole(micro))
	}
	if angle := float64(c.fact.Motor.StepAngle) / c.over; steps && (near(angle, 0.9) || near(angle, 1.8)) {
		says.Say(fitsMotor, "setting", figure(a.setting), "angle", unit.Trim(angle, 2))
	}
	if c.output.Kind.Word == "screw" {
		screw := c.output.Screw.Value
		lead := report.Figure{Value: float64(screw.Lead()) / c.over, Unit: "mm", Digits: 4}.String()
		if n := math.Round(1 / c.over); screw.Starts == 1 && n >= 2 && n <= 8 && near(n, 1/c.over) {
			says.Say(fitsStarts, "setting", figure(a.setting), "lead", lead, "starts", strconv.Itoa(int(n)), "typed", c.output.Screw.String())
		} else {
			says.Say(fitsLead, "setting", figure(a.setting), "lead", lead)
		}
	}
	if !c.guessed && near(c.over*c.fact.Gears.Reduction(), 1) {
		says.Say(fitsPlain, "setting", figure(a.setting))
	}
	return report.Note{Kind: report.Doubt, Line: report.Together(says...)}
}

// keptKeys are all that the unchanged parts are made of.
func (s *entries) keptKeys() []string {
	keys := append([]string{"angle" + axis.SuffixKept, "micro" + axis.SuffixKept}, s.kept.gears.Keys(axis.SuffixKept)...)
	return append(keys, s.kept.output.Keys(axis.SuffixKept)...)
}

// doubts are what stands at the answer, and beside the old setting.
func (a *solution) doubt(r *report.Report, settingKey string) {
	s := a.sheet
	if c, found := a.clash(); found {
		r.Answer.Notes = append(r.Answer.Notes, c.note(a))
		r.Answer.Needs = append(r.Answer.Needs, s.keptKeys()...)
		r.Remarks.Doubt(settingKey, 0, partsGive.Fill("fit", axis.SettingFigure("", c.fit, s.rotary(), 7, false).String()))
	} else {
		if matters(a.factors.Of(a.setting.Convention)) {
			r.Answer.Notes = append(r.Answer.Notes, report.TipNote(takenAsOld)) // beside the field it would come and go
		}
		for _, t := range []*trainEntry{&s.was, &s.now} {
			if note, ok := t.output.DoubtLead(); ok && t.output.Kind.Word == "screw" && s.Changed.Has("out") {
				r.Answer.Notes = append(r.Answer.Notes, note)
				break
			}
		}
	}
	for _, t := range []*trainEntry{&s.was, &s.now, &s.kept} {
		if t.gears.Known() && t.gears.Reduction() < 1 {
			r.Answer.Notes = append(r.Answer.Notes, axis.TurnsFaster)
			r.Answer.Needs = append(r.Answer.Needs, s.keptKeys()...)
			break
		}
	}
}

// atMicrosteps reports whether the old setting belongs to the old microsteps that are asked for.
func (a *solution) atMicrosteps() bool {
	return a.setting.Convention == drive.StepsPerUnit && a.sheet.Changed.Has("micro")
}
