package main

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"slices"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"striderule/scripts/browser"
)

// device is what a start is measured on.
type device struct {
	name    string
	slowCPU float64 // times slower
	latency float64 // ms
	rate    float64 // bytes per second, 0 without limit
}

var devices = []device{
	{"this machine, no limits", 1, 0, 0},
	{"CPU 4x slower, 1.6 Mbit/s, 150 ms", 4, 150, 1.6e6 / 8},
}

// printStarts measures from a host that compresses nothing.
func printStarts(dist string, runs int) error {
	host := httptest.NewServer(http.FileServer(http.Dir(dist)))
	defer host.Close()
	chromium, end, err := browser.Launch(context.Background())
	if err != nil {
		return err
	}
	defer end()
	fmt.Printf("\n%-42s %-12s %s\n", "cold start, navigation to first render", "page", "median of "+fmt.Sprint(runs))
	for _, d := range devices {
		for _, page := range []string{"/", "/measure/"} {
			var times []float64
			for range runs {
				ms, err := coldStart(chromium, d, host.URL+page)
				if err != nil {
					return fmt.Errorf("%s, %s: %w", d.name, page, err)
				}
				times = append(times, ms)
			}
			slices.Sort(times)
			fmt.Printf("%-42s %-12s %5.0f ms (%.0f to %.0f)\n", d.name, page, times[len(times)/2], times[0], times[len(times)-1])
		}
	}
	return nil
}

// coldStart opens the page in a browser context that has nothing cached, and
// returns when the calculator was there, in ms after the navigation began.
func coldStart(chromium context.Context, d device, url string) (float64, error) {
	ctx, end := chromedp.NewContext(chromium, chromedp.WithNewBrowserContext())
	defer end()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(browser.Width, browser.Height, chromedp.EmulateMobile)); err != nil {
		return 0, err
	}
	ctx, cancel := context.WithTimeout(ctx, time.Minute)
	defer cancel()
	if _, err := chromedp.Call(ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: d.slowCPU}); err != nil {
		return 0, err
	}
	if d.rate > 0 {
		limits := network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{
			{Latency: d.latency, DownloadThroughput: d.rate, UploadThroughput: d.rate},
		}}
		if _, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule, limits); err != nil {
			return 0, err
		}
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(url)); err != nil {
		return 0, err
	}
	const mounted = `new Promise((r) => {
		const look = () => {
			const m = performance.getEntriesByName("app-mounted")[0];
			m ? r(m.startTime) : document.documentElement.dataset.app === "failed" ? r(-1) : setTimeout(look, 20);
		};
		look();
	})`
	ms, err := chromedp.Run(ctx, chromedp.Evaluate[float64](mounted, chromedp.EvalAwaitPromise))
	if err == nil && ms < 0 {
		err = fmt.Errorf("the calculator did not start")
	}
	return ms, err
}
