package calibrate

import (
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// picture draws the test as it was read, or as far as it is set.
func (a *solution) picture() *report.Part {
	s := a.sheet
	t := trial.FeedTest{ID: "test", Words: &trial.TestDone, Asked: a.asked,
		Show: func(v float64) string { return a.length("", "", v).String() }}
	runs := trial.Counted(a.runs)
	n := float64(len(runs))
	for _, r := range runs {
		t.Mark, t.Rest, t.Fed = t.Mark+r.Mark/n, t.Rest+r.Rest/n, t.Fed+r.Moved/n
	}
	t.Title = testDrawn.Fill(max(1, len(runs)))
	if mark := s.Mark.Number; n == 0 && s.Read.Word != "fed" && s.Marks.Word != "each" && mark > a.asked {
		t.Mark, t.Rest, t.Fed, t.Asked = mark, mark-a.asked, a.asked, 0
		t.Title, t.Words = testComing, &trial.TestToCome
	}
	if !s.isFeed() || t.Fed <= 0 {
		return nil
	}
	return &report.Part{ID: "picture", Title: pictureTitle, Needs: a.readKeys, Blocks: []report.Block{t.Draw()}}
}
