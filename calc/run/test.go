package run

import (
	"slices"
	"strings"

	"striderule/calc/form"
	"striderule/calc/page/trial"
	"striderule/calc/sheet"
)

// A Test is a sheet of Calibrate as a test to be made.
type Test struct{ Form *form.Form }

// choice is the word that is chosen under a key.
func (t Test) choice(key string) string {
	f, _ := t.Form.Field(key)
	return f.Cells.At(0).String()
}

func (t Test) isFeed() bool   { return t.choice("axis") == "feed" }
func (t Test) isRotary() bool { return t.choice("axis") == "rotary" }
func (t Test) isSides() bool  { return !t.isFeed() && t.choice("trip") == "sides" }

// isMark reports whether what remains to a mark is read.
func (t Test) isMark() bool { return t.isFeed() && t.choice("read") == "rest" }

// IsCold reports whether the filament does not go through the hot end.
func (t Test) IsCold() bool { return t.choice("path") == "open" }

// firstShown is the one of these entries, with a suffix, that the test has; empty if it has none.
func (t Test) firstShown(keys, suffix string) string {
	for _, key := range listed(keys) {
		if f, ok := t.Form.Field(key + suffix); ok && t.Form.Visible(f, 0) {
			return f.Key
		}
	}
	return ""
}

// steps are those of each run.
func (t Test) steps() []Step {
	steps := []Step{Choose, Zero, Move, Read, Return, After}
	switch {
	case t.isSides():
		steps = []Step{Choose, ToUp, Up, ToDown, Down, After}
	case t.isFeed():
		steps = []Step{Choose, Mark, Move, Read, After}
	}
	if t.rowKey() == "" {
		return steps[1:]
	}
	return steps
}

// rowKey is the entry that each run has of its own; empty if all are alike.
func (t Test) rowKey() string { return t.firstShown(typedAt[Choose], "") }

// typedAt are the entries that are typed at a step.
var typedAt = [Save + 1]string{Choose: "at,want,wantdeg,target,targetdeg", Mark: "eachmark", Read: "rest,fed,moved,turned", Up: "up,updeg", Down: "down,downdeg"}

// suffix ends the keys of check runs.
func (c Card) suffix() string {
	if c.Check {
		return trial.Again
	}
	return ""
}

// Key is the entry that is typed or chosen at a card; empty if none is.
func (t Test) Key(c Card) string {
	if c.Step == Ask {
		return askKeys[c.N]
	}
	return t.firstShown(typedAt[c.Step], c.suffix())
}

// Enter types or chooses that entry.
func (t Test) Enter(c Card, text string) { t.Form.SetAlone(t.Key(c), c.Row(), text) }

// Text is what stands there.
func (t Test) Text(c Card) string { return t.Form.Text(t.Key(c), c.Row()) }

// Row is the row in which that entry stands.
func (c Card) Row() int {
	if c.Step == Ask {
		return 0
	}
	return c.N
}

// IsReading reports whether something that was measured is typed at a card.
func (c Card) IsReading() bool { return c.Step == Read || c.Step == Up || c.Step == Down }

// hasChecks reports whether the form has room for runs after the change.
func (t Test) hasChecks() bool { return t.Key(Card{Step: Read, Check: true}) != "" }

// maxRuns is how many runs there may be.
const maxRuns = sheet.MostRows

// isRead reports whether a run has its last reading.
func (t Test) isRead(n int, check bool) bool {
	c := Card{Step: Read, N: n, Check: check}
	if t.isSides() {
		c.Step = Down
	}
	return strings.TrimSpace(t.Form.Text(t.Key(c), n)) != ""
}

// Last is the last run that was read; -1 if none was.
func (t Test) Last(check bool) int {
	n := maxRuns - 1
	for n >= 0 && !t.isRead(n, check) {
		n--
	}
	return n
}

// Runs is how many runs the sheet has in mind: those planned, or those that have something of their
// own in it; 0 if that is not known.
func (t Test) Runs() int {
	n, ok := t.Form.NumberOf("planned", t.Form.Text("planned", 0))
	runs := 0
	if ok {
		runs = int(n)
	}
	if key := t.rowKey(); key != "" {
		for row := range maxRuns {
			if t.Form.Text(key, row) != "" {
				runs = max(runs, row+1)
			}
		}
	}
	return runs
}

