package run

import (
	"slices"

	"striderule/calc/report"
)

// A State is what is known after a run.
type State struct {
	Title string
	Says  report.Line
	Hint  report.Line // what would settle it
	Next  Card        // what to do: another run, or what comes when there is an answer
	Other Card        // what else can be done
}

// State is what the report says after the run of a card. Whether that is enough is the verdict's to
// say alone, which allows for being asked after every run.
func (t Test) State(c Card) State {
	r := t.Form.Report()
	s := State{Next: Card{Step: Result}, Other: t.NextRun(c)}
	if c.Check {
		s.Next.Step = Save
	}
	more := false
	if a := r.Answer; a == nil {
		s.Title, s.Says = t.whyNone(&r)
		more = true
	} else {
		s.Title, s.Says = a.Verdict.Title, a.Verdict.Says
		more = a.Verdict.Kind == report.MeasureMore
		if more && c.N > 0 && !c.Check {
			s.Hint = firstStep(&r)
		}
	}
	if t.rowKey() != "" && t.Runs() > c.N+1 { // the test has more runs of its own
		more = true
	}
	if more && s.Other.N > c.N {
		s.Next, s.Other = s.Other, s.Next
	}
	return s
}

// NextRun is the first run behind that of a card which was not read; the last one again where there
// is no room for more.
func (t Test) NextRun(c Card) Card {
	n := c.N + 1
	for n < maxRuns && t.isRead(n, c.Check) {
		n++
	}
	if n == maxRuns {
		n = c.N
	}
	return t.firstOf(n, c.Check)
}

// whyNone says why there is no answer: what is wrong, what does not go together, what is missing.
func (t Test) whyNone(r *report.Report) (title string, says report.Line) {
	if problems := t.Form.Problems(); len(problems) > 0 {
		return wrongTitle, report.Text(problems[0].Says)
	}
	for _, p := range r.Parts {
		if p.Guide {
			continue
		}
		for _, b := range p.Blocks {
			if n, ok := b.(report.Note); ok && n.Kind == report.Doubt {
				return p.Title, n.Line
			}
		}
	}
	return notYetTitle, report.Text(notYetSays)
}

// firstStep is the first that the report has to do next.
func firstStep(r *report.Report) report.Line {
	i := slices.IndexFunc(r.Parts, func(p report.Part) bool { return p.ID == "next" })
	if i < 0 {
		return nil
	}
	for _, b := range r.Parts[i].Blocks {
		if steps, ok := b.(report.Steps); ok && len(steps.Items) > 0 {
			return steps.Items[0]
		}
	}
	return nil
}
