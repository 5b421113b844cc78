package plan

import (
	"math"
	"strings"

	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// picture draws the test that is planned, to scale.
func (a *solution) picture() *report.Part {
	p := &report.Part{ID: "picture", Title: pictureTitle, Needs: a.keys}
	if !a.isFeed() {
		p.Add(a.travelDrawing())
		return p
	}
	length := a.test.Commanded
	t := trial.FeedTest{ID: "test", Title: feedDrawing, Mark: a.test.Mark, Rest: a.test.Mark - length, Words: &trial.TestToCome, Show: showMillimetres}
	p.Add(t.Draw())
	return p
}

func showMillimetres(v float64) string { return millimetres("", "", v).String() }

const travelRail = 68 // height of the axis on the paper

func (a *solution) travelDrawing() report.Drawing {
	from, to := a.From.Number, a.To.Number
	s := report.SketchOf("test", moveDrawing, from, to, 14, 14, showMillimetres)
	s.Dim(report.Measure, from, to, 40, travelRail-12, freeDim)
	s.Line(report.Body, from, travelRail, to, travelRail)
	s.Plate(report.Body, s.From+6*s.Per, travelRail-12, from, travelRail+12)
	s.Plate(report.Body, to, travelRail-12, s.To-6*s.Per, travelRail+12)
	s.Plate(report.Ghost, from, travelRail-5, from+slack, travelRail+5)
	s.Words(s.From+6*s.Per, 16, report.Start, endAt.Fill("axis", a.letter(), "position", s.Show(from)))
	s.Words(s.To-6*s.Per, 16, report.End, endAt.Fill("axis", a.letter(), "position", s.Show(to)))
	if a.Method() == trial.BothSides {
		return a.bothSidesDrawing(s)
	}
	y, start := float64(travelRail+12), from+slack
	lengths := a.lengths()
	for _, length := range lengths {
		y += 24
		s.Dim(report.Motion, start, start+length, y, travelRail, runDim)
	}
	end := start + a.test.Commanded
	s.Dim(report.Ghost, end, from, y+24, y+24, backDim)
	s.Dim(report.Measure, from, start, y+48, travelRail, slackDim)
	alt := runAlt
	if len(lengths) > 1 {
		alt = lengthsAlt
	}
	s.Alt = alt.Fill(a.rangeParts("lengths", showAll(lengths), "back", s.Show(end-from))...)
	return s.Done(y+60, "")
}

// rangeParts are the parts of what a drawing says of the range, and more.
func (a *solution) rangeParts(more ...string) []string {
	from, to := a.From.Number, a.To.Number
	return append(more, "axis", a.letter(), "from", showMillimetres(from), "to", showMillimetres(to),
		"free", showMillimetres(to-from), "slack", showMillimetres(slack))
}

// showAll are lengths in a row.
func showAll(lengths []float64) string {
	all := make([]string, len(lengths))
	for i, v := range lengths {
		all[i] = showMillimetres(v)
	}
	return strings.Join(all, between)
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
	}
	s.Arrow(report.Motion, from, up, to, up)
	s.Arrow(report.Motion, to, down, from, down)
	s.Words(to, up+15, report.End, movingPlus)
	s.Words(from, down+15, report.Start, movingMinus)
	s.Dim(report.Measure, from, from+slack, down+42, travelRail+5, turnDim)
	s.Alt = sidesAlt.Fill(a.rangeParts("targets", showAll(targets))...)
	return s.Done(down+54, "")
}
