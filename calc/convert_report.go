package calc

import (
	"strings"

	"striderule/calc/drive"
)

func (r tableRow) needs() []string {
	return []string{"name", "moves", "as", r.key, "angle", "micro", "ratio"}
}

func (r tableRow) part() *Part {
	figures, asks := r.numbers()
	p := &Part{ID: "axis-" + r.n, Title: r.name, Needs: r.needs(), Blocks: append([]Block{Figures{figures}}, asks...)}
	if ratio, ok := r.gears.(plainRatio); ok && ratio > 0 && ratio < 1 {
		p.add(turnsFaster)
	}
	return p
}

// overview is the number that was asked for, of every axis, side by side.
func (s *convertSheet) overview(rows []tableRow) *Part {
	t := Table{Caption: "All axes", Head: []string{"Axis", "Given", "Wanted"}}
	p := &Part{ID: "all", Title: "All axes at a glance"}
	for _, r := range rows {
		p.Needs = append(p.Needs, r.needs()...)
		to := r.other()
		wanted, missing := r.in(to)
		if len(missing) > 0 {
			continue
		}
		t.row(r.name,
			settingFigure("", r.setting, r.rotary, convertDigits, false),
			settingFigure("", wanted, r.rotary, convertDigits, false))
	}
	p.add(t)
	if len(t.Rows) < 2 {
		return nil
	}
	return p
}

// other is the convention that the person does not have.
func (r tableRow) other() drive.Convention {
	if r.setting.Convention == drive.StepsPerUnit {
		return drive.TravelPerTurn
	}
	return drive.StepsPerUnit
}

// answer is the number in the other convention: travel per motor turn for who
// has steps per mm, steps per mm for the others.
func (r tableRow) answer(needs []string) *Answer {
	to := r.other()
	s, missing := r.in(to)
	if len(missing) > 0 {
		return nil
	}
	f := settingFigure(conventionWords[to], s, r.rotary, convertDigits, false)
	f.Label = r.name + ", " + strings.ToLower(f.Label)
	from := settingFigure("", r.setting, r.rotary, convertDigits, false)
	return &Answer{Figure: *f, Needs: needs, Says: say("The same fact as ", from, ".")}
}
