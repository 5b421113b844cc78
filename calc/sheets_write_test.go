package calc_test

import (
	"hash/crc32"
	"math"
	"slices"
	"strconv"
	"strings"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// A writer writes all that a page says of a sheet, as lines. Figures are written as they
// are shown, and behind them in braces at twelve digits: the last ones differ between
// processors. What is long and was written before, of any sheet, is named by its
// beginning; a part that was written in full for many sheets by its title.
type writer struct {
	text  strings.Builder
	seen  map[string]bool
	often map[string]int // parts that were written in full, by their IDs
	needs []string       // of the sheet's answer
	drawn bool           // drawings are what the sheet is for
	empty *form.Form     // the page's, with nothing typed
}

// mostOften is in how many sheets of a page a part is written in full.
const mostOften = 30

// mostTwice is how many characters are written again.
const mostTwice = 60

func (w *writer) line(parts ...string) {
	text := strings.Join(parts, "")
	if again := w.again(text); again != "" {
		text = again
	}
	w.text.WriteString(text + "\n")
}

// again is a short form of a text that was written before, empty if it was not: its
// beginning, and two letters that tell it from others that begin so.
func (w *writer) again(text string) string {
	if len(text) <= mostTwice || w.seen == nil {
		return ""
	}
	if !w.seen[text] {
		w.seen[text] = true
		return ""
	}
	first, _, _ := strings.Cut(text, "\n")
	runes := []rune(first)
	sum := crc32.ChecksumIEEE([]byte(text))
	return string(runes[:min(len(runes), mostTwice/4)]) + "…" + string([]byte{'a' + byte(sum%26), 'a' + byte(sum/26%26)})
}

// first reports whether a thing of some name is written for the first time.
func (w *writer) first(name string) bool {
	if w.seen == nil {
		return true
	}
	again := w.seen[name]
	w.seen[name] = true
	return !again
}

// whole writes what is made of several lines, which are written again all or none.
func (w *writer) whole(write func(w *writer)) {
	plain := writer{needs: w.needs}
	write(&plain)
	if again := w.again(plain.text.String()); again != "" {
		w.line(again)
		return
	}
	write(w)
}

// short is a number with so many significant digits; what is left of a difference of
// equals is 0.
func short(v float64, digits int) string {
	if math.Abs(v) < 1e-12 {
		return "0"
	}
	return strconv.FormatFloat(v, 'g', digits, 64)
}

// figureText is a figure as shown; in braces its ID, its value at twelve digits where that
// is another, and a + where zeros at the end are kept.
func figureText(f *report.Figure) string {
	var more []string
	if f.ID != "" {
		more = append(more, f.ID)
	}
	if full := short(f.Value, 12); f.U > 0 {
		more = append(more, full+" ± "+short(f.U, 9))
	} else if full != strings.ReplaceAll(f.Number(), "−", "-") {
		more = append(more, full)
	}
	if f.Keep {
		more = append(more, "+")
	}
	if more == nil {
		return f.String()
	}
	return f.String() + " {" + strings.Join(more, " ") + "}"
}

// sentence is a line of text; where only the figures in it are new, its beginning and
// those.
func (w *writer) sentence(l report.Line) string {
	var whole, words strings.Builder
	var figures []string
	for _, s := range l {
		if s.Figure == nil {
			whole.WriteString(s.Text)
			words.WriteString(s.Text)
			continue
		}
		figures = append(figures, figureText(s.Figure))
		whole.WriteString(figures[len(figures)-1])
		words.WriteString("#")
	}
	if len(figures) > 0 {
		if again := w.again(words.String()); again != "" {
			return again + " " + strings.Join(figures, " | ")
		}
	}
	return whole.String()
}

// drawings writes the drawings of a sheet, and nothing else.
func (w *writer) drawings(f *form.Form) {
	w.guide(f.Report())
	for _, p := range f.Report().Parts {
		for _, b := range p.Blocks {
			if _, ok := b.(report.Drawing); ok {
				w.whole(func(w *writer) { w.piece(b) })
			}
		}
	}
}

// guide writes the picture beside the fields.
func (w *writer) guide(r report.Report) {
	if r.Picture != nil {
		w.whole(func(w *writer) { w.piece(*r.Picture) })
	}
}

// form writes a sheet that came by a link: what was understood, and the report.
func (w *writer) form(f *form.Form, fragment string) {
	w.checks(f)
	if f.Fragment() != fragment {
		w.line("fragment: ", f.Fragment())
	}
	w.shown(f)
	r := f.Report()
	w.line("assumed: ", assumedText(f))
	if w.first("care " + r.Care) {
		w.line("care: ", r.Care)
	}
	w.guide(r)
	w.answer(r.Answer)
	for _, p := range r.Parts {
		w.part(p)
	}
	for _, m := range r.Remarks {
		doubt := ""
		if m.Doubt {
			doubt = "? "
		}
		w.line("beside ", m.Key, " ", strconv.Itoa(m.Row), ": ", doubt, m.Says)
	}
}

// assumedText is what counts beside the needed fields, and what the folded ones hold.
func assumedText(f *form.Form) string {
	var says []string
	for _, e := range f.Assumed() {
		says = append(says, e.Key+" "+e.Says)
	}
	more := f.Holds(slices.DeleteFunc(slices.Clone(f.Fields()), func(field sheet.Field) bool { return field.Needed || !field.Section.Folded }))
	return strings.Join(says, " · ") + " | " + more
}

// checks writes what is wrong, and what came of the sender's result.
func (w *writer) checks(f *form.Form) {
	for _, p := range f.Problems() {
		w.line("! ", p.Key, " ", strconv.Itoa(p.Row), ": ", p.Says)
	}
	if check, says := f.Check(); check != form.Unclaimed {
		w.line("check ", strconv.Itoa(int(check)), ": ", says)
	}
	if f.Report().Answer != nil {
		w.line("shared as ", saw(f))
	}
}

// shown writes what is entered, and which fields have a part beside those of an empty
// form, or have none.
func (w *writer) shown(f *form.Form) {
	var entered, shown []string
	empty := w.empty
	for i, field := range f.Fields() {
		now, before := rowsShown(f, field), rowsShown(empty, empty.Fields()[i])
		if now != before {
			shown = append(shown, field.Key+now)
		}
		if text := f.Entered(field); text != "" {
			entered = append(entered, field.Key+"="+text)
		}
	}
	w.line("entered: ", strings.Join(entered, "; "))
	w.line("shown: ", strings.Join(shown, " "))
}

// rowsShown is a + for each row in which a field has a part, a - for each other.
func rowsShown(f *form.Form, field sheet.Field) string {
	rows := ""
	for row := range f.Rows(field) {
		if f.Visible(field, row) {
			rows += "+"
		} else {
			rows += "-"
		}
	}
	if len(rows) > 4 && strings.Trim(rows, rows[:1]) == "" {
		rows = rows[:1] + "×" + strconv.Itoa(len(rows))
	}
	return rows
}

func (w *writer) answer(a *report.Answer) {
	if a == nil {
		w.line("no answer")
		return
	}
	w.line("ANSWER ", a.Label, ": ", figureText(&a.Figure))
	if a.Instead != nil {
		w.line("instead: ", a.Instead.Title)
		for _, b := range a.Instead.Blocks {
			w.piece(b)
		}
	}
	if v := a.Verdict; v != nil {
		w.line("verdict ", v.Kind.String(), ", ", v.Title, ": ", w.sentence(v.Says))
	}
	w.line(w.sentence(a.Says))
	if a.Keep != nil {
		w.line("keep ", a.Keep.Label, ": ", figureText(a.Keep))
	}
	for _, n := range a.Notes {
		w.piece(n)
	}
	w.line("needs ", strings.Join(a.Needs, " "))
	w.needs = a.Needs
}

// less are the keys that the others lack, each behind a mark.
func less(keys, others []string, mark string) string {
	text := ""
	for _, key := range keys {
		if !slices.Contains(others, key) {
			text += mark + key
		}
	}
	return text
}

// part writes a part, with what it needs beside what the answer needs, or less.
func (w *writer) part(p report.Part) {
	how := ""
	if p.Folded {
		how += ", folded"
	}
	if p.Guide {
		how += ", guide"
	}
	if p.Brief != "" {
		how += ": " + p.Brief
	}
	if w.often != nil && w.often[p.ID] >= mostOften {
		w.line("== ", p.Title, ", as such parts are")
		return
	}
	w.whole(func(w *writer) {
		if w.often != nil {
			w.often[p.ID]++
		}
		w.line("== ", p.Title, " (", p.ID, how, ")")
		w.line("needs", less(p.Needs, w.needs, " +"), less(w.needs, p.Needs, " -"))
		for _, b := range p.Blocks {
			w.whole(func(w *writer) { w.piece(b) })
		}
	})
}

// saw is what a link says of the result, less the sum of its entries; if the form is empty, as
// that of a link with a version alone.
func saw(f *form.Form) string {
	for _, p := range link.Split(f.ShareFragment()) {
		if p.Key == "saw" {
			return p.Cells[0][:strings.LastIndexByte(p.Cells[0], ':')]
		}
	}
	return ""
}
