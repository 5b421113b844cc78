package main

import (
	"fmt"
	"slices"
	"strings"
)

// row is a figure of ours, beside that of the stock page if that has one.
type row struct {
	what, unit  string
	ours, stock []float64
	most        float64 // ours must be at most this
	part        float64 // ours must be at most this part of stock's
	note        string
}

// table prints its rows as they come: a run takes minutes, and may be broken off.
type table struct {
	runs, rows, over int
}

// add prints a row and counts it if it misses its target.
func (t *table) add(r row) {
	if t.rows++; t.rows == 1 {
		fmt.Printf("%-52s %20s %20s %7s   %s\n", fmt.Sprintf("median of %d (range)", t.runs), "ours", "stock hello", "ratio", "target")
	}
	ours := median(r.ours)
	ratio, target, missed := "", "", false
	if len(r.stock) > 0 && median(r.stock) > 0 {
		ratio = fmt.Sprintf("%.2f", ours/median(r.stock))
	}
	if r.part > 0 {
		target = fmt.Sprintf("at most %.2f of stock", r.part)
		missed = len(r.stock) > 0 && ours > r.part*median(r.stock)
	}
	if r.most > 0 {
		target = fmt.Sprintf("at most %.0f %s", r.most, r.unit)
		missed = ours > r.most
	}
	if target != "" {
		target += map[bool]string{true: ": MISSED", false: ": met"}[missed]
	}
	if missed {
		t.over++
	}
	fmt.Printf("%-52s %20s %20s %7s   %s\n", r.what, figures(r.ours, r.unit), figures(r.stock, r.unit), ratio, strings.TrimSpace(target+" "+r.note))
}

func figures(all []float64, unit string) string {
	if len(all) == 0 {
		return "-"
	}
	places := 0
	if unit == "MB" {
		places = 1
	}
	text := fmt.Sprintf("%.*f %s", places, median(all), unit)
	if len(all) > 1 {
		text = fmt.Sprintf("%.*f (%.*f-%.*f)", places, median(all), places, slices.Min(all), places, slices.Max(all))
	}
	return text
}

func median(all []float64) float64 {
	sorted := slices.Sorted(slices.Values(all))
	return sorted[len(sorted)/2]
}
