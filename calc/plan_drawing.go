package calc

import "math"

// picture draws the test that is planned, to scale.
func (a *planned) picture() *Part {
	p := &Part{ID: "picture", Title: "The test as a drawing", Needs: a.keys}
	if !a.isFeed() {
		p.add(a.travelDrawing())
		return p
	}
	length := a.test.Commanded
	t := feedTest{id: "test", title: "One run, to scale", mark: a.test.Mark, rest: a.test.Mark - length, left: "left, about", way: "feed", show: showMillimetres}
	p.add(t.draw())
	return p
}

func showMillimetres(v float64) string { return millimetres("", "", v).String() }

const travelRail = 68 // height of the axis on the paper

func (a *planned) travelDrawing() Drawing {
	from, to := a.From.Number, a.To.Number
	s := sketchOf("test", "The free range and the moves, to scale", from, to, 14, 14, showMillimetres)
	letter := capital(a.Letter.Word)
	s.dim(Measure, from, to, 40, travelRail-12, "free")
	s.line(Body, from, travelRail, to, travelRail)
	s.plate(Body, s.From+6*s.per, travelRail-12, from, travelRail+12)
	s.plate(Body, to, travelRail-12, s.To-6*s.per, travelRail+12)
	s.plate(Ghost, from, travelRail-5, from+slack, travelRail+5)
	s.words(s.From+6*s.per, 16, Start, letter+" "+s.show(from))
	s.words(s.To-6*s.per, 16, End, letter+" "+s.show(to))
	s.tell(letter+" is free from ", from)
	s.tell(" to ", to)
	s.tell(", which is ", to-from)
	if a.method() == bothSides {
		return a.bothSidesDrawing(s)
	}
	s.tell(". The first ", slack)
	s.Alt += " take up slack; from there"
	y, start := float64(travelRail+12), from+slack
	for _, length := range a.lengths() {
		y += 24
		s.dim(Motion, start, start+length, y, travelRail, "run")
		s.tell(" a run of ", length)
		s.Alt += ","
	}
	end := start + a.test.Commanded
	s.dim(Ghost, end, from, y+24, y+24, "back")
	s.tell(" and back ", end-from)
	s.dim(Measure, from, start, y+48, travelRail, "slack")
	return s.done(y+60, " at most.")
}

// lengths are those of the runs, the short ones first, as they are planned.
func (a *planned) lengths() []float64 {
	if len(a.design.Places) == 0 {
		return []float64{a.test.Commanded}
	}
	var all []float64
	for _, share := range a.design.Places {
		all = append(all, nearest(share*a.test.Commanded))
	}
	return all
}

// bothSidesDrawing adds the targets of a test from both sides.
func (a *planned) bothSidesDrawing(s *sketch) Drawing {
	from, to := a.From.Number, a.To.Number
	s.plate(Ghost, to-slack, travelRail-5, to, travelRail+5)
	// Names that are as wide as this stand on so many lines, each free of the next.
	const name = 72
	targets := a.targets()
	lines := min(len(targets), int(math.Ceil(name*s.per/(targets[1]-targets[0]))))
	up := float64(travelRail + 34 + 14*lines)
	down := up + 26
	for i, x := range targets {
		y := float64(travelRail + 26 + 14*(i%lines))
		s.upright(Mark, x, travelRail-9, travelRail+9)
		s.upright(Measure, x, y+3, down)
		s.words(x, y, Middle, Figure{Value: x, Digits: 6}.Number())
		s.tell([...]string{". Targets at ", ", "}[min(i, 1)], x)
	}
	s.arrow(Motion, from, up, to, up)
	s.arrow(Motion, to, down, from, down)
	s.words(to, up+15, End, "up: from below")
	s.words(from, down+15, Start, "down: from above")
	s.dim(Measure, from, from+slack, down+42, travelRail+5, "to turn round")
	s.tell(", approached upwards from below and downwards from above; at either end ", slack)
	return s.done(down+54, " at least are kept for turning round.")
}
