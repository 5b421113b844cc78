package pages

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// clockAt has the page's clock stand at a time when it is loaded, and go on from there;
// a script may set window.ahead (ms) to let it jump.
func clockAt(time string) string {
	return `(() => {
		const Real = Date;
		window.ahead = new Real("` + time + `").getTime() - Real.now();
		window.Date = class extends Real {
			constructor(...parts) { if (parts.length) super(...parts); else super(Real.now() + ahead); }
			static now() { return Real.now() + ahead; }
		};
	})();`
}

// keepWith keeps the sheet with another reading, and returns the date that was offered.
func keepWith(p *browser.Page, rest string) string {
	p.T().Helper()
	p.FillNth("rest", 0, rest)
	press(p, "#keep")
	date := p.Field("keep-date")
	p.Fill("keep-machine", "Heron")
	p.Fill("keep-axis", "Extruder")
	press(p, "#keep-do")
	p.Wait(`document.querySelector("#kept a")`)
	assert.Equal(p.T(), "Saved. Open the log.", p.Text("#kept"))
	return date
}

var wrongClocks = []string{"1970-01-01T00:00", "2099-12-31T23:58"}

func TestLogWithAWrongClock(t *testing.T) {
	browser.Alongside(t)
	for _, wrong := range wrongClocks {
		t.Run(wrong, func(t *testing.T) {
			s := browser.NewSite(t)
			p := s.NewPage(t)
			p.Before(clockAt(wrong))
			p.Open("/measure/#" + heron)
			assert.Equal(t, wrong, keepWith(p, "28.5"))
			browser.Eval[bool](p, `(window.ahead = 0, true)`) // somebody sets it right
			right := keepWith(p, "28.6")
			assert.NotEqual(t, wrong[:4], right[:4])
			browser.Eval[bool](p, `(window.ahead = -3600e3, true)`) // and it falls back
			back := keepWith(p, "28.7")
			assert.Less(t, back, right)
			require.Len(t, inStorage(p), 3)

			press(p, "#kept a")
			waitListed(p, 3)
			dates := []string{right, back}
			if wrong < right {
				dates = append(dates, wrong)
			} else {
				dates = append([]string{wrong}, dates...)
			}
			for i := range dates {
				dates[i] = strings.Replace(dates[i], "T", " ", 1)
			}
			assert.Equal(t, dates, browser.Eval[[]string](p, `[...document.querySelectorAll("#log-list time")].map((e) => e.textContent)`), "newest first")
			// All are of one axis: their trend shows.
			assert.Equal(t, 3, browser.Eval[int](p, `document.querySelectorAll("#chart-trend-1 .mark").length`))
			oldest := dates[2][:len("2026-11-25")]
			assert.Contains(t, p.Text("#log-trends"), "Days since "+oldest)
			assert.NotRegexp(t, `NaN|Inf|undefined`, p.Text("#log-trends")+browser.Eval[string](p, `document.querySelector("#chart-trend-1").outerHTML`))
			p.NoSidewaysScrolling()

			// What is kept once more is there already, whatever the clock has said since.
			p.Reload()
			waitListed(p, 3)
			press(p, ".log-delete")
			press(p, "#undo")
			waitListed(p, 3)
			assert.Len(t, inStorage(p), 3)
		})
	}
}

// At one and the same minute, of a clock that stands still or jumps, no two entries
// have one ID.
func TestEntriesOfOneMinute(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Before(`const Real = Date; window.Date = class extends Real { constructor(...parts) { super(...parts.length ? parts : ["2026-03-04T05:06"]); } };`)
	p.Open("/measure/#" + heron)
	for i := range 4 {
		keepWith(p, strconv.Itoa(25+i))
	}
	assert.Len(t, inStorage(p), 4)
	press(p, "#kept a")
	waitListed(p, 4)
	assert.Contains(t, p.Text("#log-trends"), "All of these are from the same time")
}

func TestUpdateWithAWrongClock(t *testing.T) {
	browser.Alongside(t)
	for _, wrong := range wrongClocks {
		t.Run(wrong, func(t *testing.T) {
			s := browser.NewSite(t)
			p := s.NewPage(t)
			p.Before(clockAt(wrong))
			offerNewer(p, s)
			s.Stop()
			p.Reload()
			assert.Equal(t, "aaaaaaaaaaaa", versionOf(p))
		})
	}
}
