package calc

import (
	"errors"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/unit"
)

// settingDigits is how precisely a setting is shown of whose uncertainty nothing
// is known, lineDigits how precisely it is sent.
const (
	settingDigits = 5
	lineDigits    = 6
)

func (a *measured) length(id, label string, v float64) *Figure {
	return &Figure{ID: id, Label: label, Value: v, Unit: a.unit, Digits: 5}
}

// uncertainty is the expanded one of the new setting, in its own unit.
func (a *measured) uncertainty(s drive.Setting) float64 {
	if a.alone {
		return 0 // not known
	}
	return a.k * a.scale.Ratio.U / a.scale.Ratio.Value * s.Value // relatively, that of the correction is the same
}

// setting is a new setting with what is known of it.
func (a *measured) setting(id string, s drive.Setting) *Figure {
	f := settingFigure(id, s, a.sheet.rotary(), settingDigits, true)
	f.U = a.uncertainty(s)
	return f
}

// old is a setting as the person gave it, or as it follows from that.
func (a *measured) old(id string, s drive.Setting) *Figure {
	f := settingFigure(id, s, a.sheet.rotary(), settingDigits, true)
	if s.Convention == a.now.Convention {
		f.Digits, f.Keep = 7, false
	}
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

// wording is how this page says its verdicts.
func (a *measured) wording() wording {
	return wording{
		it: "It " + a.verb() + " ", exactly: "exactly what was asked.", tries: "runs",
		hopeless:  "Not with this instrument and length",
		tooCoarse: "It is off, but what you read it with is too coarse over this length to set it right to",
		cannot:    "However many runs you make, what you read them with is too coarse over this length to tell",
	}
}

func (a *measured) answer() *Answer {
	f := a.setting(conventionWords[a.now.Convention], a.corrected())
	name := strings.ToLower(settingName(a.now.Convention, a.sheet.rotary()))
	f.Label = "New setting, " + name
	answer := &Answer{Figure: *f, Verdict: a.firstVerdict(), Says: say("Now ", a.old("", a.now), "."), Notes: a.grave(), Needs: a.allKeys}
	switch {
	case a.hasThen:
		e := a.then.Error()
		off := percent("", "", e.Value, 0)
		off.U = 100 * e.Expanded()
		answer.Verdict = a.secondVerdict()
		answer.Label = "As the first runs gave it, " + name
		answer.Says = say("The error now is ", off, ". The setting was ", a.old("", a.now), " before the change.")
		answer.Needs = lists.Concat(answer.Needs, a.laterKeys)
		if a.judgedThen.Verdict == measure.LeaveIt {
			keep := a.setting("", a.corrected())
			keep.Label, keep.U, keep.Like = "It is set: keep it at, "+name, 0, keep.U
			answer.Keep = keep
		}
	case a.judged.Verdict == measure.LeaveIt:
		keep := a.old("", a.now)
		keep.Label = "Leave it at, " + name
		answer.Label, answer.Keep = "What the readings give", keep
		answer.Says = say("The difference is within the tolerance: changing it would bring nothing.")
	case a.judged.Verdict == measure.MeasureMore, a.judged.Verdict == measure.NotWithThis:
		answer.Label = "So far, " + name
		answer.Says = append(answer.Says, say(" Do not enter this yet.")...)
	}
	return answer
}

// firstVerdict is that of the first round, unless a usual mistake or slip comes
// before it.
func (a *measured) firstVerdict() *Verdict {
	v := a.wording().verdict(a.judged, a.scale.Error())
	if a.alone {
		v.Says = lists.Concat(a.wording().span(measure.Estimate{Value: a.scale.Error().Value}), say(" One run cannot show how much the runs scatter: make at least three."))
	}
	if a.suspectsMistake() {
		v.Title, v.Mistake = "Look for a mistake first", true
		v.Says = append(v.Says, say(" And it is just what a usual mistake does: see below before you enter anything.")...)
	}
	if a.slips() {
		v.Title += ", and mind the slip"
		v.Says = lists.Concat(say("Taken from the runs without slip: "), v.Says)
	}
	return v
}

// secondVerdict is that of the round after the change.
func (a *measured) secondVerdict() *Verdict {
	v := a.wording().verdict(a.judgedThen, a.then.Error())
	v.Title = [...]string{
		Leave: "Done: the change did what it should", Change: "Still off after the change", MeasureMore: "Not sure yet: add runs after the change",
		Hopeless: "Not with this instrument and length", Either: "As near as it matters",
	}[v.Kind]
	return v
}

// suspectsMistake reports whether the found ratio is one that a usual mistake
// makes, so that entering it would only hide that.
func (a *measured) suspectsMistake() bool {
	return a.judged.Verdict == measure.ChangeIt && len(a.fits) > 0
}

// slips reports whether the error falls with speed.
func (a *measured) slips() bool {
	return a.sheet.method() == severalSpeeds && a.slip.Trouble != measure.ErrorRises &&
		(a.slip.Trouble == measure.SlipFound || a.slip.Basis == measure.FromPlateau)
}

// missing asks for what the answer needs.
func (a *measured) missing() *Part {
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
	return &Part{ID: "missing", Title: "Still needed", Blocks: []Block{Ask{keys, "the new setting"}}}
}

func (a *measured) missingReadings() []string {
	var keys []string
	s := a.sheet
	if s.method() == bothSides {
		return []string{"target", "up", "down"}
	}
	if !a.hasAsked && s.method() != severalLengths {
		keys = append(keys, a.askedKey)
	}
	if s.method() == severalLengths {
		keys = append(keys, "want")
	}
	if len(counted(a.runs)) == 0 {
		readings := a.runKeys[1:] // after the one for setting aside
		if readings[0] == "mark" && s.Mark.Given {
			readings = readings[1:]
		}
		keys = append(keys, readings...)
	}
	if s.method() == severalSpeeds && len(a.withSpeed()) == 0 {
		keys = append(keys, "at")
	}
	return keys
}

// impossible says why complete readings show no scale, and what would.
func (a *measured) impossible() *Part {
	if a.failed == nil || errors.Is(a.failed, errMissing) {
		return nil
	}
	why, cure := a.failed.Error(), "Look through the readings: one of them cannot be."
	switch {
	case errors.Is(a.failed, measure.ErrNothingMoved) && a.sheet.method() == bothSides:
		why, cure = "the positions fall where the targets rise", "Look which way they are counted."
	case errors.Is(a.failed, measure.ErrTooFew) && a.sheet.method() == bothSides:
		cure = "Approach three targets at least, each from either side."
	case errors.Is(a.failed, measure.ErrTooFew):
		cure = "Make at least three runs."
	case errors.Is(a.failed, measure.ErrOneLength) && a.sheet.method() == severalSpeeds:
		cure = "All runs are at one speed: add runs at others, or choose One speed above."
	case errors.Is(a.failed, measure.ErrOneLength):
		cure = "All runs are at one place: add others, or choose One length above."
	case errors.Is(a.failed, measure.ErrOneDirection):
		cure = "Each target needs a position from either side: fill in both boxes."
	}
	return &Part{ID: "impossible", Title: "Not yet", Needs: a.readKeys,
		Blocks: []Block{doubtNote("These readings show no scale: " + why + ". " + cure)}}
}

// number writes a setting to be entered, as the headline has it: rounded to
// below a tenth of what is known of it.
func (a *measured) number(s drive.Setting) string {
	if u := a.uncertainty(s); u > 0 {
		number, _ := unit.Measured(s.Value, u)
		return number
	}
	return unit.Trim(s.Value, lineDigits)
}

// entered is that number with its unit.
func (a *measured) entered(s drive.Setting) string {
	return a.number(s) + a.setting("", s).Gap() + settingUnit(s.Convention, a.sheet.rotary())
}
