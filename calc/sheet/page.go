package sheet

import (
	"slices"
	"strconv"
	"strings"

	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// A Page is one calculator: what it asks, and how it answers.
type Page struct {
	Slug     string // "measure": the page's path is /measure/
	Menu     string // its name where there is little room: "Measure"
	Title    string
	Question string       // that it answers, in the person's words
	New      func() Sheet // a sheet with nothing typed
	Example  string       // a link's fragment that fills in the demo scenario
	Outputs  []Output     // every figure it can show
	Tasks    []Task       // the situations in which it helps, for the start page
}

// A Task is a situation in the words of who is in it, and the page with the
// right fields open.
type Task struct {
	Occasion  Occasion
	Situation string
	Help      string // what the page does about it
	Fragment  string
}

// An Occasion is why somebody comes: the start page has its situations by these.
type Occasion int

const (
	// Changed: a part is another one.
	Changed Occasion = iota
	// Off: something comes out wrong.
	Off
	// SettingUp: before anything is wrong.
	SettingUp
)

// An Output is a figure that a page works out: the element `out-ID` (in a
// table of rows `out-ID-1`, `out-ID-2` ...) holds it at full precision.
type Output struct {
	ID    string
	Label string
	Unit  string // of the full-precision value
}

// A Sheet is the typed entries of one page. Solve reads nothing but its sheet.
type Sheet interface {
	// Fields declares the entries in order. A field's When refers to earlier
	// fields only.
	Fields() []Field
	// Solve works out the answer from what is given; what is missing is asked
	// for in the report.
	Solve() report.Report
}

// A Field declares one entry. Form, link, help, the method page and the tests
// follow from it.
type Field struct {
	Key     string // in links and as the input's name: short plain words
	Label   string
	Short   string // the label in a line of many, where it can be shorter
	Hint    string
	Section *Section // the heading it stands under, shared by neighbours
	When    []When   // it is shown only while all of them hold
	Group   *Group   // set for a column of repeated rows
	Cells   Cells    // the typed values: one, or one a row
	Suggest []string // texts that fill the field with one tap
	Carry   bool     // a row that is added starts with the text of the row above
	Needed  bool     // the page can't answer without it: it stands first, always in sight
}

// InShort is what to call the field in a line of many.
func (f Field) InShort() string {
	if f.Short != "" {
		return f.Short
	}
	return f.Label
}

// Need marks the fields of these keys as needed, and with them the rows that they are columns of.
func Need(fields []Field, keys ...string) []Field {
	for i := range fields {
		fields[i].Needed = fields[i].Needed || slices.Contains(keys, fields[i].Key)
	}
	for i, f := range fields {
		fields[i].Needed = f.Needed || f.Group != nil && slices.ContainsFunc(fields, func(other Field) bool {
			return other.Group == f.Group && other.Needed
		})
	}
	return fields
}

// A When makes a field depend on a choice: it holds while the entry Key is one
// of Words, or has one of them ticked; with Not while it is none of them. In
// rows of the same group it means the same row.
type When struct {
	Key   string
	Words []string
	Not   bool
}

// If makes a field depend on one choice.
func If(key string, words ...string) []When { return []When{{Key: key, Words: words}} }

// And adds a condition to others, which stay as they are.
func And(on []When, key string, words ...string) []When {
	return append(append([]When(nil), on...), When{Key: key, Words: words})
}

// A Section is a heading in a form. What is not needed of it is folded away, and said in a line
// in sight.
type Section struct {
	Title  string
	Folded bool // optional facts, below the answer; else how the test is made, above it
	First  bool // it is the first of those: what comes after the answer
}

// A Group is what its columns repeat: rows travel in links as parallel lists.
// Columns of one group stand next to each other and share the pointer.
type Group struct {
	Words RowWords
	Least int // rows that are always shown
	Start int // rows that an empty form shows, at least Least
	Most  int
	// Shared are the keys of columns whose text several rows share, as repeats at one speed: the
	// rows of such a line hold it each, but it is typed once.
	Shared []string
}

// Repeats is how many rows a new line of a group has.
const Repeats = 3

// RowWords are what the rows of a group are called.
type RowWords struct {
	_     unit.Uncompared
	ID    string        // in the page's ids and the names of files: "run"
	Row   word.Template // one of them: "run {n}"
	Range word.Template // some of them: "runs {from} to {to}"
	All   string        // "runs"
	Add   string        // the button: "Add a run"
	Lines word.Table    // by the key of the column that rows share: "Add a speed"
}

// Row names a row.
func (g *Group) Row(row int) string { return g.Words.Row.Fill("n", strconv.Itoa(row+1)) }

// RowsFrom names so many rows from one on.
func (g *Group) RowsFrom(row, n int) string {
	if n <= 1 {
		return g.Row(row)
	}
	return g.Words.Range.Fill("from", strconv.Itoa(row+1), "to", strconv.Itoa(row+n))
}

// MostRows is what no group may exceed.
const MostRows = 50

// MostAtSight is how many readings are listed in a report; more are folded away.
const MostAtSight = 12

// A Value is one typed cell: text in, text out. An empty text stands for the
// value's default.
type Value interface {
	// Set reads text; the error is a *unit.Error, which says what is wrong and what would be
	// right.
	Set(text string) error
	// String returns a text that reads back to the same value.
	String() string
	// Plain returns text as typed, in the form in which links carry it.
	Plain(text string) string
	// About says what can be typed.
	About() string
}

// Cells are the values behind one field.
type Cells interface {
	Len() int
	Resize(n int)
	At(i int) Value
}

// About says what a field takes, and when it applies.
func About(f Field) string {
	takes := ""
	if checks, ok := f.Cells.(*Checks); ok {
		takes = anyOption.Fill("options", words(checks.Options()))
	} else {
		f.Cells.Resize(1)
		takes = f.Cells.At(0).About()
	}
	if len(f.When) == 0 {
		return takes
	}
	choices := make([]string, len(f.When))
	for i, w := range f.When {
		sign := "="
		if w.Not {
			sign = "≠"
		}
		choices[i] = w.Key + sign + strings.Join(w.Words, "|")
	}
	return onlyWith.Fill("takes", takes, "choices", strings.Join(choices, "&")) // as in a link
}
