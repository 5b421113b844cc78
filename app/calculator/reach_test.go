package calculator

import (
	"html"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/stretchr/testify/assert"

	"striderule/app/log"
	"striderule/calc/logbook"
)

// A page whose process ends in the middle of typing has noted what was typed a second ago.
func TestAddressFollowsWhileKeysComeInARow(t *testing.T) {
	b := newBench(t, "measure", unasked)
	for i := range 9 {
		b.types("asked", 0, "80"[:1+i%2])
		b.waits(reportAfter - 1)
	}
	assert.Contains(t, b.address, "asked=8")
	assert.True(t, b.settling.isBehind(), "typing has not paused")
	b.types("asked", 0, "82")
	b.waits(restAfter)
	assert.Contains(t, b.address, "asked=82")
	assert.Empty(t, b.timers)
}

// A screen reader goes by headings, and is told the unit that others see beside a number.
func TestVerdictAndUnitsAreTold(t *testing.T) {
	b := newBench(t, "measure", unasked+"&asked=80")
	b.shows(`<h2 class="verdict-word">`)
	b.shows(`aria-describedby="f-asked-unit f-asked-hint"`)
	assert.Regexp(t, `<span[^>]* id="f-asked-unit"[^>]*>mm<`, b.page()) // go-app has attributes in any order
	b.types("asked", 0, "80 mm")
	b.waits(reportAfter)
	b.shows(`aria-describedby="f-asked-hint"`)
}

// An entry of a page that there is not leads nowhere.
func TestLogEntryOfAnUnknownPage(t *testing.T) {
	shown := func(page string) string {
		return html.UnescapeString(app.HTMLString(log.ListOf([]logbook.Entry{{ID: "a", Date: "2026-11-25", Page: page, Sheet: "v=1&steps=538"}})))
	}
	assert.Contains(t, shown("measure"), `href="/measure/#v=1&steps=538"`)
	assert.NotContains(t, shown("nosuch"), "href")
	assert.Contains(t, shown("nosuch"), "This version has no such page")
}
