package pages

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// On a slow phone a rendering lags behind the keys; it must not take any back.
func TestNoKeyIsLost(t *testing.T) {
	browser.Alongside(t)
	const typed = "1234567890.1234567890123456789012345678901234567890"
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/")
	_, err := chromedp.Call(p.Chromium("a slow processor"), emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 6})
	require.NoError(t, err)
	for _, pause := range []time.Duration{4 * time.Millisecond, 25 * time.Millisecond} {
		for _, name := range []string{"steps", "rest"} {
			p.Fill(name, "")
			p.Focus(name, 0)
			// From within the page: a command for each key would wait until the page is idle.
			browser.Eval[bool](p, fmt.Sprintf(`(async () => {
				for (const key of %q) {
					document.execCommand("insertText", false, key);
					await new Promise((r) => setTimeout(r, %d));
				}
				return true;
			})()`, typed, pause.Milliseconds()))
			p.Settle()
			assert.Equal(t, typed, p.Field(name), "a key every %v", pause)
		}
	}
	p.Wait(`location.hash.includes("` + strings.Split(typed, ".")[0] + `")`)
}
