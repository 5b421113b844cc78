package calc

import (
	"math"
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

// A train is a drivetrain as far as it is told, to be drawn.
type train struct {
	id     string
	angle  unit.Angle // of the motor's full step; 0 if it is not told
	gears  gearing    // nil if it is not told
	out    *outputEntry
	travel string // of one motor turn; empty if it is not known
}

// What small and large wheels of a stage share is kept in bounds, so that a
// tooth beside ten thousand is still seen.
const (
	leastShare   = 0.2
	mostDistance = 64 // between the shafts of a stage
	outputReach  = 84 // of the output element, right of its shaft
	outputHigh   = 40 // above and below its shaft
	motorHalf    = 24
)

// A wheelPair is one stage on paper.
type wheelPair struct {
	drive.Stage
	small, large float64 // radii of the wheels on the motor side and on the driven side
}

// wheelPairs sizes the wheels of all stages for the room that there is.
func wheelPairs(stages drive.Stages) []wheelPair {
	var all []wheelPair
	distance := min(mostDistance, 150/float64(max(1, len(stages))))
	for _, st := range stages {
		share := float64(st.Driving) / float64(st.Driving+st.Driven)
		share = min(1-leastShare, max(leastShare, share))
		all = append(all, wheelPair{st, share * distance, (1 - share) * distance})
	}
	return all
}

func (t train) draw() Drawing {
	s := schematic("train-"+t.id, "The drivetrain as entered")
	stages, _ := t.gears.(toothPairs)
	wheels := wheelPairs(drive.Stages(stages))
	ratio, boxed := t.gears.(plainRatio)

	left, long, half := float64(motorHalf), 0.0, float64(outputHigh)
	for i, w := range wheels {
		if i == 0 {
			left = max(left, w.small)
		}
		long, half = long+w.small+w.large, max(half, w.small+6, w.large+6)
	}
	if boxed {
		long = 96
	}
	x, y := (PaperWidth-left-long-outputReach)/2+left, 42+half
	motor := "motor"
	s.plate(Body, x-motorHalf, y-motorHalf, x+motorHalf, y+motorHalf)
	if t.angle > 0 {
		motor += ", full step " + Figure{Value: float64(t.angle), Unit: "°", Digits: 5}.String()
	}
	s.words(2, 14, Start, motor)
	s.Alt = capital(motor)
	for _, screw := range []XY{{-18, -18}, {18, -18}, {18, 18}, {-18, 18}} {
		s.disc(x+screw.X, y+screw.Y, 2, 0)
	}
	turning := float64(motorHalf) - 3
	if len(wheels) > 0 {
		turning = wheels[0].small + 5
	}
	label, rows := y+half+16, min(3, len(wheels))
	from := x
	for i, w := range wheels {
		s.disc(from, y, w.small, int(w.Driving))
		s.disc(from+w.small+w.large, y, w.large, int(w.Driven))
		text := strconv.Itoa(int(w.Driving)) + " : " + strconv.Itoa(int(w.Driven))
		s.Alt += "; a pair of " + text + " teeth"
		if len(wheels) < 3 {
			text += " teeth"
		}
		s.words(from+(w.small+w.large)/2+(w.small-w.large)/2, label+15*float64(i%rows), Middle, text)
		from += w.small + w.large
	}
	if boxed {
		text := "ratio " + Figure{Value: float64(ratio), Digits: 6}.String()
		s.line(Body, from, y, from+long, y)
		s.plate(Body, from+motorHalf+6, y-20, from+long-10, y+20)
		s.words(from+motorHalf+6+(long-motorHalf-16)/2, label, Middle, text)
		s.Alt += "; gears of " + text
		from, rows = from+long, 1
	}
	element, _ := t.out.element("")
	if element != nil {
		what := strings.TrimPrefix(t.out.describe(), "a ")
		drawOutput(s, t.out, from, y)
		s.words(PaperWidth-2, 30, End, what)
		s.Alt += "; " + what
	}
	s.arrow(Motion, arc(x, y, turning)...)
	s.disc(x, y, 2.5, 0)
	foot := label + 15*float64(rows) - 4
	if t.travel == "" {
		return s.done(foot, ".")
	}
	s.arrow(Motion, from-14, foot, from+outputReach-4, foot)
	s.words(PaperWidth-2, foot+18, End, "one motor turn moves "+t.travel)
	return s.done(foot+26, ". One motor turn moves "+t.travel+".")
}

// arc is most of a turn, clockwise.
func arc(x, y, r float64) []float64 {
	var all []float64
	for a := -150.0; a <= 60; a += 15 {
		sin, cos := math.Sincos(a * math.Pi / 180)
		all = append(all, x+r*cos, y+r*sin)
	}
	return all
}

// drawOutput draws what turns rotation into travel, on its shaft.
func drawOutput(s *sketch, o *outputEntry, x, y float64) {
	end := x + outputReach - 4
	switch o.Kind.Word {
	case "belt":
		const r = 17
		s.line(Body, end-10, y-r-2, x, y-r-2)
		s.line(Body, end-10, y+r+2, x, y+r+2)
		s.disc(x, y, r, int(o.Teeth.Value()))
		s.disc(end-16, y, r, 0)
		s.plate(Motion, x+28, y-r-9, x+48, y-r+1)
	case "screw":
		s.plate(Body, x, y-6, end, y+6)
		for at := x + 4; at < end-6; at += 7 {
			s.line(Measure, at, y+6, at+5, y-6)
		}
		s.plate(Motion, x+38, y-14, x+58, y+14)
	case "rack":
		s.disc(x, y, 16, int(o.Pinion.Value()))
		var teeth []float64
		for at := x - 20; at < end-8; at += 10 {
			teeth = append(teeth, at, y+23, at+2, y+18, at+5, y+18, at+7, y+23)
		}
		s.line(Motion, teeth...)
		s.plate(Motion, x-20, y+23, end, y+28)
	case "roller":
		s.plate(Motion, x-20, y+16, end, y+21)
		s.disc(x, y, 16, 0)
		s.disc(x, y+30, 9, 0)
	case "rotary":
		s.disc(x, y, 34, 0)
		s.line(Motion, x, y, x+34, y)
		s.arrow(Motion, arc(x, y, 38)...)
	}
}

// mostTrains is how many axes are drawn: more than a machine has, and few enough
// for a phone to draw anew at every key.
const mostTrains = 12

// drawing is the axis as entered; ok is false while too little of it is told.
func (r *partsRow) drawing() (d Drawing, ok bool) {
	t := train{id: r.n, angle: r.motor.StepAngle, out: r.out}
	if len(r.noGears) == 0 {
		t.gears = r.gears // none while they are looked for
	}
	if turn, missing := r.in(drive.TravelPerTurn); len(missing) == 0 && len(r.missing) == 0 && (r.find != findGears || r.found != nil) {
		f := settingFigure("", turn, r.rotary, convertDigits, false)
		f.Unit = "mm"
		if r.rotary {
			f.Unit = "°"
		}
		t.travel = f.String()
	}
	element, _ := r.out.element("")
	told := r.found != nil || element != nil && !r.rotary
	return t.draw(), told && r.drawn
}
