package logbook

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// Version is that of the texts and files that are written.
const Version = 1

// MostEntry is how long an entry's text may be, in bytes.
const MostEntry = 20_000

// ErrNewer is the error of an entry's text of a version that is not known yet.
// It is whole, and belongs to whoever wrote it: leave it as it is.
var ErrNewer = errors.New("kept by a newer version of this site: reload the page to get that version")

var errLong = errors.New("longer than an entry can be")

// An Entry is one sheet that was kept, with what came out of it then.
type Entry struct {
	ID      string // small letters, digits, hyphens
	Date    string // by the device's clock: 2026-11-25, or 2026-11-25T10:03
	Machine string
	Axis    string
	Note    string
	Page    string  // the slug
	Sheet   string  // the link's fragment, with the result for its own check
	Output  string  // the ID of the headline; empty if the sheet gave no answer
	Label   string  // what the headline is
	Unit    string  // of Value and U
	Value   float64 // finite
	U       float64 // expanded uncertainty at 95 %; 0 if there is none
	Verdict string  // in words; empty where there is nothing to decide
	// Other is what a newer version added, as pieces of a fragment.
	Other string
}

// A Field is one key of an entry, in texts and files alike.
type Field struct {
	Key    string
	Holds  string
	text   func(*Entry) *string
	number func(*Entry) *float64 // set instead of text for numbers
}

// Number reports whether the field holds a number.
func (f Field) Number() bool { return f.number != nil }

// Fields are the keys of an entry, in the order in which they are written. What
// is empty is left out.
var Fields = []Field{
	{Key: "id", Holds: "what tells entries apart: small letters, digits and hyphens, 40 at most", text: func(e *Entry) *string { return &e.ID }},
	{Key: "date", Holds: "when it was kept, by the device's clock: 2026-11-25, or 2026-11-25T10:03", text: func(e *Entry) *string { return &e.Date }},
	{Key: "machine", Holds: "the machine's name", text: func(e *Entry) *string { return &e.Machine }},
	{Key: "axis", Holds: "the axis", text: func(e *Entry) *string { return &e.Axis }},
	{Key: "note", Holds: "a note", text: func(e *Entry) *string { return &e.Note }},
	{Key: "page", Holds: "the page, by its name in addresses", text: func(e *Entry) *string { return &e.Page }},
	{Key: "sheet", Holds: "the entries of the page: what stands behind # in its link", text: func(e *Entry) *string { return &e.Sheet }},
	{Key: "output", Holds: "the result's output, as in the tables above without out-; left out if the sheet gave none", text: func(e *Entry) *string { return &e.Output }},
	{Key: "label", Holds: "what the result is", text: func(e *Entry) *string { return &e.Label }},
	{Key: "unit", Holds: "its unit", text: func(e *Entry) *string { return &e.Unit }},
	{Key: "value", Holds: "the result with all its digits", number: func(e *Entry) *float64 { return &e.Value }},
	{Key: "u", Holds: "its expanded uncertainty at 95 %, in the same unit; left out if there is none", number: func(e *Entry) *float64 { return &e.U }},
	{Key: "verdict", Holds: "the verdict in words", text: func(e *Entry) *string { return &e.Verdict }},
}

// versionKey marks an entry's text, with its version.
const versionKey = "log"

func fieldOf(key string) (Field, bool) {
	for _, f := range Fields {
		if f.Key == key {
			return f, true
		}
	}
	return Field{}, false
}

// Of returns the entry that keeps a form, without an ID: a Book gives it one.
// It is false while there is nothing to keep: nothing typed, or more than a
// link can carry.
func Of(f *form.Form, date, machine, axis, note string) (Entry, bool) {
	e := entryOf(f)
	e.Date, e.Machine, e.Axis, e.Note = date, machine, axis, note
	if e.Sheet == "" || len(e.Sheet) > link.MostLink {
		return Entry{}, false
	}
	return e.tidy(), true
}

// entryOf returns what a form tells of an entry.
func entryOf(f *form.Form) Entry {
	e := Entry{Page: f.Page.Slug, Sheet: f.ShareFragment()}
	if a := f.Report().Answer; a != nil {
		e.Output, e.Label, e.Unit, e.Value, e.U = a.ID, a.Label, a.Unit, a.Value, a.U
		if a.Verdict != nil {
			e.Verdict = a.Verdict.Title
		}
	}
	return e
}

// AxisOf returns what a form tells of its axis: "Feed"; nothing of a travel axis,
// whose letter the person knows.
func AxisOf(typed *form.Form) string {
	for _, f := range typed.Fields() {
		if f.Key != "axis" {
			continue
		}
		if choice, ok := f.Cells.At(0).(*sheet.Choice); ok && choice.Word != "travel" {
			return labelOf(choice)
		}
	}
	return ""
}

