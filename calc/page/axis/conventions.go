package axis

import (
	"striderule/calc/drive"
	"striderule/calc/report"
)

// A Fact is a setting with what is given of the drivetrain around it, and the
// keys of what is not.
type Fact struct {
	Setting drive.Setting
	Rotary  bool
	Motor   drive.Motor
	Gears   Gearing
	NoMotor []string
	NoGears []string
}

// A Gearing takes a setting to another convention; it matters only as far as
// drive.Facts says.
type Gearing interface {
	in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting
	// Reduction is the motor turns for one output turn.
	Reduction() float64
}

// A PlainRatio is a gearing known as one number.
type PlainRatio float64

func (r PlainRatio) in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting {
	return s.InRatio(to, m, float64(r))
}

// Reduction is the motor turns for one output turn.
func (r PlainRatio) Reduction() float64 { return float64(r) }

// ToothPairs is a gearing known by its teeth.
type ToothPairs drive.Stages

func (p ToothPairs) in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting {
	return s.In(to, m, drive.Stages(p))
}

// Reduction is the motor turns for one output turn.
func (p ToothPairs) Reduction() float64 { return drive.Stages(p).Reduction() }

// In returns the fact in another convention, or what is missing for it.
func (f Fact) In(to drive.Convention) (drive.Setting, []string) {
	var missing []string
	motor, gears := drive.Facts(f.Setting.Convention, to)
	if motor {
		missing = append(missing, f.NoMotor...)
	}
	if gears {
		missing = append(missing, f.NoGears...)
	}
	if len(missing) > 0 {
		return drive.Setting{}, missing
	}
	return f.Gears.in(f.Setting, to, f.Motor), nil
}

// ask asks for what a convention's number needs.
func (f Fact) ask(to drive.Convention, missing []string) report.Ask {
	return report.Ask{Keys: missing, For: SettingNameWithin(to, f.Rotary)}
}

// A show makes the figure of a setting.
type show func(id string, s drive.Setting) *report.Figure

// BeforeAndAfter is a table of a fact before and after a change in each
// convention that is known, and asks for the rest. The new value in the
// fact's own convention is left without an ID: the headline has it.
func BeforeAndAfter(was, is Fact, before, after show) []report.Block {
	t := report.Table{Caption: beforeAndAfter, Head: []string{"", beforeHead, afterHead}}
	var asks []report.Block
	for _, to := range drive.Conventions {
		old, missing := was.In(to)
		if len(missing) > 0 {
			asks = append(asks, was.ask(to, missing))
			continue
		}
		now, _ := is.In(to)
		id := ConventionWords[to]
		if to == is.Setting.Convention {
			id = ""
		}
		t.Row(SettingName(to, was.Rotary), before("was-"+ConventionWords[to], old), after(id, now))
	}
	return append([]report.Block{t}, asks...)
}
