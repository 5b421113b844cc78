package run

import (
	"slices"
	"strconv"
	"strings"

	"striderule/calc/lists"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

func (t Test) unit() string {
	if t.isRotary() {
		return degrees
	}
	return millimetres
}

// show is a length or an angle with its unit.
func (t Test) show(v float64) string { return unit.Trim(v, 6) + t.unit() }

// A lot is what to see to before the first run.
type lot struct {
	says   string
	words  string   // of trial.Readiness
	points []string // where those of the axis are its own
}

var (
	feedLots = []lot{
		{says: seeToFilament, words: "filament,path,clean"},
		{says: seeToController, words: "flow,volume,relative,long"},
		{says: seeToDriver, words: "driver,feeder"},
	}
	linearLots = []lot{{says: seeToAxis, points: []string{wayClear, usualTension, toolAlong}}}
	rotaryLots = []lot{{says: seeToAxis, points: []string{cablesClear, usualTension, discFixed}}}
)

func (t Test) lots() []lot {
	switch {
	case t.isFeed() && t.IsCold():
		return append(feedLots[:3:3], lot{says: seeToCold, points: []string{offThePath, guardOff}})
	case t.isFeed():
		return append(feedLots[:3:3], lot{says: seeToHot, points: []string{heated, loaded}})
	case t.isRotary():
		return rotaryLots
	}
	return linearLots
}

// Points are what to see to at a card of Ready.
func (t Test) Points(c Card) []string {
	l := t.lots()[c.N]
	points := lists.Concat(l.points)
	for _, o := range trial.Readiness {
		if slices.Contains(listed(l.words), o.Word) {
			points = append(points, readyPoint.Fill("check", o.Label, "hint", o.Hint))
		}
	}
	return points
}

// Cautions are those of a card.
func (t Test) Cautions(c Card) []report.Note {
	ids := ""
	switch {
	case c.Step != Care:
	case t.isRotary():
		ids = "stay,turn,rollers"
	case !t.isFeed():
		ids = "stay,range,rollers"
	case t.IsCold():
		ids = "stay,cold,guard,rollers"
	default:
		ids = "stay,hot,rollers"
	}
	var notes []report.Note
	for _, id := range listed(ids) {
		notes = append(notes, report.CautionOf(id))
	}
	return notes
}

// Head says where in the test a card is.
func (t Test) Head(c Card) string {
	n, of := strconv.Itoa(c.N+1), t.Runs()
	switch {
	case !c.inRun():
		return heads[c.Step]
	case c.Check:
		return checkHead.Fill("n", n)
	case of > c.N:
		return runOfHead.Fill("n", n, "all", strconv.Itoa(of))
	}
	return runHead.Fill("n", n)
}

// sort is that of the test, as the tables of sentences have it.
func (t Test) sort() string {
	switch {
	case t.isMark() && t.Key(Card{Step: Mark}) != "":
		return "each"
	case t.isMark():
		return "mark"
	case t.isFeed() && t.IsCold():
		return "cut"
	case t.isFeed():
		return "fed"
	case t.isSides():
		return "sides"
	}
	return t.choice("axis")
}

// saidOf is what a table has for a card: of its very entry or sort of test, else of any.
func (t Test) saidOf(table word.Table, c Card) word.Template {
	of := t.sort()
	switch {
	case c.Step == Ask, c.Step == Choose:
		of = t.Key(c)
	case c.Step == Care && !t.isFeed() && !t.isSaid(Card{}):
		of = "later"
	}
	step := c.Step.String()
	if says := table.Of(step + " " + of); says != "" {
		return word.Template(says)
	}
	return word.Template(table.Of(step))
}

// Says is what to do at a card, in one sentence; empty where the report says it.
func (t Test) Says(c Card) string {
	switch {
	case c.Step == Ready:
		return t.lots()[c.N].says
	case c.Step >= Still && c.Step <= Gone:
		title, _ := t.Trouble(c)
		return title
	}
	low, far := t.reach()
	return t.saidOf(sayings, c).Fill("wanted", t.show(t.Wanted(c)), "mark", t.show(t.mark(c)), "low", t.show(low), "far", t.show(far), "more", t.show(slack))
}

// reach is between which positions the axis will move: of an extruder, how far it feeds.
func (t Test) reach() (low, far float64) {
	rows := 1
	if t.rowKey() != "" {
		rows = maxRuns
	}
	for n := range rows {
		w := t.Wanted(Card{Step: Move, N: n})
		low, far = min(low, w), max(far, w)
	}
	if !t.isFeed() {
		far += slack
	}
	if t.isSides() {
		low -= slack
	}
	return low, far
}

// Hint is what else to know at a card.
func (t Test) Hint(c Card) string {
	if c.Step == Read {
		return t.expected(c)
	}
	hint := string(t.saidOf(hints, c))
	if hint == "" && c.Step == Ask {
		return t.Form.Label(t.Key(c))
	}
	return hint
}

// expected says what a reading should be, and what it was the last time.
func (t Test) expected(c Card) string {
	wanted := t.Wanted(c)
	if t.isMark() {
		wanted = t.mark(c) - wanted
	}
	if wanted <= 0 {
		return ""
	}
	says, last := about, ""
	if before := (Card{Step: Read, N: c.N - 1, Check: c.Check}); c.N > 0 && t.rowKey() == "" && t.Text(before) != "" {
		says, last = aboutAndLast, t.Text(before)
	}
	return says.Fill("about", t.show(wanted), "last", last)
}

// Trouble says what to look at where nothing moved, it went the other way, or the mark went in.
func (t Test) Trouble(c Card) (title string, blocks []report.Block) {
	cause := trial.ErrStill
	switch c.Step {
	case Gone:
		return goneTitle, []report.Block{report.DoubtNote(goneSays)}
	case Back:
		cause = trial.ErrBack
	}
	return trial.Stuck(cause, t.isFeed(), "")
}

// Usual is what is usual for an entry that a card asks for; empty if nothing is.
func (t Test) Usual(c Card) string {
	key := t.Key(c)
	if key == "mark" {
		if was := t.mark(c); was > 0 { // it went in
			return unit.PlainTrim(2*was, 7)
		}
		return unit.PlainTrim(t.Wanted(c)+25, 7)
	}
	texts := usual.Of(key + " " + t.choice("axis"))
	if texts == "" {
		texts = usual.Of(key)
	}
	all := strings.Fields(texts)
	if len(all) == 0 {
		return ""
	}
	return all[c.Row()%len(all)]
}

// Options are what can be chosen at a card; nil where something is typed.
func (t Test) Options(c Card) []sheet.Option {
	if f, ok := t.Form.Field(t.Key(c)); ok {
		if choice, ok := f.Cells.At(0).(*sheet.Choice); ok {
			return choice.Options()
		}
	}
	return nil
}
