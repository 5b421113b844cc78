package report

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A report as text has each of its blocks.
func TestReportAsText(t *testing.T) {
	figure := Figure{ID: "a", Label: "A", Value: -1.25, Unit: "mm", Digits: 3}
	table := Table{Head: []string{"X", "Y"}}
	table.Row("x", &figure)
	r := Report{
		Answer: &Answer{Figure: figure, Says: Say("Says {n}.", "n", &figure), Notes: []Note{{Tip, Say("tip")}}, Verdict: &Verdict{Title: "Leave it", Says: Say("why")}},
		Parts: []Part{{Title: "Part", Blocks: []Block{
			ParaOf("words"), Figures{[]Figure{figure}}, table, StepsOf("one", "two"), PointsOf("point"), Code{Label: "Line", Text: "a\nb"},
			Note{Doubt, Say("doubt")}, Note{Caution, Say("caution")}, Ask{[]string{"k", "l"}, "it"}, Chart{Title: "Chart", Says: "What."},
			Drawing{Title: "Drawing", Alt: "What is there"}, Lots{}, Bars{All: []Bar{{"Bar", figure}}}, Links{[]Link{{"On", "plan", "v=1"}}},
		}}},
	}
	assert.Equal(t, `Leave it: why
A: −1.25 mm
Says −1.25 mm.
  Tip: tip

Part
words
  A: −1.25 mm
  X | Y
  x | −1.25 mm
  1. one
  2. two
  - point
  Line: a
    b
  Check: doubt
  Caution: caution
  Needed for it: k, l
  Chart: What.
  Drawing: What is there
  Cross-check by simulation: on request
  Bar: −1.25 mm
  On: plan/#v=1
`, r.String())
	assert.Empty(t, Report{}.String())
}
