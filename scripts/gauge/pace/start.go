package main

import (
	"context"
	"errors"
	"fmt"
	"net/http/httptest"
	"time"

	"striderule/calc"
	"striderule/scripts/make/serving"
)

// hosts are the kinds there are: what they send compressed files by.
var hosts = []struct {
	name string
	send []string
}{
	{"br", []string{"br"}},
	{"gzip", []string{"gzip"}},
	{"plain", nil},
}

// sent is a page with a link's entries, as somebody gets it from a thread.
func sent() string {
	measure, _ := calc.PageOf("measure")
	return "/measure/#" + calc.Load(measure, measure.Example).ShareFragment()
}

// starts measures first visits on each kind of host, and second ones with and
// without a network. Ours and stock take turns, so that they meet the same noise.
func starts(chromium context.Context, t *table, dist, stock string) error {
	var stockGzip []float64
	for _, host := range hosts {
		cold, link, other := row{what: "cold to usable, " + host.name + " host, start page", unit: "ms"}, row{what: "  a link to the measure page", unit: "ms"}, []float64{}
		for range t.runs {
			for _, visit := range []struct {
				dir, page string
				to        *[]float64
			}{{dist, "/", &cold.ours}, {stock, "/", &other}, {dist, sent(), &link.ours}} {
				ms, err := coldStart(chromium, visit.dir, visit.page, host.send)
				if err != nil {
					return fmt.Errorf("cold start, %s host, %s%s: %w", host.name, visit.dir, visit.page, err)
				}
				*visit.to = append(*visit.to, ms)
			}
		}
		cold.stock, link.stock = other, other
		switch host.name {
		case "br":
			cold.part, link.part = 0.65, 0.65
		case "gzip":
			stockGzip = other
		case "plain":
			// That stock's takes for ever is no measure.
			cold.stock, link.stock, cold.part, link.part = stockGzip, stockGzip, 0.75, 0.75
			cold.note, link.note = "(stock's on gzip)", "(stock's on gzip)"
		}
		t.add(cold)
		t.add(link)
		if host.name == "plain" {
			t.add(row{what: "  stock's on the plain host", unit: "ms", ours: cold.ours, stock: other})
		}
	}
	return nil
}

func coldStart(chromium context.Context, dir, page string, send []string) (float64, error) {
	host := httptest.NewServer(serving.Handler(dir, send...))
	defer host.Close()
	v, err := newVisitor(chromium, firstOnly)
	if err != nil {
		return 0, err
	}
	defer v.end()
	if err := v.on(phone); err != nil {
		return 0, err
	}
	return v.open(host.URL + page)
}

// again measures visits after the first.
func again(chromium context.Context, t *table, dist, stock string) error {
	warm := row{what: "warm, with the worker, measure page", unit: "ms", most: 500}
	offline := row{what: "offline, measure page", unit: "ms", most: 500}
	for range t.runs {
		for _, send := range [][]string{nil, {"br"}} { // the worker keeps another form
			w, o, err := comesBack(chromium, dist, "/measure/", send)
			if err != nil {
				return fmt.Errorf("second visit: %w", err)
			}
			warm.ours, offline.ours = append(warm.ours, w), append(offline.ours, o)
		}
		w, o, err := comesBack(chromium, stock, "/", []string{"br"})
		if w > 0 {
			warm.stock = append(warm.stock, w)
		}
		if err != nil {
			offline.note = fmt.Sprintf("(stock: %v)", err)
		} else {
			offline.stock = append(offline.stock, o)
		}
	}
	t.add(warm)
	t.add(offline)
	return nil
}

// comesBack returns how long a second visit takes, and one without the host.
func comesBack(chromium context.Context, dir, page string, send []string) (warm, offline float64, err error) {
	host := httptest.NewServer(serving.Handler(dir, send...))
	stop := func() { host.CloseClientConnections(); host.Close() }
	defer stop()
	v, err := newVisitor(chromium)
	if err != nil {
		return 0, 0, err
	}
	defer v.end()
	if err := v.on(noLimit); err != nil {
		return 0, 0, err
	}
	if _, err := v.open(host.URL + page); err != nil {
		return 0, 0, err
	}
	kept, err := v.keptOffline()
	if err != nil {
		return 0, 0, err
	}
	// Who comes back does so later: the browser still compiles for the first visit.
	time.Sleep(5 * time.Second)
	if err := v.on(phone); err != nil {
		return 0, 0, err
	}
	if warm, err = v.open(host.URL + page); err != nil {
		return 0, 0, err
	}
	if !kept {
		return warm, 0, errors.New("its worker keeps nothing")
	}
	stop()
	if offline, err = v.open(host.URL + page); err != nil {
		return warm, 0, fmt.Errorf("not there offline (%w)", err)
	}
	return warm, offline, nil
}
