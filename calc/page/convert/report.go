package convert

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
)

func (r row) needs() []string {
	return []string{"name", "moves", "as", r.Key, "angle", "micro", "ratio", "wants"}
}

func (r row) part() *report.Part {
	figures, asks := r.Numbers()
	return &report.Part{ID: "axis-" + r.N, Title: r.Name, Needs: r.needs(), Blocks: append([]report.Block{report.Figures{All: figures}}, asks...)}
}

// overview is the setting of every axis, side by side, with all that belongs together.
func (s *entries) overview(rows []row) *report.Part {
	t := report.Table{Caption: allCaption, Head: oneHead}
	p := &report.Part{ID: "all", Title: allTitle}
	each := slices.ContainsFunc(rows, row.severally)
	to, told := axis.Wanted(&s.Wants)
	switch {
	case each:
		t.Head = eachHead
	case told && to == drive.TravelPerOutputTurn:
		t.Head = ratioHead
	}
	for _, r := range rows {
		p.Needs = append(p.Needs, r.needs()...)
		cells := []any{r.Name}
		in := []drive.Convention{r.Setting.Convention, r.other()}
		if each {
			in = drive.Conventions
		}
		for _, c := range in {
			if wanted, missing := r.In(c); len(missing) == 0 {
				cells = append(cells, axis.SettingFigure("", wanted, r.Rotary, axis.Digits, false))
			} else if each {
				cells = append(cells, unknown)
			}
		}
		if len(cells) <= len(in) {
			continue // the converted setting is missing
		}
		if len(cells) < len(t.Head) {
			ratio := unknown
			if len(r.NoGears) == 0 {
				ratio = report.Figure{Value: r.Gears.Reduction(), Digits: axis.Digits}.String()
			}
			cells = append(cells, ratio)
		}
		t.Row(cells...)
	}
	p.Add(t)
	if len(t.Rows) < 2 {
		return nil
	}
	return p
}

// other is the convention that is wanted; while it is not told, that which the person does
// not have.
func (r row) other() drive.Convention {
	if r.told {
		return r.wants
	}
	if r.Setting.Convention == drive.StepsPerUnit {
		return drive.TravelPerTurn
	}
	return drive.StepsPerUnit
}

// severally reports whether there is more than one other setting, and nobody has told which
// of them is wanted: with gears between, the two travels are told apart by nothing but their
// names.
func (r row) severally() bool { return !r.told && r.Geared() }

// answer is the setting in the other convention: travel per motor turn for who has steps per
// mm, steps per mm for the others. What must be entered together stands together.
func (r row) answer(needs []string) *report.Answer {
	to := r.other()
	s, missing := r.In(to)
	if len(missing) > 0 {
		return nil
	}
	f := axis.SettingFigure(axis.ConventionWords[to], s, r.Rotary, axis.Digits, false)
	f.Label = answerLabel.Fill("setting", f.Label, "axis", r.Name)
	return &report.Answer{Figure: *f, Needs: needs, Says: r.says(to), Instead: r.instead(to), Notes: r.doubts()}
}

// doubts are those of the gears, and of travel that may be per the other turn.
func (r row) doubts() []report.Note {
	var notes []report.Note
	if len(r.NoGears) == 0 && r.Gears.Reduction() < 1 {
		notes = append(notes, axis.TurnsFaster)
	}
	if says := r.otherTurn(); says != nil {
		notes = append(notes, report.Note{Kind: report.Doubt, Line: says})
	}
	return notes
}

// nearTurn is how near to a whole turn, in degrees, a rounded setting of a rotary axis comes.
const nearTurn = 0.01

// otherTurn asks whether travel per one turn was typed for that per the other: where a ratio that
// is given is of no use, or where the output of a rotary axis would not turn once. It is nil
// where neither is so.
func (r row) otherTurn() report.Line {
	from, to := r.Setting.Convention, r.other()
	turn, missing := r.In(drive.TravelPerOutputTurn)
	odd := r.Rotary && len(missing) == 0 && math.Abs(turn.Value-unit.Turn) > nearTurn
	unused := from == drive.TravelPerTurn && to != drive.TravelPerOutputTurn && r.Geared() && (odd || r.told && !r.Rotary)
	if !unused && (!odd || from == drive.StepsPerUnit) {
		return nil
	}
	says := report.Say(wholeTurn)
	if unused {
		says = report.Say(ratioUnused, "setting", axis.SettingNameWithin(to, r.Rotary))
	}
	other, per := r.Fact, ifPerOutput
	other.Setting.Convention = drive.TravelPerOutputTurn
	if from == drive.TravelPerOutputTurn {
		other.Setting.Convention, per = drive.TravelPerTurn, ifPerMotor
	}
	fit, missing := other.In(to)
	if len(missing) > 0 || r.Gears.Reduction() == 1 {
		return says
	}
	travel := axis.SettingFigure("", r.Setting, r.Rotary, axis.Digits, false)
	travel.Unit = strings.TrimSuffix(travel.Unit, "/rev")
	return report.Together(says, report.Say(per, "travel", travel, "fit", axis.SettingFigure("", fit, r.Rotary, axis.Digits, false)))
}

// says what the setting was, with the motor and the microsteps where they are in it.
func (r row) says(to drive.Convention) report.Line {
	from := axis.SettingFigure("", r.Setting, r.Rotary, axis.Digits, false)
	says := report.Say(sameAs, "setting", from)
	if motor, _ := drive.Facts(r.Setting.Convention, to); motor {
		says = report.Say(sameAt, "setting", from, "angle", unit.Whole(float64(r.Motor.StepAngle)), "micro", strconv.Itoa(int(r.Motor.Microsteps)))
	}
	switch {
	case r.severally():
		says = report.Together(says, report.Text(tellWhich))
	case to == r.Setting.Convention:
		says = report.Text(sameKind)
	case !r.told && len(r.NoGears) > 0:
		says = report.Together(says, report.Text(ifGeared))
	}
	return says
}

// instead is what to enter where it is more than one number; nil where it is one.
func (r row) instead(to drive.Convention) *report.Part {
	p := &report.Part{}
	switch {
	case r.severally():
		p.Title = dependsTitle.Fill("axis", r.Name)
		for _, c := range drive.Conventions {
			if c == r.Setting.Convention {
				continue
			}
			if blocks, missing := r.Together(c, r.ratio); len(missing) == 0 {
				p.Add(report.ParaOf(ifItStores, "setting", axis.SettingNameWithin(c, r.Rotary)))
				p.Add(blocks...)
			}
		}
	case r.told && to != drive.StepsPerUnit:
		p.Title = togetherTitle.Fill("axis", r.Name)
		blocks, _ := r.Together(to, r.ratio)
		p.Add(blocks...)
	default:
		return nil
	}
	return p
}
