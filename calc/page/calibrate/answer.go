package calibrate

import (
	"errors"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// settingDigits is how precisely a setting is shown of whose uncertainty nothing
// is known, lineDigits how precisely it is sent.
const (
	settingDigits = 5
	lineDigits    = 6
)

func (a *solution) length(id, label string, v float64) *report.Figure {
	return &report.Figure{ID: id, Label: label, Value: v, Unit: a.unit, Digits: 5}
}

// uncertainty is the expanded one of the new setting, in its own unit.
func (a *solution) uncertainty(s drive.Setting) float64 {
	if a.alone {
		return 0 // not known
	}
	return a.k * a.scale.Ratio.U / a.scale.Ratio.Value * s.Value // relatively, that of the correction is the same
}

// setting is a new setting with what is known of it.
func (a *solution) setting(id string, s drive.Setting) *report.Figure {
	f := axis.SettingFigure(id, s, a.sheet.rotary(), settingDigits, true)
	f.U = a.uncertainty(s)
	return f
}

// old is a setting as the person gave it, or as it follows from that.
func (a *solution) old(id string, s drive.Setting) *report.Figure {
	f := axis.SettingFigure(id, s, a.sheet.rotary(), settingDigits, true)
	if s.Convention == a.now.Convention {
		f.Digits, f.Keep = 7, false
	}
	return f
}

// verb is what the axis did.
func (a *solution) verb() string {
	switch a.sheet.Axis.Word {
	case "feed":
		return "fed"
	case "rotary":
		return "turned"
	}
	return "moved"
}

// wording is how this page says its verdicts.
func (a *solution) wording() trial.Wording {
	return trial.Wording{
		It: "It " + a.verb() + " ", Exactly: "exactly what was asked.", Tries: "runs",
		Hopeless:  "Not with this instrument and length",
		TooCoarse: "It is off, but what you read it with is too coarse over this length to set it right to",
		Cannot:    "However many runs you make, what you read them with is too coarse over this length to tell",
	}
}

func (a *solution) answer() *report.Answer {
	f := a.setting(axis.ConventionWords[a.now.Convention], a.corrected())
	name := strings.ToLower(axis.SettingName(a.now.Convention, a.sheet.rotary()))
	f.Label = "New setting, " + name
	answer := &report.Answer{Figure: *f, Verdict: a.firstVerdict(), Says: report.Say("Now ", a.old("", a.now), "."), Notes: a.grave(), Needs: a.allKeys}
	switch {
	case a.hasThen:
		e := a.then.Error()
		off := report.Percent("", "", e.Value, 0)
		off.U = 100 * e.Expanded()
		answer.Verdict = a.secondVerdict()
		answer.Label = "As the first runs gave it, " + name
		answer.Says = report.Say("The error now is ", off, ". The setting was ", a.old("", a.now), " before the change.")
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
		answer.Says = report.Say("The difference is within the tolerance: changing it would bring nothing.")
	case a.judged.Verdict == measure.MeasureMore, a.judged.Verdict == measure.NotWithThis:
		answer.Label = "So far, " + name
		answer.Says = append(answer.Says, report.Say(" Do not enter this yet.")...)
	}
	return answer
}

// firstVerdict is that of the first round, unless a usual mistake or slip comes
// before it.
func (a *solution) firstVerdict() *report.Verdict {
	v := a.wording().Verdict(a.judged, a.scale.Error())
	if a.alone {
		v.Says = lists.Concat(a.wording().Span(measure.Estimate{Value: a.scale.Error().Value}), report.Say(" One run cannot show how much the runs scatter: make at least three."))
	}
	if a.suspectsMistake() {
		v.Title, v.Mistake = "Look for a mistake first", true
		v.Says = append(v.Says, report.Say(" And it is just what a usual mistake does: see below before you enter anything.")...)
	}
	if a.slips() {
		v.Title += ", and mind the slip"
		v.Says = lists.Concat(report.Say("Taken from the runs without slip: "), v.Says)
	}
	return v
}

// secondVerdict is that of the round after the change.
func (a *solution) secondVerdict() *report.Verdict {
	v := a.wording().Verdict(a.judgedThen, a.then.Error())
	v.Title = [...]string{
		report.Leave: "Done: the change did what it should", report.Change: "Still off after the change", report.MeasureMore: "Not sure yet: add runs after the change",
		report.Hopeless: "Not with this instrument and length", report.Either: "As near as it matters",
	}[v.Kind]
	return v
}

// suspectsMistake reports whether the found ratio is one that a usual mistake
// makes, so that entering it would only hide that.
func (a *solution) suspectsMistake() bool {
	return a.judged.Verdict == measure.ChangeIt && len(a.fits) > 0
}

// slips reports whether the error falls with speed.
func (a *solution) slips() bool {
	return a.sheet.Method() == trial.SeveralSpeeds && a.slip.Trouble != measure.ErrorRises &&
		(a.slip.Trouble == measure.SlipFound || a.slip.Basis == measure.FromPlateau)
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
	return &report.Part{ID: "missing", Title: "Still needed", Blocks: []report.Block{report.Ask{Keys: keys, For: "the new setting"}}}
}

func (a *solution) missingReadings() []string {
	var keys []string
	s := a.sheet
	if s.Method() == trial.BothSides {
		return []string{"target", "up", "down"}
	}
	if !a.hasAsked && s.Method() != trial.SeveralLengths {
		keys = append(keys, a.askedKey)
	}
	if s.Method() == trial.SeveralLengths {
		keys = append(keys, "want")
	}
	if len(trial.Counted(a.runs)) == 0 {
		readings := a.runKeys[1:] // after the one for setting aside
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

// impossible says why complete readings show no scale, and what would.
func (a *solution) impossible() *report.Part {
	if a.failed == nil || errors.Is(a.failed, errMissing) {
		return nil
	}
	why, cure := a.failed.Error(), "Look through the readings: one of them cannot be."
	switch {
	case errors.Is(a.failed, measure.ErrNothingMoved) && a.sheet.Method() == trial.BothSides:
		why, cure = "the positions fall where the targets rise", "Look which way they are counted."
	case errors.Is(a.failed, measure.ErrTooFew) && a.sheet.Method() == trial.BothSides:
		cure = "Approach three targets at least, each from either side."
	case errors.Is(a.failed, measure.ErrTooFew):
		cure = "Make at least three runs."
	case errors.Is(a.failed, measure.ErrOneLength) && a.sheet.Method() == trial.SeveralSpeeds:
		cure = "All runs are at one speed: add runs at others, or choose One speed above."
	case errors.Is(a.failed, measure.ErrOneLength):
		cure = "All runs are at one place: add others, or choose One length above."
	case errors.Is(a.failed, measure.ErrOneDirection):
		cure = "Each target needs a position from either side: fill in both boxes."
	}
	return &report.Part{ID: "impossible", Title: "Not yet", Needs: a.readKeys,
		Blocks: []report.Block{report.DoubtNote("These readings show no scale: " + why + ". " + cure)}}
}

// number writes a setting to be entered, as the headline has it: rounded to
// below a tenth of what is known of it.
func (a *solution) number(s drive.Setting) string {
	if u := a.uncertainty(s); u > 0 {
		number, _ := unit.Measured(s.Value, u)
		return number
	}
	return unit.Trim(s.Value, lineDigits)
}

// entered is that number with its unit.
func (a *solution) entered(s drive.Setting) string {
	return a.number(s) + a.setting("", s).Gap() + axis.SettingUnit(s.Convention, a.sheet.rotary())
}
