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
	"github.com/chromedp/chromedp"

	"striderule/calc"
	"striderule/scripts/browser"
)

// typing is a page with the entries and the field that is typed into.
type typing struct{ name, path, field string }

// typings are every page's example, and what works hardest: as many runs as
// there is room for.
func typings() []typing {
	var all []typing
	for _, p := range calc.Pages {
		all = append(all, typing{p.Slug, "/" + p.Slug + "/#" + p.Example, ""})
	}
	fifty := strings.Repeat("28.7,28.9,28.6,28.8,28.5,", 10)
	return append(all,
		typing{"measure, 50 runs", "/measure/#v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=" + strings.TrimSuffix(fifty, ","), "f-mark"},
		typing{"measure, 5 speeds", "/measure/#v=1&steps=415&trial=speeds&asked=100&read=fed&tool=caliper-0.02&at=" +
			strings.TrimSuffix(strings.Repeat("60,90,120,180,240,", 10), ",") + "&fed=" + strings.TrimSuffix(strings.Repeat("99.4,99.3,99.2,99.0,98.8,", 10), ","), "f-steps"})
}

// printKeys measures from a key to the painted answer, the CPU four times slower.
func printKeys(dist string, keys int) error {
	host := httptest.NewServer(http.FileServer(http.Dir(dist)))
	defer host.Close()
	chromium, end, err := browser.Launch(context.Background())
	if err != nil {
		return err
	}
	defer end()
	fmt.Printf("\n%-42s %8s %8s\n", "key to painted answer, CPU 4x slower", "median", "95 %")
	for _, t := range typings() {
		times, err := keysOn(chromium, host.URL, t, keys)
		if err != nil {
			return fmt.Errorf("%s: %w", t.name, err)
		}
		slices.Sort(times)
		fmt.Printf("%-42s %5.0f ms %5.0f ms\n", t.name, times[len(times)/2], times[len(times)*95/100])
	}
	return nil
}

// keysOn types into a field of a page and takes them away again, and returns
// for each key the ms until the result had changed and was painted.
func keysOn(chromium context.Context, root string, t typing, keys int) ([]float64, error) {
	ctx, end := chromedp.NewContext(chromium, chromedp.WithNewBrowserContext())
	defer end()
	ctx, cancel := context.WithTimeout(ctx, 2*time.Minute)
	defer cancel()
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(browser.Width, browser.Height, chromedp.EmulateMobile)); err != nil {
		return nil, err
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(root+t.path)); err != nil {
		return nil, err
	}
	script := fmt.Sprintf(`(async () => {
		while (!performance.getEntriesByName("app-mounted").length) await new Promise((r) => setTimeout(r, 50));
		await new Promise((r) => setTimeout(r, 500));
		const field = document.getElementById(%q) || [...document.querySelectorAll("main input[inputmode=decimal]")].find((e) => e.value && e.checkVisibility());
		field.focus();
		field.setSelectionRange(field.value.length, field.value.length);
		const times = [];
		for (let i = 0; i < %d; i++) {
			const start = performance.now();
			const changed = new Promise((r) => {
				const watch = new MutationObserver(() => { watch.disconnect(); r(); });
				watch.observe(document.getElementById("result"), {subtree: true, childList: true, characterData: true, attributes: true});
				setTimeout(r, 2000);
			});
			if (i %% 2) document.execCommand("delete");
			else document.execCommand("insertText", false, "1");
			await changed;
			await new Promise((r) => requestAnimationFrame(() => setTimeout(r)));
			times.push(performance.now() - start);
			await new Promise((r) => setTimeout(r, 60));
		}
		return times;
	})()`, t.field, keys)
	if _, err := chromedp.Call(ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 4}); err != nil {
		return nil, err
	}
	return chromedp.Run(ctx, chromedp.Evaluate[[]float64](script, chromedp.EvalAwaitPromise))
}