// tidy makes every text one line without blanks at its ends.
func (e Entry) tidy() Entry {
	for _, f := range Fields {
		if !f.Number() {
			t := f.text(&e)
			*t = strings.TrimSpace(word.OneLine(*t))
		}
	}
	return e
}

// Answered reports whether the sheet gave a result.
func (e Entry) Answered() bool { return e.Output != "" }

// Figure returns the headline as it is shown.
func (e Entry) Figure() report.Figure {
	return report.Figure{Label: e.Label, Value: e.Value, Unit: e.Unit, U: e.U, Digits: 6}
}

// written reports whether a field has something to write.
func (f Field) written(e *Entry) (string, bool) {
	switch {
	case !f.Number():
		return *f.text(e), *f.text(e) != ""
	case f.Key == "value":
		return unit.Full(e.Value), e.Answered()
	}
	return unit.Full(*f.number(e)), *f.number(e) != 0
}

// Text returns the entry as one line, for Read.
func (e Entry) Text() string {
	pieces := []link.Piece{{Key: versionKey, Cells: []string{strconv.Itoa(Version)}}}
	for _, f := range Fields {
		if text, ok := f.written(&e); ok {
			pieces = append(pieces, link.Piece{Key: f.Key, Cells: []string{text}})
		}
	}
	return link.Join(append(pieces, link.Split(e.Other)...))
}

// Read returns the entry that a text of Entry.Text holds. Other texts are
// ErrNewer, or an error that says what is damaged.
func Read(text string) (Entry, error) {
	if len(text) > MostEntry {
		return Entry{}, errLong
	}
	var e Entry
	var other []link.Piece
	version, values := "", make([]*string, len(Fields)) // nil where none is given
	for _, p := range link.Split(text) {
		value := strings.Join(p.Cells, ",")
		i := slices.IndexFunc(Fields, func(f Field) bool { return f.Key == p.Key })
		// Of two with the same key the first one counts.
		switch {
		case p.Key == versionKey && version == "":
			version = value
		case i >= 0 && values[i] == nil:
			values[i] = &value
		case i < 0 && p.Key != versionKey && p.Key != "" && !slices.ContainsFunc(other, func(o link.Piece) bool { return o.Key == p.Key }):
			other = append(other, link.Piece{Key: p.Key, Cells: []string{value}})
		}
	}
	switch v, err := strconv.Atoi(version); {
	case err != nil || v < 1:
		return Entry{}, errors.New("not an entry of the log")
	case v > Version:
		return Entry{}, ErrNewer
	}
	valued := false
	for i, f := range Fields {
		switch {
		case values[i] == nil:
		case f.Number():
			v, err := strconv.ParseFloat(*values[i], 64)
			if err != nil {
				return Entry{}, errors.New(quote(f.Key) + " is " + quote(*values[i]) + ": not a number")
			}
			*f.number(&e) = v
			valued = valued || f.Key == "value"
		default:
			*f.text(&e) = *values[i]
		}
	}
	e.Other = link.Join(other)
	return e.checked(valued)
}

// checked returns the entry tidied, or an error that says what is wrong with it.
func (e Entry) checked(valued bool) (Entry, error) {
	e = e.tidy()
	switch {
	case !isID(e.ID):
		return Entry{}, errors.New("its id is " + quote(e.ID) + ": small letters, digits and hyphens belong there")
	case e.Date == "":
		return Entry{}, errors.New("it has no date")
	case !IsDate(e.Date):
		return Entry{}, errors.New("its date is " + quote(e.Date) + ": a date looks like 2026-11-25 or 2026-11-25T10:03")
	case !isSlug(e.Page):
		return Entry{}, errors.New("its page is " + quote(e.Page) + ": the name of a page belongs there, such as measure")
	case e.Sheet == "":
		return Entry{}, errors.New("it has no sheet")
	case !unit.Finite(e.Value) || !unit.Finite(e.U) || e.U < 0:
		return Entry{}, errors.New("its value or its uncertainty is no number that can be")
	case e.Answered() != valued:
		return Entry{}, errors.New("a result needs both value and output")
	}
	if !e.Answered() {
		e.Label, e.Unit, e.U, e.Verdict = "", "", 0, ""
	}
	return e, nil
}

// mostID is how long an ID may be.
const mostID = 40

const letters = "abcdefghijklmnopqrstuvwxyz"

func isID(s string) bool   { return madeOf(s, letters+"0123456789-") }
func isSlug(s string) bool { return madeOf(s, letters) }

// madeOf reports whether a text is short, not empty, and made of characters.
func madeOf(s, characters string) bool {
	for i := range len(s) {
		if strings.IndexByte(characters, s[i]) < 0 {
			return false
		}
	}
	return s != "" && len(s) <= mostID
}

func quote(s string) string {
	if r := []rune(s); len(r) > 60 {
		s = string(r[:60]) + "…"
	}
	return "“" + s + "”"
}
