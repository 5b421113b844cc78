package swap

import (
	"math"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/page/axis"
	"striderule/calc/report"
)

// A combing is one full step of a motor with its microsteps, as travel.
type combing struct {
	stepWords
	micro, step float64 // travel of a microstep and of a full step, 0 where the microsteps are not given
}

// finest is how close together, on paper, ticks are still told apart.
const finest = 2.5

// stepPicture sets one full step before and after side by side, with its
// microsteps. It is false while a microstep of either is not known.
func (a *solution) stepPicture() *report.Part {
	var all []combing
	for _, of := range []struct {
		stepWords
		axis.Fact
	}{{stepBefore, a.before()}, {stepAfter, a.after()}} {
		steps, missing := of.In(drive.StepsPerUnit)
		if len(missing) > 0 {
			return nil
		}
		all = append(all, combing{of.stepWords, 1 / steps.Value, float64(of.Motor.Microsteps) / steps.Value})
	}
	unit := "mm"
	if a.sheet.rotary() {
		unit = "°"
	}
	return &report.Part{ID: "step", Title: stepTitle,
		Needs:  lists.Concat(a.allKeys, []string{"angle" + axis.SuffixKept, "micro" + axis.SuffixKept}, a.sheet.kept.gears.Keys(axis.SuffixKept)),
		Blocks: []report.Block{combs(all, unit)}}
}

func combs(all []combing, unit string) report.Drawing {
	longest := 0.0
	for _, c := range all {
		longest = max(longest, c.step, c.micro)
	}
	s := report.SketchOf("step", stepCaption, 0, longest, 14, 14,
		func(v float64) string { return report.Figure{Value: v, Unit: unit, Digits: 4}.String() })
	y := 0.0
	var alts []string
	for _, c := range all {
		s.Words(s.From+2*s.Per, y+14, report.Start, c.when)
		foot := y + 62
		long := max(c.micro, c.step)
		alt := c.bare.Fill("micro", s.Show(c.micro))
		if c.step > 0 {
			n := int(math.Round(c.step / c.micro))
			s.Dim(report.Measure, 0, c.step, y+34, foot, fullStep)
			alt = c.full.Fill(n, "full", s.Show(c.step), "micro", s.Show(c.micro))
			if c.micro/s.Per >= finest {
				for i := 1; i < n; i++ {
					s.Upright(report.Measure, float64(i)*c.micro, foot-9, foot)
				}
			} else {
				s.Plate(report.Measure, 0, foot-9, c.step, foot)
			}
		}
		alts = append(alts, alt)
		s.Line(report.Body, 0, foot-16, 0, foot, long, foot, long, foot-16)
		s.Dim(report.Motion, 0, c.micro, foot+26, foot, microstep)
		y = foot + 40
	}
	s.Alt = strings.Join(alts, " ")
	return s.Done(y, "")
}
