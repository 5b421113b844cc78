package pages

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"striderule/scripts/prove/browser"
)

// An axis that turns, on a phone, from an empty page: three full turns, then the tool that
// settles it, then the backlash test.
func TestRotaryAxisFromAnEmptyPage(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/")
	p.Choose("axis", "rotary")
	p.Fill("stepsdeg", "80")
	p.Fill("askeddeg", "360")
	for run := range 3 {
		p.FillNth("turned", run, "360")
	}
	assert.Contains(t, p.Text(".answer"), "Measure more")
	assert.Contains(t, p.Text("#part-next"), "Choose your measuring tool")
	p.Choose("tooldeg", "gauge-0.1")
	assert.Contains(t, p.Text(".answer"), "Leave it")
	assert.Contains(t, p.Text(".answer"), "It turned between")
	p.Wait(`location.hash === "#v=1&axis=rotary&stepsdeg=80&askeddeg=360&turned=360,360,360&tooldeg=gauge-0.1"`)
	p.NoSidewaysScrolling()

	p.Choose("trip", "sides")
	for row, angles := range [][3]string{{"-90", "-89,95", "-90,05"}, {"0", "0,05", "-0,05"}, {"90", "90,06", "89,96"}, {"-90", "-89,93", "-90,03"}, {"0", "0,05", "-0,05"}, {"90", "90,06", "89,96"}} {
		if row >= 3 {
			p.Click("#add-target")
		}
		for column, name := range []string{"targetdeg", "updeg", "downdeg"} {
			p.FillNth(name, row, angles[column])
		}
	}
	p.Choose("tooldeg", "own")
	p.Fill("stepdeg", "0,006")
	assert.False(t, browser.Eval[bool](p, `document.querySelector("details#part-accuracy").open`), "folded")
	p.Click("#part-accuracy > summary")
	assert.InDelta(t, 0.10, p.Value("out-reversal"), 1e-9)
	assert.Contains(t, p.Text("#part-sides"), "0.1°")
	// Means are 0.06, 0.05, 0.06 and −0.04, −0.05, −0.04.
	assert.InDelta(t, 0.11, p.Value("out-systematic"), 1e-9)
	p.NoSidewaysScrolling()
	assert.Contains(t, p.Text("#part-accuracy"), "Bidirectional accuracy A")
	p.Wait(`location.hash === "#v=1&axis=rotary&stepsdeg=80&trip=sides&targetdeg=-90,0,90,-90,0,90&updeg=-89.95,0.05,90.06,-89.93,0.05,90.06&downdeg=-90.05,-0.05,89.96,-90.03,-0.05,89.96&tooldeg=own&stepdeg=0.006"`)
}