// Start is the card to begin with, or to go on with.
func (t Test) Start() Card {
	if c, ok := parse(t.Form.Card()); ok && t.has(c) {
		return c
	}
	check := t.hasChecks() && t.Last(true) >= 0
	switch last := t.Last(check); {
	case last >= 0:
		return Card{Step: After, N: last, Check: check}
	case t.Form.Fragment() == "":
		return Card{}
	}
	return t.nextAsk(0)
}

// has reports whether the test has a card.
func (t Test) has(c Card) bool {
	switch {
	case c.N < 0 || c.N >= maxRuns, c.Check && !(c.inRun() && t.hasChecks()):
		return false
	case c.Step == Ask:
		return t.firstShown(askKeys[c.N], "") != ""
	case c.Step == Ready:
		return c.N < len(t.lots())
	case c.Step == Slack:
		return t.isFeed()
	case c.Step == Gone:
		return t.isMark()
	case c.Step == Set:
		return t.Form.Report().Set != ""
	case c.Step == Care, c.Step >= Still:
		return true
	}
	return slices.Contains(t.steps(), c.Step) && (!c.moves() || t.isSaid(c))
}

// isSaid reports whether it is said how far the run of a card moves, and not wrongly how fast.
func (t Test) isSaid(c Card) bool {
	key, row := t.rowKey(), c.N
	if key == "" || key == "at" {
		key, row = t.firstShown("asked,askeddeg", ""), 0
	}
	_, ok := t.Form.NumberOf(key, t.Form.Text(key, row))
	return ok && t.Form.ProblemAt("speed", 0) == "" && t.Form.ProblemAt("at", c.N) == ""
}

// isOpen reports whether an entry is not said yet, or not so that the test can be made with it.
func (t Test) isOpen(key string) bool {
	return strings.TrimSpace(t.Form.Text(key, 0)) == "" || t.Form.ProblemAt(key, 0) != "" || key == "mark" && t.isInside(t.number(key, 0))
}

// isOpenIn reports that of what a run has of its own.
func (t Test) isOpenIn(row int) bool {
	key := t.rowKey()
	return strings.TrimSpace(t.Form.Text(key, row)) == "" || t.Form.ProblemAt(key, row) != ""
}

// isInside reports whether a mark would go in.
func (t Test) isInside(mark float64) bool { return mark <= t.Wanted(Card{Step: Move}) }

// nextAsk asks for the first entry from one on that is not said, or is what comes then. The sort of
// axis counts as said: what else is known would be of no use otherwise.
func (t Test) nextAsk(from int) Card {
	for n, key := range askKeys {
		if n >= max(1, from) && t.firstShown(key, "") != "" && t.isOpen(key) {
			return Card{N: n}
		}
	}
	switch last := t.Last(false); {
	case last >= 0: // asked in the midst of it
		return t.firstOf(last+1, false)
	case t.Form.Text("done", 0) != "":
		return Card{Step: Care}
	}
	return Card{Step: Ready}
}

// Next is the card behind another one; or what is still to be asked before it.
func (t Test) Next(c Card) Card {
	switch next := t.behind(c); {
	case t.has(next):
		return next
	case next.moves() && slices.Contains(t.steps(), Choose) && t.isOpenIn(next.N):
		return Card{Step: Choose, N: next.N, Check: next.Check}
	}
	return t.nextAsk(0)
}

