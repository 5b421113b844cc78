package plan

import (
	"math"

	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/word"
)

// picture draws the test that is planned, to scale.
func (a *solution) picture() *report.Part {
	p := &report.Part{ID: "picture", Title: "The test as a drawing", Needs: a.keys}
	if !a.isFeed() {
		p.Add(a.travelDrawing())
		return p
	}
	length := a.test.Commanded
	t := trial.FeedTest{ID: "test", Title: "One run, to scale", Mark: a.test.Mark, Rest: a.test.Mark - length, Left: "left, about", Way: "feed", Show: showMillimetres}
	p.Add(t.Draw())
	return p
}

func showMillimetres(v float64) string { return millimetres("", "", v).String() }

const travelRail = 68 // height of the axis on the paper

func (a *solution) travelDrawing() report.Drawing {
	from, to := a.From.Number, a.To.Number
	s := report.SketchOf("test", "The free range and the moves, to scale", from, to, 14, 14, showMillimetres)
	letter := word.Capital(a.Letter.Word)
	s.Dim(report.Measure, from, to, 40, travelRail-12, "free")
	s.Line(report.Body, from, travelRail, to, travelRail)
	s.Plate(report.Body, s.From+6*s.Per, travelRail-12, from, travelRail+12)
	s.Plate(report.Body, to, travelRail-12, s.To-6*s.Per, travelRail+12)
	s.Plate(report.Ghost, from, travelRail-5, from+slack, travelRail+5)
	s.Words(s.From+6*s.Per, 16, report.Start, letter+" "+s.Show(from))
	s.Words(s.To-6*s.Per, 16, report.End, letter+" "+s.Show(to))
	s.Tell(letter+" is free from ", from)
	s.Tell(" to ", to)
	s.Tell(", which is ", to-from)
	if a.Method() == trial.BothSides {
		return a.bothSidesDrawing(s)
	}
	s.Tell(". The first ", slack)
	s.Alt += " take up slack; from there"
	y, start := float64(travelRail+12), from+slack
	for _, length := range a.lengths() {
		y += 24
		s.Dim(report.Motion, start, start+length, y, travelRail, "run")
		s.Tell(" a run of ", length)
		s.Alt += ","
	}
	end := start + a.test.Commanded
	s.Dim(report.Ghost, end, from, y+24, y+24, "back")
	s.Tell(" and back ", end-from)
	s.Dim(report.Measure, from, start, y+48, travelRail, "slack")
	return s.Done(y+60, " at most.")
}

// lengths are those of the runs, the short ones first, as they are planned.
func (a *solution) lengths() []float64 {
	if len(a.design.Places) == 0 {
		return []float64{a.test.Commanded}
	}
	var all []float64
	for _, share := range a.design.Places {
		all = append(all, trial.Nearest(share*a.test.Commanded))
	}
	return all
}

// bothSidesDrawing adds the targets of a test from both sides.
func (a *solution) bothSidesDrawing(s *report.Sketch) report.Drawing {
	from, to := a.From.Number, a.To.Number
	s.Plate(report.Ghost, to-slack, travelRail-5, to, travelRail+5)
	// Names that are as wide as this stand on so many lines, each free of the next.
	const name = 72
	targets := a.targets()
	lines := min(len(targets), int(math.Ceil(name*s.Per/(targets[1]-targets[0]))))
	up := float64(travelRail + 34 + 14*lines)
	down := up + 26
	for i, x := range targets {
		y := float64(travelRail + 26 + 14*(i%lines))
		s.Upright(report.Mark, x, travelRail-9, travelRail+9)
		s.Upright(report.Measure, x, y+3, down)
		s.Words(x, y, report.Middle, report.Figure{Value: x, Digits: 6}.Number())
		s.Tell([...]string{". Targets at ", ", "}[min(i, 1)], x)
	}
	s.Arrow(report.Motion, from, up, to, up)
	s.Arrow(report.Motion, to, down, from, down)
	s.Words(to, up+15, report.End, "up: from below")
	s.Words(from, down+15, report.Start, "down: from above")
	s.Dim(report.Measure, from, from+slack, down+42, travelRail+5, "to turn round")
	s.Tell(", approached upwards from below and downwards from above; at either end ", slack)
	return s.Done(down+54, " at least are kept for turning round.")
}
