package parts

import (
	"math"
	"strconv"

	"striderule/calc/drive"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// A train is a drivetrain as far as it is given, to be drawn.
type train struct {
	id     string
	angle  unit.Angle   // of the motor's full step; 0 if it is not given
	gears  axis.Gearing // nil if it is not given
	out    *axis.OutputEntry
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

func (t train) draw() report.Drawing {
	s := report.Schematic("train-"+t.id, trainTitle)
	stages, _ := t.gears.(axis.ToothPairs)
	wheels := wheelPairs(drive.Stages(stages))
	ratio, boxed := t.gears.(axis.PlainRatio)

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
	x, y := (report.PaperWidth-left-long-outputReach)/2+left, 42+half
	s.Plate(report.Body, x-motorHalf, y-motorHalf, x+motorHalf, y+motorHalf)
	motor := motorAlone
	if t.angle > 0 {
		motor = motorAngled.Fill("angle", report.Figure{Value: float64(t.angle), Unit: "°", Digits: 5}.String())
	}
	s.Words(2, 14, report.Start, motor)
	says := []string{motor} // what the alternative text says in a row
	for _, screw := range []report.XY{{X: -18, Y: -18}, {X: 18, Y: -18}, {X: 18, Y: 18}, {X: -18, Y: 18}} {
		s.Disc(x+screw.X, y+screw.Y, 2, 0)
	}
	turning := float64(motorHalf) - 3
	if len(wheels) > 0 {
		turning = wheels[0].small + 5
	}
	label, rows := y+half+16, min(3, len(wheels))
	from := x
	for i, w := range wheels {
		s.Disc(from, y, w.small, int(w.Driving))
		s.Disc(from+w.small+w.large, y, w.large, int(w.Driven))
		driving, driven := strconv.Itoa(int(w.Driving)), strconv.Itoa(int(w.Driven))
		text := pairTeeth.Fill("driving", driving, "driven", driven)
		says = append(says, text)
		if len(wheels) > 2 {
			text = pairShort.Fill("driving", driving, "driven", driven)
		}
		s.Words(from+(w.small+w.large)/2+(w.small-w.large)/2, label+15*float64(i%rows), report.Middle, text)
		from += w.small + w.large
	}
	if boxed {
		text := ratioGiven.Fill("ratio", report.Figure{Value: float64(ratio), Digits: 6}.String())
		s.Line(report.Body, from, y, from+long, y)
		s.Plate(report.Body, from+motorHalf+6, y-20, from+long-10, y+20)
		s.Words(from+motorHalf+6+(long-motorHalf-16)/2, label, report.Middle, text)
		says = append(says, text)
		from, rows = from+long, 1
	}
	if element, _ := t.out.Element(""); element != nil {
		what := t.out.Given()
		drawOutput(s, t.out, from, y)
		s.Words(report.PaperWidth-2, 30, report.End, what)
		says = append(says, what)
	}
	s.Arrow(report.Motion, arc(x, y, turning)...)
	s.Disc(x, y, 2.5, 0)
	foot := label + 15*float64(rows) - 4
	if t.travel != "" {
		turn := motorTurn.Fill("travel", t.travel)
		s.Arrow(report.Motion, from-14, foot, from+outputReach-4, foot)
		s.Words(report.PaperWidth-2, foot+18, report.End, turn)
		says = append(says, turn)
		foot += 26
	}
	return s.Done(foot, inARow(says))
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

// An outputDrawing is what turns rotation into travel, on its shaft at 0, 0.
type outputDrawing struct {
	kind    string
	pieces  []report.Piece
	threads [][3]float64 // of a screw: from, to, and from one to the next
	nuts    []report.Piece
	teeth   float64 // radius of the wheel whose teeth are given; 0 if there is none
}

var outputDrawings = []outputDrawing{
	{kind: "belt", teeth: 17, pieces: []report.Piece{
		{At: []float64{70, -19, 0, -19}}, {At: []float64{70, 19, 0, 19}},
	}, nuts: []report.Piece{
		{Kind: report.DiscPiece, At: []float64{64, 0, 17, 0}}, {Kind: report.PlatePiece, Role: report.Motion, At: []float64{28, -26, 48, -16}},
	}},
	{kind: "drum", pieces: []report.Piece{
		{At: []float64{0, -18, 64, -18}}, {Kind: report.DiscPiece, At: []float64{0, 0, 17, 0}},
		{Kind: report.PlatePiece, Role: report.Motion, At: []float64{64, -24, 80, -12}},
	}},
	{kind: "differential", pieces: []report.Piece{{Kind: report.PlatePiece, At: []float64{0, -6, 80, 6}}},
		threads: [][3]float64{{4, 34, 7}, {42, 76, 4}}, nuts: []report.Piece{
			{Kind: report.PlatePiece, At: []float64{12, -14, 26, 14}}, {Kind: report.PlatePiece, Role: report.Motion, At: []float64{50, -14, 66, 14}},
		}},
	{kind: "screw", pieces: []report.Piece{{Kind: report.PlatePiece, At: []float64{0, -6, 80, 6}}},
		threads: [][3]float64{{4, 74, 7}}, nuts: []report.Piece{{Kind: report.PlatePiece, Role: report.Motion, At: []float64{38, -14, 58, 14}}}},
	{kind: "rack", teeth: 16, nuts: []report.Piece{{Kind: report.PlatePiece, Role: report.Motion, At: []float64{-20, 23, 80, 28}}}},
	{kind: "roller", pieces: []report.Piece{
		{Kind: report.PlatePiece, Role: report.Motion, At: []float64{-20, 16, 80, 21}},
		{Kind: report.DiscPiece, At: []float64{0, 0, 16, 0}}, {Kind: report.DiscPiece, At: []float64{0, 30, 9, 0}},
	}},
	{kind: "rotary", pieces: []report.Piece{
		{Kind: report.DiscPiece, At: []float64{0, 0, 34, 0}}, {Role: report.Motion, At: []float64{0, 0, 34, 0}},
	}},
	// A belt or cable that runs from the shaft round a pulley on what moves, and back to where it is fixed.
	{kind: "moving", teeth: 17, pieces: []report.Piece{
		{At: []float64{0, -18, 63, -18}}, {At: []float64{27, 18, 63, 18}}, {At: []float64{27, 13, 27, 23}},
	}, nuts: []report.Piece{
		{Kind: report.DiscPiece, At: []float64{63, 0, 17, 0}}, {Kind: report.PlatePiece, Role: report.Motion, At: []float64{57, -6, 69, 6}},
	}},
}

// drawOutput draws what turns rotation into travel, on its shaft.
func drawOutput(s *report.Sketch, o *axis.OutputEntry, x, y float64) {
	kind := o.Kind.Word
	if o.Moving() {
		kind = "moving"
	}
	for i := range outputDrawings {
		d := &outputDrawings[i]
		if d.kind != kind {
			continue
		}
		s.Draw(x, y, d.pieces)
		for _, t := range d.threads {
			for at := x + t[0]; at < x+t[1]; at += t[2] {
				s.Line(report.Measure, at, y+6, at+t[2]*0.7, y-6)
			}
		}
		if d.teeth > 0 {
			s.Disc(x, y, d.teeth, int(o.Teeth.Value()+o.Pinion.Value())) // one of both is hidden
		}
		s.Draw(x, y, d.nuts)
	}
	switch kind {
	case "rack":
		var teeth []float64
		for at := x - 20; at < x+72; at += 10 {
			teeth = append(teeth, at, y+23, at+2, y+18, at+5, y+18, at+7, y+23)
		}
		s.Line(report.Motion, teeth...)
	case "rotary":
		s.Arrow(report.Motion, arc(x, y, 38)...)
	}
}

// mostTrains is how many axes are drawn: more than a machine has, and few enough
// for a phone to draw anew at every key.
const mostTrains = 12

// drawing is the axis as entered; ok is false while too little of it is given.
func (r *row) drawing() (d report.Drawing, ok bool) {
	t := train{id: r.N, angle: r.Motor.StepAngle, out: r.out}
	if len(r.NoGears) == 0 {
		t.gears = r.Gears // none while they are looked for
	}
	if turn, missing := r.In(drive.TravelPerTurn); len(missing) == 0 && len(r.missing) == 0 && (r.find != findGears || r.found != nil) {
		f := axis.SettingFigure("", turn, r.Rotary, axis.Digits, false)
		f.Unit = "mm"
		if r.Rotary {
			f.Unit = "°"
		}
		t.travel = f.String()
	}
	element, _ := r.out.Element("")
	told := r.found != nil || element != nil && !r.Rotary
	return t.draw(), told && r.drawn
}
