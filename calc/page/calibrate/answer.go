package calibrate

import (
	"errors"
	"math"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// lineDigits is how precisely a setting is sent of whose uncertainty nothing is known.
const lineDigits = 6

// leastDigits keeps a setting of three digits as it is, though a length was read to two.
const leastDigits = 3

// oldDigits is how precisely a setting is shown that was typed, or follows from one.
const oldDigits = 5

// digits is how precisely a new setting is shown of whose uncertainty nothing is known: as the
// readings that it comes from.
func (a *solution) digits() int {
	digits := oldDigits
	if a.wide > 0 && !a.alone {
		return digits // these do not count
	}
	for _, r := range trial.Counted(a.runs) {
		if grid := r.Reading.Grid(); grid > 0 && r.Moved > 0 {
			digits = min(digits, max(leastDigits, int(math.Ceil(math.Log10(r.Moved/grid)))))
		}
	}
	return digits
}

func (a *solution) length(id, label string, v float64) *report.Figure {
	return &report.Figure{ID: id, Label: label, Value: v, Unit: a.unit, Digits: 5}
}

// uncertainty is the expanded one of the new setting, in its own unit.
func (a *solution) uncertainty(s drive.Setting) float64 {
	if a.alone {
		return 0 // not known
	}
	return a.wide / a.scale.Ratio.Value * s.Value // relatively, that of the correction is the same
}

// setting is a new setting with what is known of it.
func (a *solution) setting(id string, s drive.Setting) *report.Figure {
	f := axis.SettingFigure(id, s, a.sheet.rotary(), a.digits(), true)
	f.U = a.uncertainty(s)
	return f
}

// old is a setting as the person gave it, or as it follows from that.
func (a *solution) old(id string, s drive.Setting) *report.Figure {
	f := axis.SettingFigure(id, s, a.sheet.rotary(), oldDigits, true)
	if s.Convention == a.now.Convention {
		f.Digits, f.Keep = 7, false
	}
	return f
}

// A wording is what the page says in other words of each sort of axis.
type wording struct {
	verdict trial.Wording
	did     string        // what the axis did, as the name of a length
	head    word.Template // the same of a column
}

func (a *solution) wording() *wording {
	switch {
	case a.sheet.isFeed():
		return &extruderWords
	case a.sheet.rotary():
		return &rotaryWords
	}
	return &axisWords
}

// label names a setting in a line that has its name at the beginning or within.
func (a *solution) label(t word.Template) string {
	c, rotary := a.now.Convention, a.sheet.rotary()
	return t.Fill("name", axis.SettingName(c, rotary), "setting", axis.SettingNameWithin(c, rotary))
}

func (a *solution) answer() *report.Answer {
	f := a.setting(axis.ConventionWords[a.now.Convention], a.corrected())
	f.Label = a.label(newLabel)
	now := report.Say(currently, "setting", a.old("", a.now))
	answer := &report.Answer{Figure: *f, Verdict: a.firstVerdict(), Says: now, Notes: a.grave(), Needs: a.allKeys}
	switch {
	case a.hasThen:
		e := a.then.Error()
		off := report.Percent("", "", e.Value, 0)
		off.U = a.wideThen()
		answer.Verdict = a.secondVerdict()
		answer.Label = a.label(firstLabel)
		answer.Says = report.Say(afterSays, "error", off, "setting", a.old("", a.now))
		answer.Needs = lists.Concat(answer.Needs, a.laterKeys)
		if a.judgedThen.Verdict == measure.LeaveIt {
			keep := a.setting("", a.corrected())
			keep.Label, keep.U, keep.Like = a.label(confirmedLabel), 0, keep.U
			answer.Keep = keep
		}
	case a.judged.Verdict == measure.LeaveIt:
		keep := a.old("", a.now)
		keep.Label = a.label(keepLabel)
		answer.Label, answer.Keep = readLabel, keep
		answer.Says = report.Say(nothingToGain)
	case a.suspectsMistake():
		answer.Label = a.label(doubtfulLabel)
		answer.Keep = a.old("", a.now)
		answer.Keep.Label = a.label(holdLabel)
		if s, ok := a.mended(); ok {
			answer.Label = a.label(aloneLabel)
			answer.Keep = a.old("", s)
			answer.Keep.Label = a.label(mendLabel)
			answer.Says = report.Together(now, report.Say(thenCalibrate, "setting", a.withUnit(a.toSet())))
		}
	case a.interim:
		answer.Label = a.label(interimLabel)
	case a.judged.Verdict == measure.MeasureMore, a.judged.Verdict == measure.NotWithThis:
		answer.Keep = a.old("", a.now)
		answer.Keep.Label = a.label(holdLabel)
		answer.Label = a.label(soFarLabel)
		answer.Says = report.Say(notYetSays)
	}
	a.keepParts(answer)
	return answer
}

// firstVerdict is that of the first round, unless a common mistake or slip comes
// before it.
func (a *solution) firstVerdict() *report.Verdict {
	says := a.wording().verdict
	v := says.Verdict(a.judged, a.scale.Error())
	switch {
	case a.alone:
		v = says.Alone(a.judged, a.scale.Error())
	case a.scale.Plan > a.scale.Runs && v.Kind == report.MeasureMore && a.scale.Ratio.U > 0:
		v = says.Planned(a.judged, a.scale.Error(), a.scale.Plan)
	}
	if a.interim {
		v.Kind, v.Title, v.Interim = report.Change, interimTitle, true
		if !a.suspectsMistake() {
			v.Says = report.Together(v.Says, report.Say(interimSays))
		}
	}
	slips := a.slips()
	if slips {
		v.Title, v.Slip = slipTitles[v.Kind], true
		if a.interim {
			v.Title = interimSlipTitle
		}
		v.Says = report.Together(v.Says, report.Say(slipLeftOut))
	}
	if a.suspectsMistake() {
		v.Title, v.Mistake = mistakeTitle, true
		if slips {
			v.Title = mistakeSlipTitle
		}
		v.Says = report.Together(v.Says, a.mistakeSays())
	}
	return v
}

// secondVerdict is that of the round after the change.
func (a *solution) secondVerdict() *report.Verdict {
	says := a.wording().verdict
	v := says.Verdict(a.judgedThen, a.then.Error())
	if a.aloneThen {
		v = says.Alone(a.judgedThen, a.then.Error())
	}
	v.After = true
	v.Title = checkTitles[v.Kind]
	return v
}

// wideThen is the ± of the error after the change, in percent; 0 where a single run shows none.
func (a *solution) wideThen() float64 {
	if a.aloneThen {
		return 0
	}
	return 100 * a.then.Error().HalfWidth()
}

// slips reports whether the error falls with speed.
func (a *solution) slips() bool {
	return a.sheet.Method() == trial.SeveralSpeeds && a.slip.Trouble == measure.SlipFound
}

// missing asks for what the answer needs.
func (a *solution) missing() *report.Part {
	var keys []string
	if !a.hasNow {
		keys = append(keys, a.nowKey)
	}
	if errors.Is(a.failed, errMissing) {
		keys = append(keys, a.missingReadings()...)
	}
	if len(keys) == 0 {
		return nil
	}
	return &report.Part{ID: report.Missing, Title: missingTitle, Blocks: []report.Block{report.Ask{Keys: keys, For: missingFor}}}
}

func (a *solution) missingReadings() []string {
	var keys []string
	s := a.sheet
	if s.Method() == trial.BothSides {
		return s.sideKeys()
	}
	if !a.hasAsked && s.Method() != trial.SeveralLengths {
		keys = append(keys, a.askedKey)
	}
	if s.Method() == trial.SeveralLengths {
		keys = append(keys, s.wantKey())
	}
	if len(trial.Counted(a.runs)) == 0 {
		readings := a.runKeys[1:] // after the one for leaving out
		if readings[0] == "mark" && s.Mark.Given {
			readings = readings[1:]
		}
		keys = append(keys, readings...)
	}
	if s.Method() == trial.SeveralSpeeds && len(a.withSpeed()) == 0 {
		keys = append(keys, "at")
	}
	return keys
}

// impossible says why complete readings show no error, and what would.
func (a *solution) impossible() *report.Part {
	if a.failed == nil || errors.Is(a.failed, errMissing) {
		return nil
	}
	p := &report.Part{ID: "impossible", Title: impossibleTitle, Needs: a.readKeys}
	if title, blocks := a.stuck(a.failed); blocks != nil {
		p.Title, p.Blocks = title, blocks
		if a.sheet.rotary() && a.hasAsked {
			for _, m := range a.misreadings() { // one at most, of an axis that hardly moved
				p.Title, p.Needs = mistakeTitle, a.allKeys
				p.Blocks = append([]report.Block{report.Note{Kind: report.Doubt, Line: a.meant(m)}}, blocks...)
			}
		}
		return p
	}
	p.Add(a.whyImpossible())
	return p
}

func (a *solution) whyImpossible() report.Note {
	is := func(cause error) bool { return errors.Is(a.failed, cause) }
	method := a.sheet.Method()
	switch {
	case is(errVague) && a.scale.TooCoarse():
		return report.DoubtNote(a.sheet.moves().ToolSaysNothing)
	case is(errVague):
		return report.DoubtNote(nothingSaid)
	case is(measure.ErrNothingMoved) && method == trial.BothSides:
		return report.DoubtNote(positionsFall)
	case is(measure.ErrTooFew) && method == trial.BothSides:
		return report.DoubtNote(tooFewTargets)
	case is(measure.ErrTooFew):
		return report.DoubtNote(tooFewRuns)
	case is(measure.ErrOneLength) && method == trial.SeveralSpeeds:
		return report.DoubtNote(oneSpeedOnly, "choice", a.sheet.Trial.Options()[0].Label)
	case is(measure.ErrOneLength) && method == trial.BothSides:
		return report.DoubtNote(onePositionOnly)
	case is(measure.ErrOneLength):
		return report.DoubtNote(a.sheet.moves().OneLengthOnly, "choice", a.sheet.Trip.Options()[0].Label)
	case is(measure.ErrOneDirection):
		return report.DoubtNote(oneSideOnly)
	}
	return report.DoubtNote(anyImpossible)
}

// number writes a setting to be entered, as the headline has it: rounded to
// below a tenth of what is known of it.
func (a *solution) number(s drive.Setting) string {
	if u := a.uncertainty(s); u > 0 {
		number, _ := unit.PlainMeasured(s.Value, u)
		return number
	}
	return unit.PlainTrim(s.Value, lineDigits)
}

// withUnit is the number of a setting as it is entered, with its unit.
func (a *solution) withUnit(number string) string {
	return number + a.setting("", a.now).Gap() + axis.SettingUnit(a.now.Convention, a.sheet.rotary())
}
