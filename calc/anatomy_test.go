package calc_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/calctest"
	"striderule/calc/form"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
)

// What stands where on a page: the needed fields in sight with their letters, what else counts
// in a line, and the rest in folds that say what they hold.

// eachForm visits the empty form of each page, its example and the sheets of testdata.
func eachForm(t *testing.T, check func(t *testing.T, f *form.Form, line string)) {
	t.Helper()
	sheets := sheetLines(t)
	eachPage(t, func(t *testing.T, p sheet.Page) {
		check(t, calc.NewForm(p), "empty")
		check(t, calc.Load(p, p.Example), "example")
		for _, s := range sheets[p.Slug] {
			fragment, edits, _ := strings.Cut(s.line, " > ")
			f := calc.Load(p, fragment)
			typeInto(f, edits)
			check(t, f, s.line)
		}
	})
}

func TestFoldsSayWhatTheyHold(t *testing.T) {
	eachForm(t, func(t *testing.T, f *form.Form, line string) {
		for _, p := range f.Report().Parts {
			assert.Equal(t, p.Folded || p.Guide, p.Brief != "", "%s: %s", line, p.ID)
			assert.Less(t, len([]rune(p.Brief)), 30, "%s: %s: a few words", line, p.ID)
		}
	})
}

// What an answer can't do without stands first, and nothing else is asked for on an empty page.
func TestNeededFieldsAreAskedFor(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		f := calc.NewForm(p)
		inSight := lists.Keep(f.Fields(), func(field sheet.Field) bool { return field.Needed && f.Visible(field, 0) })
		assert.NotEmpty(t, inSight)
		var asked []string
		for _, part := range f.Report().Parts {
			for _, b := range part.Blocks {
				if ask, ok := b.(report.Ask); ok {
					asked = append(asked, ask.Keys...)
				}
			}
		}
		require.NotEmpty(t, asked)
		assert.Subset(t, asked, f.Report().Needed())
		for _, key := range asked {
			field, ok := f.Field(key)
			require.True(t, ok, key)
			assert.True(t, field.Needed, "%s is asked for, and lies in a fold", key)
			assert.True(t, f.Visible(field, 0), key)
		}
	})
}

// With an answer, an entry that nobody sees is named by the line of what is assumed, or by its
// fold.
func TestHiddenEntriesAreNamed(t *testing.T) {
	eachForm(t, func(t *testing.T, f *form.Form, line string) {
		assumed := map[string]string{}
		for _, e := range f.Assumed() {
			assert.NotEmpty(t, e.Says, "%s: %s", line, e.Key)
			assert.NotContains(t, assumed, e.Key, line)
			assumed[e.Key] = e.Says
		}
		for _, field := range f.Fields() {
			if field.Needed || !f.Visible(field, 0) {
				assert.NotContains(t, assumed, field.Key, line)
				continue
			}
			_, ticks := field.Cells.(*sheet.Checks)
			choice := !ticks && len(options(field)) > 0
			switch {
			case field.Section.Folded:
				if f.Filled(field) {
					section := lists.Keep(f.Fields(), func(other sheet.Field) bool { return other.Section == field.Section && !other.Needed })
					assert.NotEmpty(t, f.Holds(section), "%s: %s", line, field.Key)
					held := f.Holds([]sheet.Field{field})
					assert.NotEmpty(t, held, "%s: %s", line, field.Key)
					if _, number := field.Cells.At(0).(*unit.Entry); number && field.Group == nil || isFlag(field) {
						assert.Contains(t, held, field.InShort()+" ", "%s: a number says what it is of", line)
					}
				}
			case choice && field.Group == nil, f.Filled(field) && f.Report().Answer != nil:
				assert.Contains(t, assumed, field.Key, "%s: %s", line, field.Label)
			}
		}
	})
}

func isFlag(field sheet.Field) bool {
	_, flag := field.Cells.(*sheet.FlagList)
	return flag
}

// A fold says what is left out in it, and what came with a link and is no option.
func TestFoldsNameWhatChangesTheAnswer(t *testing.T) {
	holds := func(slug, fragment string) string {
		f := calctest.Load(t, slug, fragment)
		return f.Holds(lists.Keep(f.Fields(), func(field sheet.Field) bool { return !field.Needed && field.Section.Folded }))
	}
	assert.Equal(t, "25.1 mm, 25.2 mm, Leave out check run 2", holds("measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6&restagain=25.1,25.2&asideagain=,yes"))
	assert.Equal(t, "4 check runs, Leave out check run 2, check run 3",
		holds("measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6&restagain=25.125,25.225,25.225,25.175&asideagain=,yes,yes"))
	assert.Contains(t, holds("measure", "v=1&steps=538&asked=80&mark=105&rest=28.7,28.9,28.6&gears=seven"), "seven")
	assert.Contains(t, holds("plan", "v=1&margin=50"), "Extra distance to the mark 50 mm")
}

