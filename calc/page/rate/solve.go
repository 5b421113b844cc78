package rate

import (
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A state is a setting with what is given of the motor; what is not is 0.
type state struct {
	steps float64 // per mm or degree
	motor drive.Motor
}

// A speed is one at which an axis is asked to move.
type speed struct {
	id    string
	kind  *speedKind
	value float64 // mm/s or °/s
}

// A row is one axis, read.
type row struct {
	n, name string
	rotary  bool
	was, is state // is: after the swap, if that is known; else as it was
	swapped bool
	speeds  []speed
	accel   float64
	blocks  []report.Block // asks
	needs   []string
}

func (s *entries) row(i int) *row {
	moves := s.Moves.Rows[i].Word
	r := &row{n: strconv.Itoa(i + 1), name: axis.NameOf(s.Name.Rows[i], i), rotary: moves == "rotary", accel: s.Accel.Rows[i].Number}
	f := axis.Fact{Rotary: r.rotary, Gears: axis.PlainRatio(s.Ratio.Rows[i].Number)}
	motor := s.MotorRows.At(i)
	f.Motor = motor.Motor()
	f.NoMotor = motor.Missing()
	if !s.Ratio.Rows[i].Given {
		f.NoGears = []string{"ratio"}
	}
	var key string
	var given bool
	f.Setting, key, given = s.ScaleRows.At(i).Setting(r.rotary)
	r.needs = []string{"compare", "name", "moves", "as", key, "angle", "micro"}
	if f.Setting.Convention == drive.TravelPerOutputTurn {
		r.needs = append(r.needs, "ratio")
	}
	steps, missing := f.In(drive.StepsPerUnit)
	if !given {
		missing = append([]string{key}, missing...)
	}
	if len(missing) > 0 {
		r.blocks = append(r.blocks, report.Ask{Keys: missing, For: forRate})
		return r
	}
	r.was = state{steps.Value, f.Motor}
	s.readSpeeds(r, i, moves)
	s.readSwap(r, i)
	return r
}

func (s *entries) readSpeeds(r *row, i int, moves string) {
	read := func(id, key string, kind *speedKind, in *unit.Entry) {
		r.needs = append(r.needs, key)
		if in.Given {
			r.speeds = append(r.speeds, speed{id, kind, in.Number})
		}
	}
	ask := []string{"work"}
	if moves == "rotary" {
		ask = []string{"workdeg"}
		read("work", "workdeg", &working, &s.WorkDeg.Rows[i])
		read("fast", "fastdeg", &travel, &s.FastDeg.Rows[i])
	} else {
		r.needs = append(r.needs, "accel")
		read("work", "work", &working, &s.Work.Rows[i])
	}
	switch moves {
	case "linear":
		read("fast", "fast", &travel, &s.Fast.Rows[i])
	case "feed":
		read("back", "back", &retraction, &s.Back.Rows[i])
	}
	if len(r.speeds) == 0 {
		r.blocks = append(r.blocks, report.Ask{Keys: ask, For: forRate})
	}
}

// readSwap reads what is there after the swap: a new setting, or the old one
// with another motor or other microsteps.
func (s *entries) readSwap(r *row, i int) {
	r.is = r.was
	if s.Compare.Word != "swap" {
		return
	}
	steps, key := &s.StepsNew.Rows[i], "stepsnew"
	if r.rotary {
		steps, key = &s.DegNew.Rows[i], "stepsdegnew"
	}
	now := s.newMotor.At(i)
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
	case err != nil: // a part is given on one side only
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
		r.blocks = append(r.blocks, report.Ask{Keys: missing, For: forSwap})
	}
}

func (s *entries) Solve() report.Report {
	a := solution{sheet: s}
	fields := s.Fields()
	r := report.Report{Parts: []report.Part{aboutPulses}, Problems: s.weakSupply()}
	for i := range s.Name.Rows {
		if i > 0 && axis.Blank(fields, i) {
			continue
		}
		axis.ReadRatio(&r.Remarks, "ratio", i, &s.Ratio.Rows[i])
		row := s.row(i)
		a.needs = append(a.needs, row.needs...)
		part := row.part()
		if row.was.steps > 0 {
			part.Fold(rowBrief)
		}
		r.Add(part)
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
		r.AddFirst(a.glance())
	}
	r.Add(a.together().Fold(togetherBrief), a.limits(), a.after(), a.torque().Fold(torqueBrief), a.corner().Fold(cornerBrief))
	return r
}
