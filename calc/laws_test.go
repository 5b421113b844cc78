package calc_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// The laws hold for every page, those to come included.

func eachPage(t *testing.T, check func(t *testing.T, p sheet.Page)) {
	t.Helper()
	require.NotEmpty(t, calc.Pages)
	for _, p := range calc.Pages {
		t.Run(p.Slug, func(t *testing.T) { check(t, p) })
	}
}

func TestPagesAreToldApart(t *testing.T) {
	seen := map[string]bool{}
	eachPage(t, func(t *testing.T, p sheet.Page) {
		assert.Regexp(t, `^[a-z]+$`, p.Slug)
		assert.False(t, seen[p.Slug], "slug twice")
		seen[p.Slug] = true
		assert.NotEmpty(t, p.Title)
		assert.True(t, strings.HasSuffix(p.Question, "?"), p.Question)
		assert.NotEmpty(t, p.Menu)
		for _, task := range p.Tasks {
			f := calc.Load(p, task.Fragment)
			assert.Empty(t, f.Problems(), task.Situation)
		}
		found, ok := calc.PageOf(p.Slug)
		assert.True(t, ok)
		assert.Equal(t, p.Title, found.Title)
	})
	_, ok := calc.PageOf("nowhere")
	assert.False(t, ok)
}

func TestFieldsAreWellDeclared(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		f := calc.NewForm(p)
		seen := map[string]sheet.Field{}
		var group *sheet.Group
		for _, field := range f.Fields() {
			assert.Regexp(t, `^[a-z]+$`, field.Key)
			assert.NotContains(t, seen, field.Key)
			assert.NotContains(t, []string{"v", link.ClaimKey}, field.Key, "reserved")
			assert.NotEmpty(t, field.Label)
			require.NotNil(t, field.Section, field.Key)
			assert.NotEmpty(t, field.Section.Title)
			for _, w := range field.When {
				on, earlier := seen[w.Key]
				require.True(t, earlier, "%s depends on %s, which does not stand before it", field.Key, w.Key)
				for _, word := range w.Words {
					assert.True(t, slices.ContainsFunc(options(on), func(o sheet.Option) bool { return o.Word == word }), "%s: %s=%s", field.Key, w.Key, word)
				}
			}
			if field.Group != nil {
				assert.LessOrEqual(t, field.Group.Most, sheet.MostRows)
				assert.Positive(t, field.Group.Least)
				assert.LessOrEqual(t, field.Group.Least, field.Group.Most)
				if field.Group != group {
					for _, before := range seen {
						assert.NotSame(t, field.Group, before.Group, "the columns of a group stand together")
					}
				}
			}
			group = field.Group
			seen[field.Key] = field
			assert.NotEmpty(t, sheet.About(field))
		}
	})
}

func options(f sheet.Field) []sheet.Option {
	if checks, ok := f.Cells.(*sheet.Checks); ok {
		return checks.Options()
	}
	if f.Cells.Len() == 0 { // of a form they are as they are
		f.Cells.Resize(1)
	}
	if c, ok := f.Cells.At(0).(*sheet.Choice); ok {
		return c.Options()
	}
	return nil
}

func TestOnlyChoicesHaveDefaults(t *testing.T) {
	// Everything else would be assumed without anybody having said so.
	eachPage(t, func(t *testing.T, p sheet.Page) {
		for _, field := range calc.NewForm(p).Fields() {
			if len(options(field)) == 0 {
				field.Cells.Resize(1)
				assert.Empty(t, field.Cells.At(0).String(), field.Key)
			}
		}
	})
}

// The method page tells of fields that no form has made rows for.
func TestFieldsTellOfThemselves(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		form := calc.NewForm(p)
		for i, field := range p.New().Fields() {
			assert.Equal(t, sheet.About(form.Fields()[i]), sheet.About(field), field.Key)
		}
	})
}

func TestSuggestionsAreRead(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		for _, field := range calc.NewForm(p).Fields() {
			field.Cells.Resize(1)
			for _, s := range field.Suggest {
				require.NoError(t, field.Cells.At(0).Set(s), field.Key)
				assert.NotEmpty(t, field.Cells.At(0).String())
			}
		}
	})
}

func TestEmptyFormAsks(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		f := calc.NewForm(p)
		assert.Empty(t, f.Problems())
		assert.Empty(t, f.Fragment())
		assert.Empty(t, f.ShareFragment())
		assert.Nil(t, f.Report().Answer)
		asks := 0
		for _, part := range f.Report().Parts {
			for _, b := range part.Blocks {
				if a, ok := b.(report.Ask); ok {
					asks++
					require.NotEmpty(t, a.Keys)
				}
			}
		}
		assert.Positive(t, asks, "an empty form says what it needs")
	})
}

func TestExampleAnswers(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		f := calc.Load(p, p.Example)
		assert.Empty(t, f.Problems())
		assert.NotNil(t, f.Report().Answer)
		assert.Equal(t, p.Example, f.Fragment(), "an example is canonical")
	})
}

var rowSuffix = regexp.MustCompile(`-[0-9]+$`)

