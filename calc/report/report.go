package report

import (
	"slices"

	"striderule/calc/unit"
	"striderule/calc/word"
)

// A Report is a page's answer: the headline and the parts below it.
type Report struct {
	Answer   *Answer // nil while something is missing or wrong
	Parts    []Part
	Problems []Problem // found while solving: entries that do not fit together
	Remarks  Remarks   // beside fields
	Picture  *Drawing  // of the test or the drivetrain, whose letters are those of the fields
	Unread   *Drawing  // stands in its place while an entry that it shows is wrong: without readings
	Care     string    // the caution of whoever reads no other
	Assumed  []Assumed // of entries that are blank

	Set, SetKey string // what the answer has the person enter, as a link has it, and the key of such a setting
	Scatter     Scatter
}

// A Scatter is how the single runs of a test scattered, which another test of the axis can take
// for known from before; Key is the field for it.
type Scatter struct {
	Key    string
	SD     float64 // standard deviation, in the unit of that field
	Dof    float64 // degrees of freedom; 0 where the runs show none
	Wanted bool    // the runs are few, and nothing is known from before
}

// An Assumed is what a blank entry counts as.
type Assumed struct{ Key, Says string }

// A Problem is something wrong with an entry or a link, as a whole sentence
// that names the field, repeats what was typed and says what to write.
type Problem struct {
	Key  string // of the field; of the unknown piece if no field has it
	Row  int    // in a group, from 0
	Says string
}

// An Answer is the headline figure with what it means in one sentence.
type Answer struct {
	Figure
	Verdict *Verdict // nil where there is nothing to decide
	Says    Line
	Keep    *Figure  // what to leave as it is, where nothing is to be changed
	Instead *Part    // shown in place of the figure, where that alone would mislead
	Notes   []Note   // what would mislead who reads no further
	Needs   []string // keys without which it is withheld
}

// A Part is one section of a report. It is withheld while a field that it
// needs is wrong; the other parts stay.
type Part struct {
	ID     string // "apply": also the section's element id
	Title  string
	Needs  []string
	Brief  string // what it holds, in a few words, while it is folded
	Folded bool   // the why, opened on request
	Guide  bool   // what to do before there is anything to enter: folded
	Blocks []Block
}

// Missing is the ID of the part that asks for what an answer waits for.
const Missing = "missing"

// Needed returns the keys of the fields that an answer waits for: those that the first part in
// sight asks for.
func (r Report) Needed() (keys []string) {
	if r.Answer != nil {
		return nil
	}
	for _, p := range r.Parts {
		for _, b := range p.Blocks {
			if ask, ok := b.(Ask); ok && !p.Folded && !p.Guide {
				keys = append(keys, ask.Keys...)
			}
		}
		if keys != nil {
			break
		}
	}
	return keys
}

// Withhold takes out what needs a wrong key. The picture stays, as the fields have its letters.
func (r *Report) Withhold(wrong map[string]bool) {
	isWrong := func(key string) bool { return wrong[key] }
	if r.Answer != nil && slices.ContainsFunc(r.Answer.Needs, isWrong) {
		r.Answer, r.Set = nil, ""
	}
	var good []Part
	for _, p := range r.Parts {
		if !slices.ContainsFunc(p.Needs, isWrong) {
			good = append(good, p)
		}
	}
	r.Parts = good
	if r.Unread != nil && slices.ContainsFunc(r.Picture.keys(), isWrong) {
		r.Picture = r.Unread
	}
	r.Unread = nil
}

// Add puts parts at the end; nil stands for one that there is not.
func (r *Report) Add(parts ...*Part) {
	for _, p := range parts {
		if p != nil {
			r.Parts = append(r.Parts, *p)
		}
	}
}

// AddFirst puts a part before the others, behind the guides; nil stands for one that there
// is not.
func (r *Report) AddFirst(p *Part) {
	if p == nil {
		return
	}
	at := 0
	for at < len(r.Parts) && r.Parts[at].Guide {
		at++
	}
	r.Add(p)
	copy(r.Parts[at+1:], r.Parts[at:])
	r.Parts[at] = *p
}

// Add puts blocks at a part's end.
func (p *Part) Add(blocks ...Block) { p.Blocks = append(p.Blocks, blocks...) }

// Fold folds a part away: what it holds is said in a few words. nil stays nil.
func (p *Part) Fold(brief string) *Part {
	if p != nil {
		p.Folded, p.Brief = true, brief
	}
	return p
}

// Caution puts cautions at a part's end.
func (p *Part) Caution(ids ...string) {
	for _, id := range ids {
		p.Add(CautionOf(id))
	}
}

// A Figure is one computed number. The page holds it at full precision and
// shows the digits that make sense.
type Figure struct {
	_      unit.Uncompared
	ID     string // of the Output, with "-row" in tables; empty where a sentence repeats it
	Label  string
	Value  float64 // finite, in Unit
	Unit   string
	U      float64 // expanded uncertainty at 95 %, in Unit; 0 if there is none
	Like   float64 // shown with the digits of this uncertainty, but without it
	Digits int     // significant digits shown, unless U says
	Keep   bool    // keep zeros at the end: they were measured
	Chance bool    // a probability in percent: nobody can mean more than 99.9 or less than 0.1
}

// A Line is a sentence made of text and figures.
type Line []Span

// A Span is text, or a figure where Figure is set.
type Span struct {
	Text   string
	Figure *Figure
}

