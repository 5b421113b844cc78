package calibrate

import (
	"strconv"

	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// picture draws the test as it was read, or as far as it is set.
func (a *solution) picture() *report.Part {
	s := a.sheet
	t := trial.FeedTest{ID: "test", Title: "The test, to scale", Left: "left", Way: "fed", Asked: a.asked,
		Show: func(v float64) string { return a.length("", "", v).String() }}
	runs := trial.Counted(a.runs)
	n := float64(len(runs))
	for _, r := range runs {
		t.Mark, t.Rest, t.Fed = t.Mark+r.Mark/n, t.Rest+r.Rest/n, t.Fed+r.Moved/n
	}
	if n > 1 {
		t.Title += ", mean of " + strconv.Itoa(len(runs)) + " runs"
	}
	if mark := s.Mark.Number; n == 0 && s.Read.Word != "fed" && s.Marks.Word != "each" && mark > a.asked {
		t.Mark, t.Rest, t.Fed, t.Asked = mark, mark-a.asked, a.asked, 0
		t.Title, t.Left, t.Way = "The test to come, to scale", "to be left", "to feed"
	}
	if !s.isFeed() || t.Fed <= 0 {
		return nil
	}
	return &report.Part{ID: "picture", Title: "The test as a drawing", Needs: a.readKeys, Blocks: []report.Block{t.Draw()}}
}
