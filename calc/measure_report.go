package calc

import (
	"math"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/measure"
	"striderule/calc/unit"
)

// settingDigits is how precisely a measured setting is shown: a hundredth of
// what a caliper over 100 mm can tell.
const settingDigits = 5

// lineDigits is how precisely it is sent.
const lineDigits = 6

func (a *measured) length(id, label string, v float64) Figure {
	return Figure{ID: id, Label: label, Value: v, Unit: a.unit, Digits: 5}
}

func (a *measured) setting(id string, s drive.Setting) Figure {
	return settingFigure(id, s, a.sheet.rotary(), settingDigits, true)
}

// old is a setting as the person gave it.
func (a *measured) old(id string, s drive.Setting) Figure {
	return settingFigure(id, s, a.sheet.rotary(), 7, false)
}

func (a *measured) corrected() drive.Setting { return a.now.Corrected(a.c) }

func (a *measured) percentOff(id string) Figure {
	return Figure{ID: id, Label: "Error", Value: 100 * a.err, Unit: "%", Digits: 3}
}

// size is the error without its sign, for sentences that say the direction.
func (a *measured) size() Figure {
	f := a.percentOff("")
	f.Value = math.Abs(f.Value)
	return f
}

// verb is what the axis did.
func (a *measured) verb() string {
	switch a.sheet.Axis.Word {
	case "feed":
		return "fed"
	case "rotary":
		return "turned"
	}
	return "moved"
}

func (a *measured) answer() *Answer {
	word := conventionWords[a.now.Convention]
	f := a.setting(word, a.corrected())
	f.Label = "New setting, " + strings.ToLower(f.Label)
	moved := say("It "+a.verb()+" ", a.length("", "", a.mean), " where ", a.length("", "", a.asked), " was asked: ")
	switch {
	case a.mean == a.asked:
		moved = append(moved, say("exactly right. Leave the setting as it is.")...)
	case a.err < 0:
		moved = append(moved, say(a.size(), " too little.")...)
	default:
		moved = append(moved, say(a.size(), " too much.")...)
	}
	return &Answer{Figure: f, Says: moved, Needs: a.allKeys}
}

// missing asks for what the answer needs.
func (a *measured) missing() (Part, bool) {
	var keys []string
	if !a.hasNow {
		_, key, _ := a.sheet.setting(a.sheet.rotary())
		keys = append(keys, key)
	}
	if !a.hasAsked {
		_, key, _ := a.sheet.asked()
		keys = append(keys, key)
	}
	if len(a.runs) == 0 {
		keys = append(keys, a.runKeys...)
		if a.sheet.Mark.Given && a.runKeys[0] == "mark" {
			keys = append(keys[:len(keys)-2], "rest")
		}
	}
	return Part{ID: "missing", Title: "Still needed", Blocks: []Block{Ask{keys, "the new setting"}}}, len(keys) > 0
}

// readings shows each run and what they have in common.
func (a *measured) readings() (Part, bool) {
	if len(a.runs) == 0 {
		return Part{}, false
	}
	mark := a.runKeys[len(a.runKeys)-1] == "rest"
	unit := ", " + a.unit // once, in the head: five columns must fit on a phone
	t := Table{Caption: "Runs", Head: []string{"Run", capital(a.verb()) + unit}}
	if mark {
		t.Head = []string{"Run", "Mark" + unit, "Left" + unit, "Fed" + unit}
	}
	if a.hasAsked {
		t.Head = append(t.Head, "Error, %")
	}
	cell := func(id string, v float64) Line { return say(Figure{ID: id, Value: v, Digits: 5}) }
	for _, r := range a.runs {
		n := itoa(r.row + 1)
		cells := []Line{say(n)}
		if mark {
			cells = append(cells, cell("", r.mark), cell("", r.rest))
		}
		cells = append(cells, cell("moved-"+n, r.moved))
		if a.hasAsked {
			cells = append(cells, say(Figure{ID: "off-" + n, Value: 100 * measure.Error(a.asked, r.moved), Digits: 3}))
		}
		t.Rows = append(t.Rows, cells)
	}
	figures := []Figure{a.length("mean", "Mean", a.mean)}
	if a.hasSpread {
		figures = append(figures, Figure{ID: "spread", Label: "Spread (standard deviation)", Value: a.spread, Unit: a.unit, Digits: 2, Keep: true})
	}
	if a.hasAsked {
		figures = append(figures, a.percentOff("error"),
			Figure{ID: "correction", Label: "Correction (commanded / measured)", Value: a.c, Digits: 6})
	}
	p := Part{ID: "runs", Title: "What the readings say", Needs: a.readKeys, Blocks: []Block{t, Figures{figures}}}
	p.Blocks = append(p.Blocks, a.doubts()...)
	return p, true
}

// doubts are what would make the answer misleading, each with its cure.
func (a *measured) doubts() []Block {
	var notes []Block
	doubt := func(parts ...any) { notes = append(notes, Note{Doubt, say(parts...)}) }
	if !a.hasSpread {
		doubt("One run cannot show how much the readings scatter. Mark anew and make at least three.")
	} else if a.hasAsked && a.spread > math.Abs(a.asked-a.mean) && a.mean != a.asked {
		doubt("The runs differ among themselves by more than they are off. Make more runs, or longer ones, before you change anything.")
	}
	if a.hasAsked && a.sheet.Mark.Given && float64(a.sheet.Mark.Value) <= a.asked && a.runKeys[0] == "mark" {
		doubt("The mark is not farther away than the commanded length: it would run into the drive. Mark it some 20 mm farther.")
	}
	if a.hasAsked && math.Abs(a.err) > 0.2 {
		doubt("That is more than a fifth off: seldom grip or wear. Look at step angle, microsteps, gears, pulley and unit first.")
	}
	if a.sheet.Axis.Word == "travel" {
		notes = append(notes, Note{Tip, say("One length cannot tell the scale from a fixed offset such as slack. For belts and screws, trust the value that the parts give over a measured one unless a part explains the difference.")})
	}
	return notes
}

