package main

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"

	"striderule/calc"
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
	measure, _ := calc.PageOf("measure")
	sent := "/measure/#" + calc.Load(measure, measure.Example).ShareFragment()
	fmt.Printf("\n%-42s %-12s %s\n", "cold start, navigation to first render", "page", "median of "+fmt.Sprint(runs))
	for _, d := range devices {
		var painted, readable []float64
		for _, page := range []string{"/", sent} {
			var times []float64
			for range runs {
				s, err := coldStart(chromium, d, host.URL+page)
				if err != nil {
					return fmt.Errorf("%s, %s: %w", d.name, page, err)
				}
				times = append(times, s.Mounted)
				if page == sent {
					painted, readable = append(painted, s.Painted), append(readable, s.Readable)
				}
			}
			name, _, _ := strings.Cut(page, "#")
			slices.Sort(times)
			fmt.Printf("%-42s %-12s %5.0f ms (%.0f to %.0f)\n", d.name, name, median(times), times[0], times[len(times)-1])
		}
		fmt.Printf("%-42s %-12s %5.0f ms; what its sender saw can be read after %.0f ms\n", "", "first paint", median(painted), median(readable))
	}
	return nil
}

func median(times []float64) float64 {
	slices.Sort(times)
	return times[len(times)/2]
}

// A started page tells when, in ms after the navigation began.
type started struct {
	Mounted  float64 // the calculator was there
	Painted  float64 // there was something to read
	Readable float64 // what a link's sender saw could be read
}

// coldStart opens the page in a browser context that has nothing cached.
func coldStart(chromium context.Context, d device, url string) (started, error) {
	ctx, end := chromedp.NewContext(chromium, chromedp.WithNewBrowserContext())
	defer end()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(browser.Width, browser.Height, chromedp.EmulateMobile)); err != nil {
		return started{}, err
	}
	ctx, cancel := context.WithTimeout(ctx, time.Minute)
	defer cancel()
	if _, err := chromedp.Call(ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: d.slowCPU}); err != nil {
		return started{}, err
	}
	if d.rate > 0 {
		limits := network.EmulateNetworkConditionsByRuleParams{MatchedNetworkConditions: []*network.Conditions{
			{Latency: d.latency, DownloadThroughput: d.rate, UploadThroughput: d.rate},
		}}
		if _, err := chromedp.Call(ctx, network.EmulateNetworkConditionsByRule, limits); err != nil {
			return started{}, err
		}
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(url)); err != nil {
		return started{}, err
	}
	const mounted = `new Promise((r) => {
		const look = () => {
			const at = (name) => (performance.getEntriesByName(name)[0] || {startTime: 0}).startTime;
			if (at("app-mounted")) r({Mounted: at("app-mounted"), Painted: at("first-contentful-paint"), Readable: at("link-readable")});
			else document.documentElement.dataset.app === "failed" ? r({Mounted: -1}) : setTimeout(look, 20);
		};
		look();
	})`
	s, err := chromedp.Run(ctx, chromedp.Evaluate[started](mounted, chromedp.EvalAwaitPromise))
	if err == nil && s.Mounted < 0 {
		err = fmt.Errorf("the calculator did not start")
	}
	return s, err
}
