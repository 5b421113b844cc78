package form

import (
	"maps"
	"slices"
	"strings"

	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// MostAlone is how many changes there may be for the effect of each by itself to be worked
// out.
const MostAlone = 12

// A Difference is an entry that differs from the sheet before.
type Difference struct {
	Key           string
	Row           int
	Name          string // of the entry
	Before, After string // as typed; empty where nothing was
	Alone         *report.Answer
}

// A Comparison is what differs between two states of a sheet. Its changes may
// be the person's own, or those of the sender of a reply.
type Comparison struct {
	Theirs        bool // they came with the link
	Differences   []Difference
	Before, After *report.Answer // nil where there is no result
}

// HasBefore reports whether there is a sheet to compare with.
func (f *Form) HasBefore() bool { return f.before != nil }

// Compare returns what differs from the sheet as it was received, or, while a
// reply is untouched, from the one that it replies to; nil if nothing does.
func (f *Form) Compare() *Comparison {
	if f.before == nil {
		return nil
	}
	was := f.with(f.before)
	was.workOut()
	c := &Comparison{Theirs: f.sent != nil, Before: was.report.Answer, After: f.report.Answer}
	for _, field := range f.fields {
		c.Differences = append(c.Differences, f.differencesOf(was, field)...)
	}
	if len(c.Differences) == 0 {
		return nil
	}
	if len(c.Differences) > 1 && len(c.Differences) <= MostAlone {
		for i := range c.Differences {
			c.Differences[i].Alone = f.alone(c.Differences[i])
		}
	}
	return c
}

// with is the same form with other text, read and not worked out.
func (f *Form) with(text map[string][]string) *Form {
	g := untyped(f.Page)
	g.machine = f.machine
	for key, cells := range text {
		if field, ok := g.Field(key); ok {
			g.take(field, cells)
		}
	}
	g.readCells()
	return g
}

// alone is the answer with nothing but one change made.
func (f *Form) alone(d Difference) *report.Answer {
	text := maps.Clone(f.before)
	text[d.Key] = f.text[d.Key]
	if d.Row >= 0 {
		cells := slices.Clone(f.before[d.Key]) // as many as now
		cells[d.Row] = f.Text(d.Key, d.Row)
		text[d.Key] = cells
	}
	changed := f.with(text)
	changed.workOut()
	return changed.report.Answer
}

// differencesOf compares a field that applies now, cell by cell, or as a whole where rows came or
// went: which of them it was is not known.
func (f *Form) differencesOf(was *Form, field sheet.Field) []Difference {
	old, _ := was.Field(field.Key)
	before, after := was.plainCells(old), f.plainCells(field)
	if slices.Equal(before, after) || !f.anyVisible(field) {
		return nil
	}
	if field.Group == nil || len(before) != len(after) {
		return []Difference{{Key: field.Key, Row: -1, Name: field.Label, Before: inWords(old, before), After: inWords(field, after)}}
	}
	var all []Difference
	for row := range before {
		if before[row] != after[row] {
			all = append(all, Difference{Key: field.Key, Row: row, Name: field.Name(row),
				Before: inWords(old, before[row:row+1]), After: inWords(field, after[row:row+1])})
		}
	}
	return all
}

// inWords is a field's text for people, in one line: options by their label, and
// the unit where the text brings none.
func inWords(field sheet.Field, cells []string) string {
	if choice := choiceOf(field); choice != nil && len(cells) == 0 && field.Group == nil {
		return choice.Options()[0].Label
	}
	texts := make([]string, len(cells))
	for i, cell := range cells {
		texts[i] = labelled(field, cell)
		if texts[i] == "" && len(cells) > 1 {
			texts[i] = "–"
		}
	}
	unit := unitOf(field)
	if strings.Join(cells, "") == "" || slices.ContainsFunc(cells, NamesUnit) {
		unit = "" // none is put behind all of them
	}
	if unit != "" && !strings.HasPrefix(unit, "°") {
		unit = " " + unit
	}
	return strings.Join(texts, ", ") + unit
}

// labelled is a cell's text, or the label of the option that it chooses.
func labelled(field sheet.Field, cell string) string {
	options := optionsOf(field)
	if choiceOf(field) != nil && cell == "" {
		return options[0].Label
	}
	for _, o := range options {
		if o.Word == cell {
			return o.Label
		}
	}
	return cell
}

// optionsOf are those of a field to tick or to choose from, nil of any other.
func optionsOf(field sheet.Field) []sheet.Option {
	if checks, ok := field.Cells.(*sheet.Checks); ok {
		return checks.Options()
	} else if choice := choiceOf(field); choice != nil {
		return choice.Options()
	}
	return nil
}

func choiceOf(field sheet.Field) *sheet.Choice {
	if field.Cells.Len() > 0 {
		if choice, ok := field.Cells.At(0).(*sheet.Choice); ok {
			return choice
		}
	}
	return nil
}

// ReplyFragment is ShareFragment with what the sheet was before, for the same
// comparison on the receiver's page.
func (f *Form) ReplyFragment() string { return link.Join(f.claimed(f.compared())) }

// AddressFragment is Fragment with what the sheet was before, for the page's own
// address: a page that is loaded again still knows it.
// While a received sheet is untouched it is the link that brought it.
func (f *Form) AddressFragment() string {
	if f.sent != nil && f.card == "" {
		return f.link
	}
	pieces := f.compared()
	if f.card != "" {
		if pieces == nil {
			pieces = []link.Piece{versionPiece()}
		}
		pieces = append(pieces, link.Piece{Key: CardKey, Cells: []string{f.card}})
	}
	return link.Join(pieces)
}

// CardKey is where a person is in Run the test. It is in addresses alone: a link that is shared, or
// an entry of the log, is of a sheet, not of somebody at it.
const CardKey = "card"

// Card is the text under CardKey; SetCard goes there.
func (f *Form) Card() string { return f.card }

func (f *Form) SetCard(card string) { f.card = card }

// compared are the pieces of the sheet and of what its changed fields were.
func (f *Form) compared() []link.Piece {
	text := f.plainText()
	pieces := f.piecesOf(text)
	if f.before == nil {
		return pieces
	}
	if pieces == nil { // emptied, which is a change too
		pieces = []link.Piece{versionPiece()}
	}
	for _, field := range f.fields {
		before := f.before[field.Key]
		if slices.Equal(before, text[field.Key]) {
			continue
		}
		if len(before) == 0 {
			before = []string{""}
		}
		pieces = append(pieces, link.Piece{Key: link.WasMark + field.Key, Cells: before})
	}
	remark := Remark(f.remark)
	if f.sent != nil {
		remark = f.told // it is handed on as it came
	}
	if remark != "" {
		pieces = append(pieces, link.Piece{Key: link.RemarkKey, Cells: []string{remark}})
	}
	return pieces
}

// Told is the remark that came with a link, empty if there was none.
func (f *Form) Told() string { return f.told }

// Remark is what was typed to go with a reply, which has it as one line.
func (f *Form) Remark() string { return f.remark }

// SetRemark has a remark go with a reply.
func (f *Form) SetRemark(text string) { f.remark = text }

// AsReceived is the fragment that brings back the sheet to compare with; empty
// if there is none.
func (f *Form) AsReceived() string {
	if f.origin != "" {
		return f.origin
	}
	if f.before == nil {
		return ""
	}
	return f.with(f.before).Fragment()
}

// takeWas reads what a field held before. It reports whether it is one.
func (f *Form) takeWas(was map[string][]string, p link.Piece) bool {
	key, marked := strings.CutPrefix(p.Key, link.WasMark)
	field, known := f.Field(key)
	if !marked || !known || p.Cells == nil || was[key] != nil {
		return false
	}
	was[key] = p.Cells[:min(len(p.Cells), f.most(field))]
	return true
}

// receiveSheet notes what a link brought, to compare with.
func (f *Form) receiveSheet(was map[string][]string) {
	if len(was) > 0 {
		before := maps.Clone(f.plainText())
		maps.Copy(before, was)
		f.before = f.with(before).plainText()
	}
	if f.received != nil { // it comes from somebody, or out of the log
		f.sent = f.plainText()
	} else { // it is this page's own address
		f.remark, f.told = f.told, ""
	}
}
