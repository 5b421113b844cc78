package convert

import (
	"strings"

	"striderule/calc/drive"
	"striderule/calc/page/axis"
	"striderule/calc/report"
)

func (r row) needs() []string {
	return []string{"name", "moves", "as", r.Key, "angle", "micro", "ratio"}
}

func (r row) part() *report.Part {
	figures, asks := r.Numbers()
	p := &report.Part{ID: "axis-" + r.N, Title: r.Name, Needs: r.needs(), Blocks: append([]report.Block{report.Figures{All: figures}}, asks...)}
	if ratio, ok := r.Gears.(axis.PlainRatio); ok && ratio > 0 && ratio < 1 {
		p.Add(axis.TurnsFaster)
	}
	return p
}

// overview is the number that was asked for, of every axis, side by side.
func (s *entries) overview(rows []row) *report.Part {
	t := report.Table{Caption: "All axes", Head: []string{"Axis", "Given", "Wanted"}}
	p := &report.Part{ID: "all", Title: "All axes at a glance"}
	for _, r := range rows {
		p.Needs = append(p.Needs, r.needs()...)
		to := r.other()
		wanted, missing := r.In(to)
		if len(missing) > 0 {
			continue
		}
		t.Row(r.Name,
			axis.SettingFigure("", r.Setting, r.Rotary, axis.Digits, false),
			axis.SettingFigure("", wanted, r.Rotary, axis.Digits, false))
	}
	p.Add(t)
	if len(t.Rows) < 2 {
		return nil
	}
	return p
}

// other is the convention that the person does not have.
func (r row) other() drive.Convention {
	if r.Setting.Convention == drive.StepsPerUnit {
		return drive.TravelPerTurn
	}
	return drive.StepsPerUnit
}

// answer is the number in the other convention: travel per motor turn for who
// has steps per mm, steps per mm for the others.
func (r row) answer(needs []string) *report.Answer {
	to := r.other()
	s, missing := r.In(to)
	if len(missing) > 0 {
		return nil
	}
	f := axis.SettingFigure(axis.ConventionWords[to], s, r.Rotary, axis.Digits, false)
	f.Label = r.Name + ", " + strings.ToLower(f.Label)
	from := axis.SettingFigure("", r.Setting, r.Rotary, axis.Digits, false)
	return &report.Answer{Figure: *f, Needs: needs, Says: report.Say("The same fact as ", from, ".")}
}
