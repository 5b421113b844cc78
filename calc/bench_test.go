package calc_test

import (
	"strings"
	"testing"

	"striderule/calc"
	"striderule/calc/page/calibrate"
)

// A key typed solves the whole sheet anew: these are what a key costs.
//
//	go test -run '^$' -bench . ./calc
//	GOOS=js GOARCH=wasm go test -exec "$(go env GOROOT)/lib/wasm/go_js_wasm_exec" -run '^$' -bench . ./calc
func BenchmarkSolve(b *testing.B) {
	repeat := func(cells ...string) string {
		return strings.TrimSuffix(strings.Repeat(strings.Join(cells, ",")+",", 50/len(cells)), ",")
	}
	sheets := map[string]string{
		"example":        calibrate.Page.Example,
		"50 runs":        "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=" + repeat("28.7", "28.9", "28.6", "28.8", "28.7"),
		"measure more":   "v=1&steps=538&asked=80&mark=105&tool=caliper-0.05&rest=25.2,25.9,25.4",
		"50 at 5 speeds": "v=1&steps=415&trial=speeds&asked=100&read=fed&tool=caliper-0.02&at=" + repeat("60", "120", "180", "240", "300") + "&fed=" + repeat("99.4", "99.2", "99.0", "98.8", "98.6"),
		"50 lengths":     "v=1&axis=travel&steps=80&trip=lengths&tool=caliper-0.02&want=" + repeat("20", "60", "100", "140", "180") + "&moved=" + repeat("20.1", "60", "99.9", "139.7", "179.6"),
	}
	for _, name := range []string{"example", "50 runs", "measure more", "50 at 5 speeds", "50 lengths"} {
		f := calc.Load(calibrate.Page, sheets[name])
		if f.Report().Answer == nil {
			b.Fatal(name + " has no answer")
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				f.Set("asked", 0, f.Text("asked", 0))
			}
		})
	}
}

// What the link of a received and changed sheet costs, beside a solve of it.
func BenchmarkReply(b *testing.B) {
	f := calc.Load(calibrate.Page, calc.Load(calibrate.Page, calibrate.Page.Example).ShareFragment())
	f.Set("rest", 1, "28.4")
	if !strings.Contains(f.ReplyFragment(), "was-rest=") {
		b.Fatal("the reply does not tell what was changed")
	}
	b.Run("solve", func(b *testing.B) {
		for b.Loop() {
			f.Set("asked", 0, f.Text("asked", 0))
		}
	})
	b.Run("reply", func(b *testing.B) {
		for b.Loop() {
			f.ReplyFragment()
		}
	})
}

// The same for a reply to a sheet that has just been changed: the text of the link is worked
// out then, and not again until the next change.
func BenchmarkFirstReply(b *testing.B) {
	f := calc.Load(calibrate.Page, calc.Load(calibrate.Page, calibrate.Page.Example).ShareFragment())
	for _, reply := range []bool{false, true} {
		b.Run(map[bool]string{false: "change", true: "change and reply"}[reply], func(b *testing.B) {
			for i := 0; b.Loop(); i++ {
				f.Set("rest", 1, [...]string{"28.4", "28.3"}[i%2])
				if reply {
					f.ReplyFragment()
				}
			}
		})
	}
}
