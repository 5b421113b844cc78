package calc

import "strconv"

// picture draws the test as it was read, or as far as it is set.
func (a *measured) picture() *Part {
	s := a.sheet
	t := feedTest{id: "test", title: "The test, to scale", left: "left", way: "fed", asked: a.asked,
		show: func(v float64) string { return a.length("", "", v).String() }}
	runs := counted(a.runs)
	n := float64(len(runs))
	for _, r := range runs {
		t.mark, t.rest, t.fed = t.mark+r.mark/n, t.rest+r.rest/n, t.fed+r.moved/n
	}
	if n > 1 {
		t.title += ", mean of " + strconv.Itoa(len(runs)) + " runs"
	}
	if mark := s.Mark.Number; n == 0 && s.Read.Word != "fed" && s.Marks.Word != "each" && mark > a.asked {
		t.mark, t.rest, t.fed, t.asked = mark, mark-a.asked, a.asked, 0
		t.title, t.left, t.way = "The test to come, to scale", "to be left", "to feed"
	}
	if !s.isFeed() || t.fed <= 0 {
		return nil
	}
	return &Part{ID: "picture", Title: "The test as a drawing", Needs: a.readKeys, Blocks: []Block{t.draw()}}
}
