// Package calctest asks pages as a person does, for the tests of the calculators: by a link
// in, and by figures and words out.
package calctest

import (
	"testing"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/report"
)

// Load opens a link of a page; there may be problems in it.
func Load(t testing.TB, slug, fragment string) *form.Form {
	t.Helper()
	p, ok := calc.PageOf(slug)
	if !ok {
		t.Fatalf("there is no page %s", slug)
	}
	return calc.Load(p, fragment)
}

// Open opens a link of a page that is without a problem.
func Open(t testing.TB, slug, fragment string) *form.Form {
	t.Helper()
	f := Load(t, slug, fragment)
	if problems := f.Problems(); len(problems) > 0 {
		t.Fatalf("%s#%s: %s", slug, fragment, problems[0].Says)
	}
	return f
}

// Out returns the full value of a figure.
func Out(t testing.TB, f *form.Form, id string) float64 {
	t.Helper()
	for _, figure := range f.Report().Figures() {
		if figure.ID == id {
			return figure.Value
		}
	}
	t.Fatalf("there is no figure out-%s", id)
	return 0
}

// Part returns a part of the report as text; empty if it is not there.
func Part(f *form.Form, id string) string {
	for _, p := range f.Report().Parts {
		if p.ID == id {
			return report.Report{Parts: []report.Part{p}}.String()
		}
	}
	return ""
}

// Verdict returns that of the answer.
func Verdict(f *form.Form) *report.Verdict { return f.Report().Answer.Verdict }

// Answer returns the answer as text, with its notes; empty while there is none.
func Answer(f *form.Form) string {
	a := f.Report().Answer
	if a == nil {
		return ""
	}
	says := a.Aloud()
	for _, n := range a.Notes {
		says += "\n" + n.Line.String()
	}
	return says
}
