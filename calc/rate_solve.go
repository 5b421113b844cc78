package calc

import (
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

// A rated is a setting with what is told of the motor; what is not is 0.
type rated struct {
	steps float64 // per mm or degree
	motor drive.Motor
}

// A speed is one at which an axis is asked to move.
type speed struct {
	id, word string
	value    float64 // mm/s or °/s
}

// A rateRow is one axis, read.
type rateRow struct {
	n, name string
	rotary  bool
	was, is rated // is: after the swap, if it can be told; else as it was
	swapped bool
	speeds  []speed
	accel   float64
	blocks  []Block // asks
	needs   []string
}

func (s *rateSheet) row(i int) *rateRow {
	moves := s.Moves.Rows[i].Word
	r := &rateRow{n: strconv.Itoa(i + 1), name: axisName(s.Name.Rows[i], i), rotary: moves == "rotary", accel: s.Accel.rows[i].Number}
	f := fact{rotary: r.rotary, gears: plainRatio(s.Ratio.rows[i].Number)}
	motor := s.motorRows.at(i)
	f.motor = motor.motor()
	f.noMotor = motor.missing()
	if !s.Ratio.rows[i].Given {
		f.noGears = []string{"ratio"}
	}
	var key string
	var given bool
	f.setting, key, given = s.scaleRows.at(i).setting(r.rotary)
	r.needs = []string{"compare", "name", "moves", "as", key, "angle", "micro"}
	if f.setting.Convention == drive.TravelPerOutputTurn {
		r.needs = append(r.needs, "ratio")
	}
	steps, missing := f.in(drive.StepsPerUnit)
	if !given {
		missing = append([]string{key}, missing...)
	}
	if len(missing) > 0 {
		r.blocks = append(r.blocks, Ask{missing, "pulses per second"})
		return r
	}
	r.was = rated{steps.Value, f.motor}
	s.readSpeeds(r, i, moves)
	s.readSwap(r, i)
	return r
}

func (s *rateSheet) readSpeeds(r *rateRow, i int, moves string) {
	read := func(id, key, word string, in *unit.Entry) {
		r.needs = append(r.needs, key)
		if in.Given {
			r.speeds = append(r.speeds, speed{id, word, in.Number})
		}
	}
	ask := []string{"work"}
	if moves == "rotary" {
		ask = []string{"workdeg"}
		read("work", "workdeg", "working speed", &s.WorkDeg.rows[i])
		read("fast", "fastdeg", "travel speed", &s.FastDeg.rows[i])
	} else {
		r.needs = append(r.needs, "accel")
		read("work", "work", "working speed", &s.Work.rows[i])
	}
	switch moves {
	case "linear":
		read("fast", "fast", "travel speed", &s.Fast.rows[i])
	case "feed":
		read("back", "back", "retraction speed", &s.Back.rows[i])
	}
	if len(r.speeds) == 0 {
		r.blocks = append(r.blocks, Ask{ask, "pulses per second"})
	}
}

// readSwap reads what is there after the swap: a new setting, or the old one
// with another motor or other microsteps.
func (s *rateSheet) readSwap(r *rateRow, i int) {
	r.is = r.was
	if s.Compare.Word != "swap" {
		return
	}
	steps, key := &s.StepsNew.rows[i], "stepsnew"
	if r.rotary {
		steps, key = &s.DegNew.rows[i], "stepsdegnew"
	}
	now := s.newMotor.at(i)
	r.needs = append(r.needs, key, "anglenew", "micronew")
	var was, is drive.Parts
	if now.Angle.Given {
		was.StepAngle, is.StepAngle = r.was.motor.StepAngle, now.Angle.Value()
		r.is.motor.StepAngle = now.Angle.Value()
	}
	if now.Micro.Given {
		was.Microsteps, is.Microsteps = r.was.motor.Microsteps, now.Micro.Value()
		r.is.motor.Microsteps = now.Micro.Value()
	}
	var missing []string
	factors, err := drive.Rescale(was, is)
	switch {
	case steps.Given:
		r.is.steps = steps.Number
	case !now.Angle.Given && !now.Micro.Given:
		missing = []string{key}
	case err != nil: // a part is told on one side only
		if now.Angle.Given && was.StepAngle == 0 {
			missing = append(missing, "angle")
		}
		if now.Micro.Given && was.Microsteps == 0 {
			missing = append(missing, "micro")
		}
	default:
		r.is.steps = r.was.steps * factors.Steps
	}
	if r.swapped = len(missing) == 0; !r.swapped {
		r.is = r.was
		r.blocks = append(r.blocks, Ask{missing, "what the swap changes"})
	}
}

func (s *rateSheet) Solve() Report {
	a := rates{sheet: s}
	fields := s.Fields()
	r := Report{Parts: []Part{aboutPulses}}
	for i := range s.Name.Rows {
		if i > 0 && blank(fields, i) {
			continue
		}
		row := s.row(i)
		a.needs = append(a.needs, row.needs...)
		r.add(row.part())
		if row.was.steps > 0 {
			a.rows = append(a.rows, row)
		}
	}
	if len(a.rows) == 0 {
		return r
	}
	a.sum()
	r.Answer = a.answer()
	if len(a.rows) > 1 {
		r.insert(1, a.glance())
	}
	r.add(a.together(), a.limits(), a.charts(), a.after(), a.torque(), a.corner())
	return r
}
