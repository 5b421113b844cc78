package logbook

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// Version is that of the texts and files that are written.
const Version = 1

// MostEntry is how long an entry's text may be, in bytes.
const MostEntry = 20_000

// ErrNewer is the error of an entry's text of a version that is not known yet.
// It is whole, and belongs to whoever wrote it: leave it as it is.
var ErrNewer = errors.New(newerEntry)

var errLong = errors.New(longEntry)

// An Entry is one sheet that was saved, with what came out of it then. It holds keys where
// there are some, and no words of this version: what it says is put into words when it is
// shown (AxisName, ResultName, VerdictTitle).
type Entry struct {
	ID      string // small letters, digits, hyphens
	Date    string // by the device's clock: 2026-11-25, or 2026-11-25T10:03
	Machine string
	Axis    string // a word of axisNames, or the name that the person gave it
	Note    string
	Page    string  // the slug
	Sheet   string  // the link's fragment, with the result for its own check
	Output  string  // the ID of the headline; empty if the sheet gave no answer
	Label   string  // what the headline was called by a version that stored it
	Unit    string  // of Value and U
	Value   float64 // finite
	U       float64 // expanded uncertainty at 95%; 0 if there is none
	Verdict string  // the report's ID of it, or a title that is stored; empty where there is nothing to decide
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
	{Key: "id", Holds: holdsID, text: func(e *Entry) *string { return &e.ID }},
	{Key: "date", Holds: holdsDate, text: func(e *Entry) *string { return &e.Date }},
	{Key: "machine", Holds: holdsMachine, text: func(e *Entry) *string { return &e.Machine }},
	{Key: "axis", Holds: holdsAxis, text: func(e *Entry) *string { return &e.Axis }},
	{Key: "note", Holds: holdsNote, text: func(e *Entry) *string { return &e.Note }},
	{Key: "page", Holds: holdsPage, text: func(e *Entry) *string { return &e.Page }},
	{Key: "sheet", Holds: holdsSheet, text: func(e *Entry) *string { return &e.Sheet }},
	{Key: "output", Holds: holdsOutput, text: func(e *Entry) *string { return &e.Output }},
	{Key: "label", Holds: holdsLabel, text: func(e *Entry) *string { return &e.Label }},
	{Key: "unit", Holds: holdsUnit, text: func(e *Entry) *string { return &e.Unit }},
	{Key: "value", Holds: holdsValue, number: func(e *Entry) *float64 { return &e.Value }},
	{Key: "u", Holds: holdsU, number: func(e *Entry) *float64 { return &e.U }},
	{Key: "verdict", Holds: holdsVerdict, text: func(e *Entry) *string { return &e.Verdict }},
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

// Of returns the entry that saves a form, without an ID: a Book gives it one. The axis is
// as the person wrote it. It is false while there is nothing to save: nothing typed, or
// more than a link can carry.
func Of(f *form.Form, date, machine, axis, note string) (Entry, bool) {
	e := entryOf(f)
	e.Date, e.Machine, e.Note = date, machine, note
	e.Axis = AxisKey(strings.TrimSpace(axis))
	if e.Sheet == "" || len(e.Sheet) > link.MostLink {
		return Entry{}, false
	}
	return e.tidy(), true
}

// entryOf returns what a form tells of an entry.
func entryOf(f *form.Form) Entry {
	e := Entry{Page: f.Page.Slug, Sheet: f.ShareFragment()}
	if a := f.Report().Answer; a != nil {
		e.Output, e.Unit, e.Value, e.U = a.ID, a.Unit, a.Value, a.U
		if a.Verdict != nil {
			e.Verdict = a.Verdict.ID()
		}
	}
	return e
}

// tidy makes every text one line without blanks at its ends.
func (e Entry) tidy() Entry {
	for _, f := range Fields {
		if !f.Number() {
			t := f.text(&e)
			*t = strings.TrimSpace(word.Shown(*t))
		}
	}
	return e
}

// Answered reports whether the sheet gave a result.
func (e Entry) Answered() bool { return e.Output != "" }

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
		return Entry{}, errors.New(noEntry)
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
				return Entry{}, errors.New(notANumber.Fill("key", quote(f.Key), "text", quote(*values[i])))
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
		return Entry{}, errors.New(badID.Fill("id", quote(e.ID)))
	case e.Date == "":
		return Entry{}, errors.New(noDate)
	case !IsDate(e.Date):
		return Entry{}, errors.New(badDate.Fill("date", quote(e.Date)))
	case !isSlug(e.Page):
		return Entry{}, errors.New(badPage.Fill("page", quote(e.Page)))
	case e.Sheet == "":
		return Entry{}, errors.New(noSheet)
	case !unit.Finite(e.Value) || !unit.Finite(e.U) || e.U < 0:
		return Entry{}, errors.New(badNumber)
	case e.Answered() != valued:
		return Entry{}, errors.New(valueWithoutOutput)
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
