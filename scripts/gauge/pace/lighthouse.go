package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"striderule/scripts/make/serving"
	"striderule/scripts/prove/browser"
)

// lighthousePackage is pinned, because a newer one counts differently.
const lighthousePackage = "lighthouse@12.2.3"

// scores of one page by one run: in percent, shift by itself, time in ms.
type scores struct{ performance, accessibility, practices, seo, shift, blocked float64 }

// printLighthouse has Lighthouse look at every page some times, as at a phone,
// and returns how many of the medians miss their targets. Its time to interactive
// is not asked for: it leaves the program's download out.
func printLighthouse(root, dist string, runs int) (over int, err error) {
	npm := filepath.Join(root, ".build", "npm")
	install := exec.Command("npm", "install", "--silent", "--no-audit", "--no-fund", "--prefix", npm, lighthousePackage)
	if out, err := install.CombinedOutput(); err != nil {
		return 0, fmt.Errorf("npm install %s: %w: %s", lighthousePackage, err, out)
	}
	chrome, err := browser.Find()
	if err != nil {
		return 0, err
	}
	host := httptest.NewServer(serving.Handler(dist, "br", "gzip"))
	defer host.Close()
	pages, err := pagesOf(dist)
	if err != nil {
		return 0, err
	}
	before := pulses()
	fmt.Printf("%-14s %12s %14s %10s %6s %7s %8s\n", fmt.Sprintf("median of %d", runs), "performance", "accessibility", "practices", "SEO", "CLS", "TBT")
	for _, page := range pages {
		var all []scores
		for range runs {
			s, found, err := lighthouse(npm, chrome, host.URL+page)
			if err != nil {
				return 0, fmt.Errorf("%s: %w", page, err)
			}
			if len(all) == 0 {
				for _, f := range found {
					fmt.Printf("%-14s finds: %s\n", page, f)
				}
			}
			all = append(all, s)
		}
		of := func(get func(scores) float64) float64 {
			var list []float64
			for _, s := range all {
				list = append(list, get(s))
			}
			return median(list)
		}
		m := scores{
			of(func(s scores) float64 { return s.performance }), of(func(s scores) float64 { return s.accessibility }),
			of(func(s scores) float64 { return s.practices }), of(func(s scores) float64 { return s.seo }),
			of(func(s scores) float64 { return s.shift }), of(func(s scores) float64 { return s.blocked }),
		}
		missed := ""
		if m.performance < 95 || m.accessibility < 100 || m.practices < 100 || m.seo < 100 || m.shift > 0.0005 {
			missed = "MISSED"
			over++
		}
		fmt.Printf("%-14s %12.0f %14.0f %10.0f %6.0f %7.3f %5.0f ms %s\n", page, m.performance, m.accessibility, m.practices, m.seo, m.shift, m.blocked, missed)
	}
	fmt.Println("this machine, a fixed loop before and after:", figures(append(before, pulses()...), "ms"), "ms")
	fmt.Println("target: performance at least 95, the others 100, CLS 0")
	return over, nil
}

// lighthouse looks at one page once, and says what keeps scores other than that
// of performance from 100.
func lighthouse(npm, chrome, url string) (scores, []string, error) {
	run := exec.CommandContext(context.Background(), "node", filepath.Join(npm, "node_modules", "lighthouse", "cli", "index.js"), url,
		"--quiet", "--output=json", "--output-path=stdout", "--chrome-flags=--headless=new --no-sandbox --disable-component-update")
	run.Env = append(os.Environ(), "CHROME_PATH="+chrome)
	var out, log bytes.Buffer
	run.Stdout, run.Stderr = &out, &log
	if err := run.Run(); err != nil {
		return scores{}, nil, fmt.Errorf("%w: %s", err, log.String())
	}
	var report struct {
		Categories map[string]struct {
			Score     float64
			AuditRefs []struct {
				ID     string
				Weight float64
			}
		}
		Audits map[string]struct {
			Title        string
			Score        *float64
			NumericValue float64
		}
	}
	if err := json.Unmarshal(out.Bytes(), &report); err != nil {
		return scores{}, nil, err
	}
	score := func(name string) float64 { return 100 * report.Categories[name].Score }
	var found []string
	for _, name := range []string{"accessibility", "best-practices", "seo"} {
		for _, ref := range report.Categories[name].AuditRefs {
			if a := report.Audits[ref.ID]; ref.Weight > 0 && a.Score != nil && *a.Score < 1 {
				found = append(found, name+": "+a.Title)
			}
		}
	}
	slices.Sort(found)
	return scores{
		score("performance"), score("accessibility"), score("best-practices"), score("seo"),
		report.Audits["cumulative-layout-shift"].NumericValue, report.Audits["total-blocking-time"].NumericValue,
	}, found, nil
}

// pagesOf returns the paths of all pages of a built site.
func pagesOf(dist string) ([]string, error) {
	var pages []string
	err := filepath.WalkDir(dist, func(path string, d os.DirEntry, err error) error {
		if err != nil || d.Name() != "index.html" {
			return err
		}
		rel, err := filepath.Rel(dist, filepath.Dir(path))
		page := "/"
		if rel != "." {
			page += strings.Trim(filepath.ToSlash(rel), "/") + "/"
		}
		pages = append(pages, page)
		return err
	})
	return pages, err
}
