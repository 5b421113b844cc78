package main

import (
	"context"
	"errors"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"

	"striderule/scripts/prove/browser"
)

// device is what a visit is measured on.
type device struct {
	slowCPU float64 // times slower
	latency float64 // ms
	rate    float64 // bytes per second, 0 without limit
}

var (
	phone   = device{4, 150, 1.6e6 / 8}
	slow    = device{4, 0, 0}
	noLimit = device{1, 0, 0}
)

// probe runs before a page's own scripts. A page is usable when ours has set its
// mark; a stock one when its loader, which covers it, is gone.
const probe = `(() => {
	window.probe = {usable: 0, memory: null};
	let covered = false;
	const look = () => {
		if (probe.usable) return;
		const mark = performance.getEntriesByName("app-mounted")[0];
		const cover = document.getElementById("app-wasm-loader");
		covered = covered || !!cover;
		if (mark) probe.usable = mark.startTime;
		else if (covered && !cover) probe.usable = performance.now();
		else setTimeout(look, 5);
	};
	document.addEventListener("DOMContentLoaded", look);
	for (const name of ["instantiate", "instantiateStreaming"]) {
		const its = WebAssembly[name];
		WebAssembly[name] = async (...args) => {
			const result = await its.apply(WebAssembly, args);
			probe.memory = (result.instance || result).exports.mem;
			return result;
		};
	}
})()`

// firstOnly keeps workers out of a first visit. Chromium does not slow their
// network down: the stock page's, which fetches all anew at once, would bring the
// program at full speed; on a real one it takes half of what there is.
const firstOnly = `navigator.serviceWorker.register = () => new Promise(() => {})`

// visitor is a browser that has seen nothing yet.
type visitor struct {
	ctx context.Context
	end func()
}

func newVisitor(chromium context.Context, scripts ...string) (*visitor, error) {
	ctx, end := chromedp.NewContext(chromium, chromedp.WithNewBrowserContext())
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(browser.Width, browser.Height, chromedp.EmulateMobile)); err != nil {
		end()
		return nil, err
	}
	ctx, cancel := context.WithTimeout(ctx, 5*time.Minute)
	v := &visitor{ctx, func() { cancel(); end() }}
	for _, script := range append(scripts, probe) {
		if _, err := chromedp.Call(ctx, cdppage.AddScriptToEvaluateOnNewDocument, cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: script}); err != nil {
			v.end()
			return nil, err
		}
	}
	return v, nil
}

func (v *visitor) on(d device) error {
	if _, err := chromedp.Call(v.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: d.slowCPU}); err != nil {
		return err
	}
	rate := d.rate
	if rate == 0 {
		rate = -1
	}
	_, err := chromedp.Call(v.ctx, slowNetwork, networkRules{
		MatchedNetworkConditions: []*network.Conditions{{Latency: d.latency, DownloadThroughput: rate, UploadThroughput: rate}},
	})
	return err
}

// slowNetwork is network.EmulateNetworkConditionsByRule, with a word that Chromium
// wants up to version 148 at least.
var slowNetwork = cdp.Command[networkRules, network.EmulateNetworkConditionsByRuleResult]{Method: network.CommandEmulateNetworkConditionsByRule}

type networkRules struct {
	Offline                  bool                  `json:"offline"`
	MatchedNetworkConditions []*network.Conditions `json:"matchedNetworkConditions"`
}

var errNotUsable = errors.New("the page did not become usable")

// open returns how many ms after the navigation began the page was usable.
func (v *visitor) open(url string) (float64, error) {
	for _, u := range []string{"about:blank", url} {
		if err := chromedp.Do(v.ctx, chromedp.Navigate(u)); err != nil {
			return 0, err
		}
	}
	const usable = `new Promise((r) => {
		const end = performance.now() + 90000;
		const look = () => {
			if (window.probe && probe.usable || performance.now() > end || document.documentElement.dataset.app === "failed") r(window.probe ? probe.usable : 0);
			else setTimeout(look, 50);
		};
		look();
	})`
	ms, err := eval[float64](v, usable)
	if err == nil && ms == 0 {
		err = errNotUsable
	}
	return ms, err
}

// keptOffline waits until a worker keeps the site.
func (v *visitor) keptOffline() (bool, error) {
	return eval[bool](v, `new Promise((r) => {
		setTimeout(() => r(false), 20000);
		navigator.serviceWorker.ready.then(function look() { navigator.serviceWorker.controller ? r(true) : setTimeout(look, 50); });
	})`)
}

// memory returns the bytes of the JavaScript heap and of the program's memory.
func (v *visitor) memory() (float64, error) {
	if _, err := chromedp.Call(v.ctx, performance.Enable, performance.EnableParams{}); err != nil {
		return 0, err
	}
	program, err := eval[float64](v, `probe.memory.buffer.byteLength`)
	if err != nil {
		return 0, err
	}
	got, err := chromedp.Call(v.ctx, performance.GetMetrics, struct{}{})
	if err != nil {
		return 0, err
	}
	for _, m := range got.Metrics {
		if m.Name == "JSHeapUsedSize" {
			return program + m.Value, nil
		}
	}
	return 0, errors.New("the browser does not say how much memory it uses")
}

func eval[T any](v *visitor, expression string) (T, error) {
	return chromedp.Run(v.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
}
