package form

import (
	"slices"
	"strings"

	"striderule/calc/link"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// A Form is a sheet with its text as typed and the problems in it. It is the
// suite's only mutable state.
type Form struct {
	Page     sheet.Page
	sheet    sheet.Sheet
	fields   []sheet.Field
	index    map[string]int      // of fields, by key
	text     map[string][]string // by key, a cell a row
	rows     map[*sheet.Group]int
	lines    map[*sheet.Group][]int // the rows with which they begin: see lines.go
	plain    map[string][]string    // see plainText
	problems []report.Problem       // of the entries
	asks     []report.Problem       // of entries that were probably meant otherwise
	notices  []report.Problem       // of the link that was loaded
	unknown  []link.Piece           // of that link, kept
	brought  map[string]bool        // keys of templates that came with it and are not accepted
	theirs   map[string]string      // what these were
	accepted map[string]string      // those of it that were accepted
	received *Claim
	altered  string // what became of the entries of that link on the way; empty if they are as sent
	told     string // the remark that came with it
	remark   string // that goes with a reply
	report   report.Report

	machine      []link.Piece // whose axis it is about
	card         string       // of Run the test, where the person is
	current      Current      // the setting that this has now
	agreed       string       // both settings, where the person has said that it was the sheet's
	settingAsked bool

	before map[string][]string // the sheet to compare with, nil if there is none
	origin string              // the link that brought it, if that is known
	sent   map[string][]string // the sheet as it was sent, until it is changed
	link   string              // that brought it
}

// Read returns the form that a link's fragment describes. Every string can be
// read: what cannot be understood is kept, and Problems says so.
func Read(site link.Site, p sheet.Page, fragment string) *Form {
	return readUpTo(link.MostLink, site, p, fragment)
}

// ReadWhole is Read for a fragment that was written here: of such a sheet nothing is
// cut off, however long it is.
func ReadWhole(site link.Site, p sheet.Page, fragment string) *Form {
	return readUpTo(len(fragment), site, p, fragment)
}

// readUpTo reads a fragment up to so many characters.
func readUpTo(most int, site link.Site, p sheet.Page, fragment string) *Form {
	mended, said := site.Mend(fragment)
	f := readMended(most, p, mended)
	if check, _ := f.Check(); check == Differs && f.received.sum == "" {
		// Without a sum the sender's result tells whether a comma was a decimal one.
		if guess, says := link.Decimals(mended); says != "" {
			if g := readMended(most, p, guess); g.agrees() {
				f, said = g, append(said, says)
			}
		}
	}
	f.Mended(said)
	if f.sent != nil {
		f.link = fragment
	}
	return f
}

func (f *Form) agrees() bool {
	check, _ := f.Check()
	return check == Same || check == Reworked
}

// readMended reads a fragment that is mended.
func readMended(most int, p sheet.Page, fragment string) *Form {
	f := untyped(p)
	was := f.read(fragment, most)
	f.readCells()
	f.noteBrought()
	f.workOut()
	f.receiveSheet(was)
	for _, field := range f.fields {
		if f.Filled(field) && !f.anyVisible(field) {
			f.notices = append(f.notices, report.Problem{Key: field.Key, Row: 0,
				Says: noPart.Fill("field", field.Label)})
		}
		f.doubtCommas(field)
	}
	return f
}

// untyped is a page's form before anything is read.
func untyped(p sheet.Page) *Form {
	f := &Form{Page: p, sheet: p.New(), text: map[string][]string{}, rows: map[*sheet.Group]int{}, lines: map[*sheet.Group][]int{}}
	f.fields = f.sheet.Fields()
	f.index = make(map[string]int, len(f.fields))
	for i, field := range f.fields {
		f.index[field.Key] = i
		if field.Group != nil {
			f.rows[field.Group] = max(field.Group.Least, field.Group.Start)
		}
	}
	return f
}

// Field returns the field of a key.
func (f *Form) Field(key string) (sheet.Field, bool) {
	i, ok := f.index[key]
	if !ok {
		return sheet.Field{}, false
	}
	return f.fields[i], true
}

// solve reads all text into the sheet anew and works out the report.
func (f *Form) solve() {
	f.readCells()
	f.workOut()
}

// readCells reads all text into the sheet anew. What is hidden counts as not given.
func (f *Form) readCells() {
	f.problems, f.asks, f.plain = nil, nil, nil
	for _, field := range f.fields {
		if field.Group != nil && len(field.Group.Shared) > 0 {
			f.layLines() // its rows depend on choices, which stand before them
		}
		n := len(f.text[field.Key])
		if _, ticks := field.Cells.(*sheet.Checks); !ticks {
			n = f.Rows(field)
		}
		field.Cells.Resize(n)
		for row := range n {
			text := ""
			if f.Visible(field, row) {
				text = f.Text(field.Key, row)
			}
			if err := field.Cells.At(row).Set(text); err != nil {
				f.problems = append(f.problems, sheet.ProblemWith(field, row, err))
			} else if asks := asksOf(field, row); asks != nil {
				f.asks = append(f.asks, sheet.ProblemWith(field, row, asks))
			}
		}
	}
	f.problems = lists.Keep(f.problems, func(p report.Problem) bool { return !f.leftOut(p) })
}

// leftOut reports whether what is wrong stands in a row that is left out: it counts for nothing
// there, so it blocks nothing.
func (f *Form) leftOut(p report.Problem) bool {
	field, _ := f.Field(p.Key)
	return field.Group != nil && slices.ContainsFunc(f.fields, func(other sheet.Field) bool {
		flags, ok := other.Cells.(*sheet.FlagList)
		return ok && other.Group == field.Group && flags.Rows[p.Row].On
	})
}

// workOut makes the report of what the sheet holds.
func (f *Form) workOut() {
	f.report = f.sheet.Solve()
	for i, p := range f.report.Problems {
		if field, ok := f.Field(p.Key); ok {
			f.report.Problems[i].Says = ofField.Fill("field", field.Name(p.Row), "problem", p.Says)
		}
	}
	f.problems = append(f.problems, f.report.Problems...)
	f.askSetting()
	f.report.Withhold(f.wrong())
	f.markLines()
}

// wrong returns the keys of fields that have a problem.
func (f *Form) wrong() map[string]bool {
	keys := map[string]bool{}
	for _, p := range f.problems {
		keys[p.Key] = true
	}
	return keys
}

// Fields returns the page's fields in order, hidden ones too.
func (f *Form) Fields() []sheet.Field { return f.fields }

// Rows returns how many cells a field shows.
func (f *Form) Rows(field sheet.Field) int {
	if field.Group == nil {
		return 1
	}
	return f.rows[field.Group]
}

// Text returns a cell's text as typed.
func (f *Form) Text(key string, row int) string {
	if cells := f.text[key]; row < len(cells) {
		return cells[row]
	}
	return ""
}

// Visible reports whether a field's cell applies with the choices made.
func (f *Form) Visible(field sheet.Field, row int) bool {
	for _, w := range field.When {
		if holds(&f.fields[f.index[w.Key]], row, w.Words) == w.Not {
			return false
		}
	}
	return true
}

// holds reports whether one of words is chosen, or ticked, in a field.
func holds(on *sheet.Field, row int, words []string) bool {
	if checks, ok := on.Cells.(*sheet.Checks); ok {
		return slices.ContainsFunc(words, checks.Has)
	}
	return slices.Contains(words, on.Cells.At(row).String()) // a single one is that of every row
}

func (f *Form) anyVisible(field sheet.Field) bool {
	for row := range f.Rows(field) {
		if f.Visible(field, row) {
			return true
		}
	}
	return false
}

// Filled reports whether something is typed in a field.
func (f *Form) Filled(field sheet.Field) bool {
	return slices.ContainsFunc(f.text[field.Key], func(s string) bool { return strings.TrimSpace(s) != "" })
}

// Set types text into a cell.
func (f *Form) Set(key string, row int, text string) {
	if field, ok := f.Field(key); ok && row >= 0 && row < f.most(field) {
		f.put(field, row, text)
		if g := field.Group; g != nil && f.lines[g] != nil && slices.Contains(g.Shared, key) {
			from, to := f.lineOf(g, row)
			for other := from; other < to; other++ {
				f.put(field, other, text)
			}
		}
		f.changed()
	}
}

// SetAlone is Set for one row of a line: the others keep what they have, and lines are found anew.
func (f *Form) SetAlone(key string, row int, text string) {
	if field, ok := f.Field(key); ok && row >= 0 && row < f.most(field) {
		f.put(field, row, text)
		f.lines[field.Group] = nil
		f.changed()
	}
}

// put is Set without working anything out.
func (f *Form) put(field sheet.Field, row int, text string) {
	for len(f.text[field.Key]) <= row {
		f.text[field.Key] = append(f.text[field.Key], "")
	}
	if field.Group != nil {
		f.rows[field.Group] = max(f.rows[field.Group], row+1)
	}
	f.text[field.Key][row] = word.OneLine(text)
	f.typedOver(field, f.text[field.Key][row])
}

// Tick ticks or clears an option of a field of Checks.
func (f *Form) Tick(key, word string, on bool) {
	field, ok := f.Field(key)
	checks, isChecks := field.Cells.(*sheet.Checks)
	if !ok || !isChecks {
		return
	}
	var ticked []string
	for _, o := range checks.Options() {
		if o.Word == word && on || o.Word != word && checks.Has(o.Word) {
			ticked = append(ticked, o.Word)
		}
	}
	f.text[key] = ticked
	f.changed()
}

// changed solves anew. A sender's result belongs to the entries as they were
// sent, and a notice to the link that was opened: both end here.
func (f *Form) changed() {
	f.received = nil
	f.notices, f.altered = nil, ""
	if f.sent != nil {
		f.before, f.origin, f.sent = f.sent, f.link, nil
	}
	f.solve()
}

// asksOf is the question about a cell that was probably meant otherwise.
func asksOf(field sheet.Field, row int) *unit.Error {
	if e, ok := field.Cells.At(row).(*unit.Entry); ok {
		return e.Asks()
	}
	return nil
}

// Problems returns what is wrong with the entries, what is asked about them, then what is
// wrong with the link.
func (f *Form) Problems() []report.Problem { return lists.Concat(f.problems, f.asks, f.notices) }

// AskedAt returns what is asked about one cell, empty if nothing is.
func (f *Form) AskedAt(key string, row int) string { return at(f.asks, key, row) }

// ProblemAt returns what is wrong with one cell, empty if nothing is.
func (f *Form) ProblemAt(key string, row int) string { return at(f.problems, key, row) }

// at is the first of these about one cell.
func at(all []report.Problem, key string, row int) string {
	for _, p := range all {
		if p.Key == key && p.Row == row {
			return p.Says
		}
	}
	return ""
}

// RemarkAt returns what is to be said beside a cell.
func (f *Form) RemarkAt(key string, row int) report.Remark {
	for _, m := range f.report.Remarks {
		if m.Key == key && m.Row == row {
			return m
		}
	}
	return report.Remark{}
}

// Troubles reports whether something that stands in a row of these fields is wrong, or in doubt;
// in any row if that is negative.
func (f *Form) Troubles(fields []sheet.Field, row int) (wrong, doubt bool) {
	in := func(key string, at int) bool {
		for i := range fields {
			if fields[i].Key == key {
				return row < 0 || at == row
			}
		}
		return false
	}
	for i := range f.problems {
		wrong = wrong || in(f.problems[i].Key, f.problems[i].Row)
	}
	for i := range f.asks {
		doubt = doubt || in(f.asks[i].Key, f.asks[i].Row)
	}
	for _, m := range f.report.Remarks {
		doubt = doubt || m.Doubt && in(m.Key, m.Row)
	}
	return wrong, doubt
}

// Report returns the answer. Parts that need a field that is wrong are left
// out of it.
func (f *Form) Report() report.Report { return f.report }

// Label returns a field's label, for texts that name it.
func (f *Form) Label(key string) string {
	field, _ := f.Field(key)
	return field.Label
}
