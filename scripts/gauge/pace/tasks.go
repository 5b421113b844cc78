package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"net/http/httptest"
	"strings"
	"sync"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"

	"striderule/scripts/make/serving"
)

// blocking measures the tasks of a start, in which the browser answers to nobody.
func blocking(chromium context.Context, t *table, dist, stock string) error {
	const runs = 7
	for _, page := range []string{"/", sent()} {
		longest := row{what: "longest task of the start, start page (median of 7)", unit: "ms", part: 1}
		total := row{what: "total blocking time of the start", unit: "ms", part: 1}
		if page != "/" {
			longest.what, total.what = "longest task of the start, a link to measure", "total blocking time of the start"
		}
		for range runs {
			for _, dir := range []string{dist, stock} {
				at := page
				if dir == stock {
					at = "/"
				}
				l, sum, err := tasks(chromium, dir, at)
				if err != nil {
					return fmt.Errorf("tasks of %s: %w", dir, err)
				}
				if dir == dist {
					longest.ours, total.ours = append(longest.ours, l), append(total.ours, sum)
				} else {
					longest.stock, total.stock = append(longest.stock, l), append(total.stock, sum)
				}
			}
		}
		t.add(longest)
		t.add(total)
	}
	return nil
}

// tasks returns how long the browser was kept from answering by the longest task of a
// start, and by all in what they took beyond 50 ms.
func tasks(chromium context.Context, dir, page string) (longest, total float64, err error) {
	host := httptest.NewServer(serving.Handler(dir, "br"))
	defer host.Close()
	v, err := newVisitor(chromium, firstOnly)
	if err != nil {
		return 0, 0, err
	}
	defer v.end()
	if err := v.on(slow); err != nil {
		return 0, 0, err
	}
	all, err := traced(v, func() error {
		_, err := v.open(host.URL + page)
		time.Sleep(time.Second)
		return err
	})
	if err != nil {
		return 0, 0, err
	}
	durations, err := mainTasks(all, host.URL)
	for _, ms := range durations {
		longest = max(longest, ms)
		total += max(0, ms-50)
	}
	return longest, total, err
}

// An event of the browser's trace, times in µs.
type event struct {
	Name, Ph string
	Pid, Tid int
	Ts, Dur  float64
	Args     struct {
		Data struct{ DocumentLoaderURL string }
	}
}

// traced returns what the browser did meanwhile. Its "long tasks" for pages leave out
// what runs between two tasks, in microtasks: all of a stock page's start.
func traced(v *visitor, meanwhile func() error) ([]event, error) {
	var (
		mutex  sync.Mutex
		events []event
		broken error
		whole  = make(chan struct{})
	)
	err := chromedp.Listen(v.ctx, func(ev any) {
		switch ev := ev.(type) {
		case *tracing.EventDataCollected:
			mutex.Lock()
			defer mutex.Unlock()
			for _, raw := range ev.Value {
				var e event
				if err := json.Unmarshal(raw, &e); err != nil {
					broken = err
				}
				events = append(events, e)
			}
		case *tracing.EventTracingComplete:
			close(whole)
		}
	})
	if err != nil {
		return nil, err
	}
	start := tracing.StartParams{
		TransferMode: tracing.StartTransferModeReportEvents,
		TraceConfig: &tracing.TraceConfig{
			IncludedCategories: []string{"disabled-by-default-devtools.timeline", "blink.user_timing"},
			ExcludedCategories: []string{"*"},
		},
	}
	if _, err := chromedp.Call(v.ctx, tracing.Start, start); err != nil {
		return nil, err
	}
	if err := meanwhile(); err != nil {
		return nil, err
	}
	if _, err := chromedp.Call(v.ctx, tracing.End, cdp.Empty{}); err != nil {
		return nil, err
	}
	select {
	case <-whole:
	case <-v.ctx.Done():
		return nil, v.ctx.Err()
	}
	mutex.Lock()
	defer mutex.Unlock()
	return events, broken
}

// mainTasks are the durations, in ms, of the tasks of the thread that shows a site, since
// it went there.
func mainTasks(all []event, site string) ([]float64, error) {
	var began event
	for _, e := range all {
		if e.Name == "navigationStart" && strings.HasPrefix(e.Args.Data.DocumentLoaderURL, site) {
			began = e
		}
	}
	var durations []float64
	for _, e := range all {
		if e.Pid == began.Pid && e.Tid == began.Tid && e.Name == "RunTask" && e.Ph == "X" && e.Ts >= began.Ts {
			durations = append(durations, e.Dur/1000)
		}
	}
	if len(durations) == 0 {
		return nil, errors.New("the trace has no task of the page")
	}
	return durations, nil
}
