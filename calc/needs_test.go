package calc_test

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// wrongTexts are texts of which each field that reads its text refuses one.
var wrongTexts = []string{"8Omm¿", strings.Repeat("w", 300)}

// saidByIt is what a part says, less what it asks for and hands on: an entry that is wrong
// counts as not given. So it is asked for, and not handed on.
func saidByIt(p report.Part) string {
	p.Blocks = slices.DeleteFunc(slices.Clone(p.Blocks), func(b report.Block) bool {
		switch b.(type) {
		case report.Ask, report.Links:
			return true
		}
		return false
	})
	return report.Report{Parts: []report.Part{p}}.String()
}

// partsOf are what the answer and the parts of a report say, by their IDs, and what each
// says it needs.
func partsOf(r report.Report) (says map[string]string, needs map[string][]string) {
	says, needs = map[string]string{}, map[string][]string{}
	if a := r.Answer; a != nil {
		says["answer"], needs["answer"] = report.Report{Answer: a}.String(), a.Needs
	}
	for _, p := range r.Parts {
		if strings.HasPrefix(p.ID, "axis-") { // the doubts of the axis in the headline stand there
			p.Blocks = slices.DeleteFunc(slices.Clone(p.Blocks), func(b report.Block) bool { _, note := b.(report.Note); return note })
		}
		says[p.ID], needs[p.ID] = saidByIt(p), p.Needs
	}
	return says, needs
}

// A part that needs an entry which is wrong is withheld. So what stays must say the same as
// before: else it reads an entry that it does not say it needs, and goes on with it as if it
// were empty.
func TestPartsSayWhatTheyNeed(t *testing.T) {
	sheets := sheetLines(t)
	eachPage(t, func(t *testing.T, p sheet.Page) {
		told := map[string]bool{}
		tried := 0
		for _, s := range sheets[p.Slug] {
			fragment, edits, _ := strings.Cut(s.line, " > ")
			f := calc.Load(p, fragment)
			typeInto(f, edits)
			if len(f.Problems()) > 0 {
				continue
			}
			says, needs := partsOf(f.Report())
			for _, field := range f.Fields() {
				if !f.Filled(field) || !f.Visible(field, 0) {
					continue
				}
				if _, ticks := field.Cells.(*sheet.Checks); ticks {
					continue // nothing wrong can be ticked
				}
				was := f.Text(field.Key, 0)
				if !makeWrong(f, field) {
					continue
				}
				tried++
				now, _ := partsOf(f.Report())
				if strings.HasSuffix(field.Key, trial.Again) {
					// The readings after the change are added to what the first ones say.
					delete(now, "runs")
					delete(now, "apply")
				}
				for _, id := range slices.Sorted(maps.Keys(now)) {
					if before, ok := says[id]; ok && before != now[id] && !slices.Contains(needs[id], field.Key) && !told[id+field.Key] {
						told[id+field.Key] = true
						assert.Equal(t, before, now[id], "%s reads %s and does not say that it needs it: %s", id, field.Key, s.line)
					}
				}
				f.Set(field.Key, 0, was)
			}
		}
		require.Greater(t, tried, 40)
	})
}

// makeWrong types something into a field's first cell that it refuses, if it refuses anything.
func makeWrong(f *form.Form, field sheet.Field) bool {
	was := f.Text(field.Key, 0)
	for _, text := range wrongTexts {
		f.Set(field.Key, 0, text)
		if f.ProblemAt(field.Key, 0) != "" {
			return true
		}
	}
	f.Set(field.Key, 0, was)
	return false
}
