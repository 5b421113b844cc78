package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// A feed test, planned on a phone from an empty page, its moves saved, and
// handed over to the page for its readings.
func TestPlanATest(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	dir := p.SaveTo()
	p.Open("/plan/")
	assert.Empty(t, answerOf(p))
	assert.Contains(t, p.Text("#part-missing"), "Measuring tool")
	p.Choose("tool", "caliper-0.05")
	assert.Equal(t, "100", answerOf(p))
	p.Fill("wanted", "0,5")
	p.Fill("scatter", "0,15 mm")
	assert.Equal(t, "50", answerOf(p))
	assert.Contains(t, p.Text(".answer"), "5 runs, each")
	p.NoSidewaysScrolling()

	p.Unfold()
	p.Fill("asked", "80")
	p.Fill("runs", "3")
	p.Fill("speed", "1,5 mm/s")
	p.Fill("filament", "1,75")
	p.Fill("melt", "3")
	assert.InDelta(t, 3.608, p.Value("out-melt"), 1e-3)
	assert.InDelta(t, 90, p.Value("out-word"), 1e-9)
	assert.Contains(t, p.Text("#part-plan"), "the extruder would slip")
	assert.Contains(t, p.Text("#part-moves code"), "G1 E80 F90 ; run 3 of 3")
	p.Fill("move", "G1 E{length} F{speed} P1")
	browser.Eval[bool](p, `(document.querySelector("button[data-save]").click(), true)`)
	saved := p.Saved(dir, "extruder-test.gcode")
	assert.Equal(t, p.Text("#part-moves code")+"\n", saved)
	assert.Contains(t, saved, "\nG1 E80 F90 P1 ; custom line: run 1 of 3\n")

	p.Choose("as", "turn")
	p.Fill("turn", "5,95")
	browser.Eval[bool](p, `(document.querySelector("#part-after .links a[href*=measure]").click(), true)`)
	p.Wait(`location.hash === "#v=1&as=turn&turn=5.95&asked=80&speed=90&mark=105&tool=caliper-0.05&planned=3"`)
	p.Settle()
	assert.Equal(t, "105", p.Field("mark"))
	p.FillNth("rest", 0, "28.7")
	p.FillNth("rest", 1, "28.9")
	p.FillNth("rest", 2, "28.6")
	assert.InEpsilon(t, 5.95*76.26666666666667/80, p.Value("out-turn"), 1e-9)
}

func TestPlanStaysInsideTheMachine(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/plan/#v=1&axis=travel&tool=caliper-0.02")
	p.Fill("from", "10")
	p.Fill("to", "20")
	assert.Contains(t, p.Text("#problems"), "Only 10 mm is free")
	p.Fill("to", "180")
	assert.Equal(t, "150", answerOf(p))
	p.Choose("trip", "sides")
	assert.Equal(t, "150", answerOf(p), "as far as the caliper reaches")
	assert.InDelta(t, 165, p.Value("out-target-5"), 1e-9)
	assert.Contains(t, p.Text("#part-before"), "Keep every move inside the machine's range")
	p.NoSidewaysScrolling()
}