func (t Test) behind(c Card) Card {
	switch c.Step {
	case Ask:
		return t.nextAsk(c.N + 1)
	case Ready:
		if c.N+1 < len(t.lots()) {
			return Card{Step: Ready, N: c.N + 1}
		}
		return Card{Step: Care}
	case Care:
		if t.isFeed() {
			return Card{Step: Slack}
		}
		return t.firstOf(t.Last(false)+1, false)
	case Slack:
		return t.firstOf(t.Last(false)+1, false)
	case After:
		return t.State(c).Next
	case Still, Back:
		return t.tryAgain(c)
	case Gone:
		if t.Key(Card{Step: Mark, Check: c.Check}) != "" || c.N > 0 || c.Check {
			return Card{Step: Mark, N: c.N, Check: c.Check}
		}
		return AskFor("mark")
	case Result:
		if t.Form.Report().Set != "" {
			return Card{Step: Set}
		}
		return Card{Step: Save}
	case Set:
		if t.isToBeChecked() {
			return t.firstOf(0, true)
		}
		return Card{Step: Save}
	case Save:
		return c
	}
	steps := t.steps()
	c.Step = steps[slices.Index(steps, c.Step)+1]
	return c
}

// tryAgain is where a run goes on that did not move, or moved the other way.
func (t Test) tryAgain(c Card) Card {
	step := Move
	switch {
	case t.isSides():
		step = ToUp
	case c.Step == Back:
		return t.firstOf(c.N, c.Check)
	}
	return Card{Step: step, N: c.N, Check: c.Check}
}

// isToBeChecked reports whether check runs come after the change.
func (t Test) isToBeChecked() bool {
	a := t.Form.Report().Answer
	return a != nil && !a.Verdict.Mistake && t.hasChecks() && t.Last(true) < 0
}

// firstOf is the card that a run begins with.
func (t Test) firstOf(n int, check bool) Card {
	steps := t.steps()
	c := Card{Step: steps[0], N: min(n, maxRuns-1), Check: check}
	if c.Step == Choose && !t.isOpenIn(c.N) {
		c.Step = steps[1]
	}
	return c
}

// Troubles are the cards of what may have gone wrong when a reading is due.
func (t Test) Troubles(c Card) []Card {
	if !c.IsReading() {
		return nil
	}
	last := Back
	if t.isMark() {
		last = Gone
	}
	var all []Card
	for c.Step = Still; c.Step <= last; c.Step++ {
		all = append(all, c)
	}
	return all
}

// Redo is the card that a run is made again from, its reading taken out; LeaveOut leaves it out, or
// counts it again.
func (t Test) Redo(c Card) Card {
	for _, step := range [...]Step{Read, Up, Down} {
		t.Enter(Card{Step: step, N: c.N, Check: c.Check}, "")
	}
	return t.firstOf(c.N, c.Check)
}

// asideKey is the entry that leaves a run out; empty if none can be left out.
func (t Test) asideKey(c Card) string { return t.firstShown("aside", c.suffix()) }

// CanLeaveOut reports whether a run can be left out; IsLeftOut whether it is.
func (t Test) CanLeaveOut(c Card) bool { return t.asideKey(c) != "" }

func (t Test) IsLeftOut(c Card) bool { return t.Form.Text(t.asideKey(c), c.N) != "" }

func (t Test) LeaveOut(c Card) {
	text := "yes"
	if t.IsLeftOut(c) {
		text = ""
	}
	t.Form.Set(t.asideKey(c), c.N, text)
}

// Done notes what was seen to at a card.
func (t Test) Done(c Card) {
	words := ""
	switch {
	case !t.isFeed():
	case c.Step == Ready:
		words = t.lots()[c.N].words
	case c.Step == Slack:
		words = "slack"
	case c.Step == Care && t.IsCold():
		words = "guard"
	}
	for _, word := range listed(words) {
		t.Form.Tick("done", word, true)
	}
}

// letter is that of the axis: as its template has it or the end of its name.
func (t Test) letter() string {
	template, letters := "", "E"
	switch {
	case t.isRotary():
		template, letters = t.Form.Text("linerotary", 0), "ABC"
	case !t.isFeed():
		template, letters = t.Form.Text("linetravel", 0), "XYZUVW"
	}
	before, _, _ := strings.Cut(template, "{")
	if t.Form.IsBrought("linetravel") || t.Form.IsBrought("linerotary") { // a stranger's
		before = ""
	}
	for _, text := range [...]string{before, t.Form.MachineText("axisname")} {
		if text != "" && strings.Contains(letters, text[len(text)-1:]) {
			return text[len(text)-1:]
		}
	}
	return letters[:1]
}