// What a blank entry counts as is said of entries that there are.
func TestAssumedAreOfFields(t *testing.T) {
	eachForm(t, func(t *testing.T, f *form.Form, line string) {
		for _, a := range f.Report().Assumed {
			field, ok := f.Field(a.Key)
			require.True(t, ok, a.Key)
			assert.False(t, field.Needed, "%s: %s stands in sight", line, a.Key)
			assert.NotEmpty(t, a.Says)
		}
	})
}

// The columns of a group stand together: all are needed, or none.
func TestNeedMarksWholeGroups(t *testing.T) {
	eachPage(t, func(t *testing.T, p sheet.Page) {
		needed := map[*sheet.Group]bool{}
		for _, field := range calc.NewForm(p).Fields() {
			if before, seen := needed[field.Group]; seen && field.Group != nil {
				assert.Equal(t, before, field.Needed, field.Key)
			}
			needed[field.Group] = field.Needed
		}
	})
	a, b := &sheet.Group{}, &sheet.Group{}
	fields := sheet.Need([]sheet.Field{{Key: "one"}, {Key: "two"}, {Key: "left", Group: a}, {Key: "right", Group: a}, {Key: "other", Group: b}}, "two", "right")
	var keys []string
	for _, f := range fields {
		if f.Needed {
			keys = append(keys, f.Key)
		}
	}
	assert.Equal(t, []string{"two", "left", "right"}, keys)
}

// A letter of the picture is that of fields in sight, and of no others; the text says what each
// stands for.
func TestLettersAreOfNeededFields(t *testing.T) {
	pictures := 0
	eachForm(t, func(t *testing.T, f *form.Form, line string) {
		d := f.Report().Picture
		if d == nil {
			return
		}
		letters := map[string]string{} // the keys of each
		for _, tag := range tagsOf(d) {
			keys := strings.Fields(tag.Of)
			if tag.Letter == "" {
				assert.NotEmpty(t, keys, line)
			} else {
				assert.Regexp(t, `^[A-Z]$`, tag.Letter)
				assert.NotContains(t, letters, tag.Letter, "%s: twice in one picture", line)
				letters[tag.Letter] = tag.Of
				assert.Contains(t, d.Alt, tag.Letter+": ", line)
			}
			inSight := false
			for _, key := range keys {
				field, ok := f.Field(key)
				if !assert.True(t, ok, "%s: there is no field %s", line, key) {
					continue
				}
				assert.True(t, field.Needed, "%s: %s lies in a fold", line, key)
				for row := range f.Rows(field) {
					inSight = inSight || f.Visible(field, row)
				}
				if tag.Letter != "" {
					assert.Equal(t, tag.Letter, d.LetterOf(key), "%s: %s has one letter", line, key)
				}
			}
			assert.True(t, inSight, "%s: letter %s shows no field that has a part: %s", line, tag.Letter, tag.Of)
		}
		if len(letters) > 0 { // before anything is ticked, a swap has none
			pictures++
		}
		for i := range letters { // in the order of the alphabet, without a gap
			assert.True(t, i == "A" || letters[string(i[0]-1)] != "", "%s: %s without the one before it", line, i)
		}
	})
	assert.Greater(t, pictures, 100)
}

// tagsOf are the tags of a picture's shapes.
func tagsOf(d *report.Drawing) (tags []report.Tag) {
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case report.Stroke:
			if s.Of != "" {
				tags = append(tags, report.Tag{Of: s.Of})
			}
		case report.Dim:
			tags = append(tags, s.Tag)
		case report.Words:
			tags = append(tags, s.Tag)
		}
	}
	return tags
}

// The main thing to do next leads to a field that is there.
func TestNextThingLeadsToAField(t *testing.T) {
	found := 0
	eachForm(t, func(t *testing.T, f *form.Form, line string) {
		for _, p := range f.Report().Parts {
			for _, b := range p.Blocks {
				g, ok := b.(report.Go)
				if !ok {
					continue
				}
				found++
				assert.NotEmpty(t, g.Text)
				field, ok := f.Field(g.Key)
				require.True(t, ok, g.Key)
				assert.True(t, f.Visible(field, 0), "%s: %s", line, g.Key)
				assert.True(t, !f.Filled(field) || calctest.Part(f, "again") != "", "%s: %s is done, and there's nothing wrong with it", line, g.Key)
			}
		}
		in := slices.IndexFunc(f.Report().Parts, func(p report.Part) bool {
			return slices.ContainsFunc(p.Blocks, func(b report.Block) bool { _, ok := b.(report.Go); return ok })
		})
		if in >= 0 {
			assert.False(t, f.Report().Parts[in].Folded, "%s: in sight", line)
		}
	})
	assert.Positive(t, found)
}
