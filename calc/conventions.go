package calc

import (
	"strings"

	"striderule/calc/drive"
)

// A fact is a setting with what is told of the drivetrain around it, and the
// keys of what is not.
type fact struct {
	setting drive.Setting
	rotary  bool
	motor   drive.Motor
	gears   gearing
	noMotor []string
	noGears []string
}

// A gearing takes a setting to another convention; it matters only as far as
// drive.Facts says.
type gearing interface {
	in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting
	// reduction is the motor turns for one output turn.
	reduction() float64
}

// A plainRatio is a gearing known as one number.
type plainRatio float64

func (r plainRatio) in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting {
	return s.InRatio(to, m, float64(r))
}

func (r plainRatio) reduction() float64 { return float64(r) }

// toothPairs is a gearing known by its teeth.
type toothPairs drive.Stages

func (p toothPairs) in(s drive.Setting, to drive.Convention, m drive.Motor) drive.Setting {
	return s.In(to, m, drive.Stages(p))
}

func (p toothPairs) reduction() float64 { return drive.Stages(p).Reduction() }

// in returns the fact in another convention, or what is missing for it.
func (f fact) in(to drive.Convention) (drive.Setting, []string) {
	var missing []string
	motor, gears := drive.Facts(f.setting.Convention, to)
	if motor {
		missing = append(missing, f.noMotor...)
	}
	if gears {
		missing = append(missing, f.noGears...)
	}
	if len(missing) > 0 {
		return drive.Setting{}, missing
	}
	return f.gears.in(f.setting, to, f.motor), nil
}

// ask asks for what a convention's number needs.
func (f fact) ask(to drive.Convention, missing []string) Ask {
	return Ask{missing, strings.ToLower(settingName(to, f.rotary))}
}

// A show makes the figure of a setting.
type show func(id string, s drive.Setting) *Figure

// beforeAndAfter is a table of a fact before and after a change in each
// convention that can be told, and asks for the rest. The new value in the
// fact's own convention is left without an ID: the headline has it.
func beforeAndAfter(was, is fact, before, after show) []Block {
	t := Table{Caption: "Before and after", Head: []string{"", "Before", "After"}}
	var asks []Block
	for _, to := range drive.Conventions {
		old, missing := was.in(to)
		if len(missing) > 0 {
			asks = append(asks, was.ask(to, missing))
			continue
		}
		now, _ := is.in(to)
		id := conventionWords[to]
		if to == is.setting.Convention {
			id = ""
		}
		t.row(settingName(to, was.rotary), before("was-"+conventionWords[to], old), after(id, now))
	}
	return append([]Block{t}, asks...)
}