// checkFigures holds a report against what its page declares, and its drawings
// against the law.
func checkFigures(t require.TestingT, p sheet.Page, r report.Report) {
	for _, d := range drawingsOf(t, r) {
		checkDrawing(t, d)
	}
	seen := map[string]bool{}
	for _, f := range allFigures(r) {
		require.True(t, unit.Finite(f.Value), "%s is %v", f.ID, f.Value)
		require.NotContains(t, f.String(), "NaN")
		if f.ID == "" {
			continue
		}
		require.False(t, seen[f.ID], "two figures are out-%s", f.ID)
		seen[f.ID] = true
		require.True(t, slices.ContainsFunc(p.Outputs, func(o sheet.Output) bool { return o.ID == rowSuffix.ReplaceAllString(f.ID, "") }), "out-%s is not declared", f.ID)
	}
}

func allFigures(r report.Report) []report.Figure {
	var all []report.Figure
	if r.Answer != nil {
		if r.Answer.Instead == nil {
			all = append(all, r.Answer.Figure)
		} else {
			all = append(all, partFigures(*r.Answer.Instead)...)
		}
		all = append(all, figuresIn(r.Answer.Says)...)
	}
	for _, p := range r.Parts {
		all = append(all, partFigures(p)...)
	}
	return all
}

func partFigures(p report.Part) []report.Figure {
	var all []report.Figure
	for _, b := range p.Blocks {
		switch b := b.(type) {
		case report.Para:
			all = append(all, figuresIn(b.Line)...)
		case report.Note:
			all = append(all, figuresIn(b.Line)...)
		case report.Drawing:
			all = append(all, report.Figure{Label: b.Alt}) // it has all figures in it
		case report.Figures:
			all = append(all, b.All...)
		case report.Bars:
			for _, bar := range b.All {
				all = append(all, bar.Value)
			}
		case report.Steps:
			all = append(all, figuresIn(slices.Concat(b.Items...))...)
		case report.Points:
			all = append(all, figuresIn(slices.Concat(b.Items...))...)
		case report.Table:
			for _, row := range b.Rows {
				all = append(all, figuresIn(slices.Concat(row...))...)
			}
		}
	}
	return all
}

func figuresIn(l report.Line) []report.Figure {
	var all []report.Figure
	for _, s := range l {
		if s.Figure != nil {
			all = append(all, *s.Figure)
		}
	}
	return all
}

func TestAsksNameFields(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		for _, fragment := range []string{"", p.Example} {
			f := calc.Load(p, fragment)
			for _, part := range f.Report().Parts {
				for _, b := range part.Blocks {
					if a, ok := b.(report.Ask); ok {
						for _, key := range a.Keys {
							assert.NotEmpty(t, f.Label(key), key)
						}
					}
				}
				for _, key := range part.Needs {
					assert.NotEmpty(t, f.Label(key), "%s needs %s", part.ID, key)
				}
			}
		}
	})
}

// While a field is wrong, what depends on it is withheld, not stale; the rest
// stays as it was.
func TestWrongFieldWithholdsItsAnswers(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		whole := calc.Load(p, p.Example)
		for _, field := range whole.Fields() {
			if !whole.Filled(field) || len(options(field)) > 0 {
				continue
			}
			f := calc.Load(p, p.Example)
			f.Set(field.Key, 0, "8Omm¿{")
			if f.ProblemAt(field.Key, 0) == "" {
				continue // free text takes anything
			}
			for _, was := range whole.Report().Parts {
				for _, is := range f.Report().Parts {
					if is.ID == was.ID {
						assert.Equal(t, partFigures(was), partFigures(is), "%s is wrong, and part %s shows something else", field.Key, is.ID)
					}
				}
			}
			if a := f.Report().Answer; a != nil {
				assert.Equal(t, whole.Report().Answer.Figure, a.Figure, "%s is wrong", field.Key)
			}
			f.Set(field.Key, 0, whole.Text(field.Key, 0))
			assert.Equal(t, whole.Report(), f.Report(), "put right again")
		}
	})
}

func TestGuidesComeFirst(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		for _, fragment := range []string{"", p.Example} {
			parts := calc.Load(p, fragment).Report().Parts
			assert.True(t, slices.IsSortedFunc(parts, func(a, b report.Part) int {
				return boolRank(a.Guide) - boolRank(b.Guide)
			}), "the page shows them above the form")
		}
	})
}

func boolRank(first bool) int {
	if first {
		return 0
	}
	return 1
}

// What a page hands over to another opens there without a problem, and is as
// that page would write it.
func TestHandedOverLinksOpen(t *testing.T) {
	check := func(t *testing.T, r report.Report) (n int) {
		for _, part := range r.Parts {
			for _, b := range part.Blocks {
				all, _ := b.(report.Links)
				for _, l := range all.All {
					n++
					p, ok := calc.PageOf(l.Slug)
					if !ok { // a page without entries
						assert.Empty(t, l.Fragment)
						continue
					}
					f := calc.Load(p, l.Fragment)
					assert.Empty(t, f.Problems(), l.Fragment)
					assert.Equal(t, l.Fragment, f.Fragment())
				}
			}
		}
		return n
	}
	n := 0
	old := links(t)
	eachPage(t, func(t *testing.T, p sheet.Page) {
		n += check(t, calc.Load(p, p.Example).Report())
		for _, l := range old[p.Slug] {
			n += check(t, calc.Load(p, l.fragment).Report())
		}
	})
	assert.Positive(t, n)
}