// conventions shows the setting before and after in each convention that the
// given facts allow, and asks for the facts that are missing.
func (a *measured) conventions() (Part, bool) {
	p := Part{ID: "conventions", Title: "The same in each convention",
		Needs: concat(a.allKeys, []string{"angle", "micro"}, a.sheet.gearEntry.keys(""))}
	was := fact{setting: a.now, rotary: a.sheet.rotary(), gears: &a.sheet.gearEntry,
		noMotor: a.sheet.motorEntry.missing(), noGears: a.sheet.gearEntry.missing("")}
	was.motor, _ = a.sheet.motor()
	is := was
	is.setting = a.corrected()
	before := func(id string, s drive.Setting) Figure {
		if s.Convention == a.now.Convention {
			return a.old(id, s)
		}
		return a.setting(id, s)
	}
	p.Blocks = beforeAndAfter(was, is, before, a.setting)
	if travel, missing := is.in(drive.TravelPerOutputTurn); len(missing) == 0 && a.sheet.Axis.Word == "feed" {
		p.Blocks = append(p.Blocks, Figures{[]Figure{{ID: "diameter", Label: "Effective diameter of the roller that this implies",
			Value: float64(drive.EffectiveDiameter(travel.Value)), Unit: "mm", Digits: 4, Keep: true}}})
	}
	return p, true
}

// templateProblems finds templates without a place for the number.
func (s *measureSheet) templateProblems() []Problem {
	var problems []Problem
	check := func(key, template string) {
		if template != "" && !strings.Contains(template, valuePlace) {
			problems = append(problems, Problem{key, 0, quote(template) + " has no " + valuePlace + ". Write " + valuePlace + " where the number goes, as in M92 E" + valuePlace + "."})
		}
	}
	check("line", s.Line.Value)
	check("entry", s.Entry.Value)
	return problems
}

const valuePlace = "{value}"

// apply says what to send, how to keep it, how to undo it, and where the old
// value may hide.
func (a *measured) apply() (Part, bool) {
	p := Part{ID: "apply", Title: "Apply it", Needs: append([]string{"line", "entry"}, a.allKeys...)}
	is, was := a.corrected(), a.now
	fill := func(template string, v float64) string {
		return strings.ReplaceAll(template, valuePlace, unit.Trim(v, lineDigits))
	}
	template := a.sheet.Line.Value + a.sheet.Entry.Value // only one of them is shown
	number := a.setting("", is)
	number.Digits, number.Keep = lineDigits, false
	if template != "" {
		p.Blocks = append(p.Blocks, Code{"The line", fill(template, is.Value)}, Code{"To undo it", fill(template, was.Value)})
	} else {
		p.Blocks = append(p.Blocks, Ask{[]string{templateKey(was.Convention)}, "a line that is ready to send"})
	}
	keep := "A line that is sent lasts until the controller restarts, unless you store it: with the controller's own command for keeping settings, or by changing the entry in its configuration."
	if was.Convention != drive.StepsPerUnit {
		keep = "Change the entry in the controller's configuration, save it, and restart the controller: entries are read at the start."
	}
	p.Blocks = append(p.Blocks, Steps{[]Line{
		say("Note down the old value first, to be able to undo: ", a.old("", was), "."),
		say("Set the new one: ", number, "."),
		say(keep),
		say("Look where the old value may hide: a start-up script that sets it again, the controller's memory that overrides the configuration, or a second entry for the same motor. Ask the controller for the value it uses after a restart."),
	}})
	return p, true
}

func templateKey(c drive.Convention) string {
	if c == drive.StepsPerUnit {
		return "line"
	}
	return "entry"
}

// next says how to verify.
func (a *measured) next() (Part, bool) {
	p := Part{ID: "next", Title: "What to do next", Needs: a.readKeys}
	expect := say("Repeat the same test with the new setting: ", a.length("expect", "", a.asked), " should be "+a.verb()+" where ", a.length("", "", a.asked), " is asked.")
	if a.runKeys[0] == "mark" {
		rest := float64(a.sheet.Mark.Value) - a.asked
		if rest > 0 {
			expect = say("Repeat the same test with the new setting: marked at ", a.length("", "", float64(a.sheet.Mark.Value)), " again, ", a.length("expect", "", rest), " should remain.")
		}
	}
	items := []Line{expect,
		say("If the error is gone within what you can read, you are done. If it comes back the other way round, the value was probably entered in the wrong place or for the wrong axis."),
	}
	if a.sheet.Axis.Word == "feed" {
		items = append(items, say("Then look at what was tuned while the scale was wrong: retraction, load and unload lengths, and the flow factor."))
	}
	p.Blocks = []Block{Steps{items}}
	if a.sheet.Axis.Word == "feed" && a.sheet.Path.Word == "open" {
		p.Blocks = append(p.Blocks, Note{Caution, say("Put back the guard against cold feeding if you lifted it for this test.")})
	}
	return p, true
}
