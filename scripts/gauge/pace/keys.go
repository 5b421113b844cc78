package main

import (
	"context"
	"fmt"
	"net/http/httptest"
	"slices"
	"strings"

	"striderule/calc"
	"striderule/scripts/make/serving"
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

// typed measures from a key to the painted answer on every page, and the memory
// before and after keys on the page that works hardest.
func typed(chromium context.Context, t *table, dist, stock string) error {
	host := httptest.NewServer(serving.Handler(dist))
	defer host.Close()
	hello := httptest.NewServer(serving.Handler(stock))
	defer hello.Close()
	first := row{what: "memory after the start, measure page", unit: "MB"}
	keys := 40 * t.runs
	after := row{what: fmt.Sprintf("memory after %d keys, measure, 5 speeds", 2*keys), unit: "MB"}
	half := row{what: fmt.Sprintf("memory after %d keys, measure, 5 speeds", keys), unit: "MB"}
	heavy := row{what: "key to painted answer, 95 % of keys, heaviest page", unit: "ms", most: 50}
	all := typings()
	for i, page := range all {
		last := i == len(all)-1
		v, err := newVisitor(chromium)
		if err != nil {
			return err
		}
		err = func() error {
			defer v.end()
			if _, err := v.open(host.URL + page.path); err != nil {
				return err
			}
			if err := v.on(slow); err != nil {
				return err
			}
			if page.name == "measure" || last {
				m, err := v.memory()
				if err != nil {
					return err
				}
				if !last {
					first.ours = []float64{m / 1e6}
				}
			}
			for _, pace := range []struct{ name, pause string }{{"", quickly}, {", with pauses", unevenly}} {
				times, err := keysOn(v, page, keys/2, pace.pause)
				if err != nil {
					return err
				}
				slices.Sort(times)
				slowest := times[len(times)*95/100]
				t.add(row{what: "key to painted answer, 95 %, " + page.name + pace.name, unit: "ms", ours: []float64{slowest}, note: fmt.Sprintf("(median %.0f)", median(times))})
				if len(heavy.ours) == 0 || slowest > heavy.ours[0] {
					heavy.ours, heavy.note = []float64{slowest}, "("+page.name+pace.name+")"
				}
			}
			if !last {
				return nil
			}
			m, err := v.memory()
			if err != nil {
				return err
			}
			half.ours = []float64{m / 1e6}
			if _, err := keysOn(v, page, keys, quickly); err != nil {
				return err
			}
			if m, err = v.memory(); err != nil {
				return err
			}
			after.ours = []float64{m / 1e6}
			return nil
		}()
		if err != nil {
			return fmt.Errorf("%s: %w", page.name, err)
		}
	}
	v, err := newVisitor(chromium)
	if err != nil {
		return err
	}
	defer v.end()
	if _, err := v.open(hello.URL); err != nil {
		return err
	}
	m, err := v.memory()
	if err != nil {
		return err
	}
	first.stock = []float64{m / 1e6}
	for _, r := range []row{heavy, first, half, after} {
		t.add(r)
	}
	return nil
}

// The ms from a painted answer to the next key. What follows a key when typing pauses
// is in the way of the next one if that comes just then.
const (
	quickly  = "60"
	unevenly = "60 + i * 97 % 300"
)

// keysOn types into a field of a page and takes them away again, and returns
// for each key the ms until the result had changed and was painted.
func keysOn(v *visitor, t typing, keys int, pause string) ([]float64, error) {
	script := fmt.Sprintf(`(async () => {
		for (const row of document.querySelectorAll("#row-axis-1")) row.open = true; // what a link brings is folded
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
			await new Promise((r) => setTimeout(r, %s));
		}
		return times;
	})()`, t.field, keys, pause)
	return eval[[]float64](v, script)
}