// Say makes a Line of a template and its parts: a name, then a string, a *Figure or a Line,
// and so on.
func Say(t word.Template, parts ...any) Line {
	var l Line
	t.Each(func(text string) { l = append(l, Span{Text: text}) }, func(name string) {
		for i := 0; i+1 < len(parts); i += 2 {
			if parts[i] != name {
				continue
			}
			switch p := parts[i+1].(type) {
			case string:
				l = append(l, Span{Text: p})
			case *Figure:
				l = append(l, Span{Figure: p})
			case Line:
				l = append(l, p...)
			}
			return
		}
		l = append(l, Span{Text: "{" + name + "}"}) // TestWords looks for parts that are not given
	})
	return l
}

// Text is a Line of text as it is, which may hold braces.
func Text(text string) Line { return Line{{Text: text}} }

// Show is a Line of a figure alone.
func Show(f *Figure) Line { return Line{{Figure: f}} }

// Together are whole sentences, one behind the other.
func Together(sentences ...Line) Line {
	var all Line
	for _, s := range sentences {
		if len(all) > 0 && len(s) > 0 {
			all = append(all, Span{Text: " "})
		}
		all = append(all, s...)
	}
	return all
}

// A FigureList is labelled numbers in the making.
type FigureList []Figure

// Add puts figures at the end.
func (l *FigureList) Add(figures ...*Figure) {
	for _, f := range figures {
		*l = append(*l, *f)
	}
}

// FiguresOf is a block of figures.
func FiguresOf(figures ...*Figure) Figures {
	var l FigureList
	l.Add(figures...)
	return Figures{l}
}

// Sentences are the items of a list in the making.
type Sentences []Line

// Say adds a sentence; see Say.
func (l *Sentences) Say(t word.Template, parts ...any) { *l = append(*l, Say(t, parts...)) }

// A Block is a piece of a part; the types below are all there are.
type Block interface{ block() }

type (
	// Para is a paragraph.
	Para struct{ Line }
	// Figures are labelled numbers.
	Figures struct{ All []Figure }
	// A Table has a heading for each column; a cell is a Line.
	Table struct {
		Caption string
		Head    []string
		Rows    [][]Line
		Folded  bool // opened on request
	}
	// Steps are to be done in order.
	Steps struct{ Items []Line }
	// Points are in no order.
	Points struct{ Items []Line }
	// A Code is text to copy as it is; with File it can be saved under that
	// name too. It may have several lines.
	Code struct {
		ID                string // "line": also of its element, with code- before it
		Label, Text, File string
		Of                []string // keys of the templates that it is made of
		Axes              string   // letters of the axes that those may name; any if empty
		Brought           bool     // one of them came with the link: it is not offered yet
	}
	// A Brought stands before what is made of templates that came with the link.
	Brought struct {
		Before string // the ID of that Code
		All    []TemplateText
		State  BroughtState
	}
	// A TemplateText is the template of a field: of its key and its label.
	TemplateText struct{ Key, Label, Text string }
	// A Note stands out.
	Note struct {
		Kind NoteKind
		Line
	}
	// An Ask says what is missing, by the names of its fields, and for what.
	Ask struct {
		Keys []string
		For  string // "travel per motor turn"
	}
	// A Go is the main thing to do next: it leads to the field of a key.
	Go struct{ Key, Text string }
	// Links hand over to another page, filled in.
	Links struct{ All []Link }
	// A Link is one of them.
	Link struct{ Text, Slug, Fragment string }
)

// A BroughtState is what becomes of templates that came with the link.
type BroughtState int

const (
	// ToAccept: nobody here has accepted them yet.
	ToAccept BroughtState = iota
	// Refused: nobody can, and nothing is made of them.
	Refused
	// Accepted: somebody here has, which can be taken back.
	Accepted
)

// ParaOf is a paragraph; see Say.
func ParaOf(t word.Template, parts ...any) Block { return Para{Say(t, parts...)} }

// PointsOf are points of plain text.
func PointsOf(items ...string) Block { return Points{sayEach(items)} }

// StepsOf are steps of plain text.
func StepsOf(items ...string) Block { return Steps{sayEach(items)} }

// sayEach makes a Line of each text.
func sayEach(texts []string) []Line {
	lines := make([]Line, len(texts))
	for i, t := range texts {
		lines[i] = Text(t)
	}
	return lines
}

// Row adds a row; a cell is a string, a *Figure or a Line.
func (t *Table) Row(cells ...any) {
	row := make([]Line, len(cells))
	for i, c := range cells {
		switch c := c.(type) {
		case Line:
			row[i] = c
		case *Figure:
			row[i] = Show(c)
		case string:
			row[i] = Text(c)
		}
	}
	t.Rows = append(t.Rows, row)
}

// TipNote is a note of what is good to know.
func TipNote(t word.Template, parts ...any) Note { return Note{Tip, Say(t, parts...)} }

// DoubtNote is a note of what may mislead.
func DoubtNote(t word.Template, parts ...any) Note { return Note{Doubt, Say(t, parts...)} }

// CautionNote is a note of what may do harm; see CautionOf for the suite's own.
func CautionNote(t word.Template, parts ...any) Note { return Note{Caution, Say(t, parts...)} }

// A NoteKind is why a note stands out.
type NoteKind int

const (
	// Tip: good to know.
	Tip NoteKind = iota
	// Doubt: the answer may mislead; the note says what would cure it.
	Doubt
	// Caution: somebody or something can come to harm.
	Caution
)

func (Para) block()    {}
func (Figures) block() {}
func (Table) block()   {}
func (Steps) block()   {}
func (Points) block()  {}
func (Code) block()    {}
func (Brought) block() {}
func (Note) block()    {}
func (Ask) block()     {}
func (Go) block()      {}
func (Links) block()   {}
