package logbook

import (
	"slices"
	"strings"

	"striderule/calc"
	"striderule/calc/drive"
	"striderule/calc/form"
	"striderule/calc/page/axis"
	"striderule/calc/report"
	"striderule/calc/sheet"
)

// AxisKey is what an entry stores for the name of an axis: a key where this, or another
// version, has a word for it ("Extruder", and "Feed" of older ones, are feed), otherwise
// the name itself.
func AxisKey(name string) string {
	for _, a := range axisNames {
		if strings.EqualFold(name, a[0]) || strings.EqualFold(name, a[1]) {
			return a[0]
		}
	}
	return name
}

// AxisName is what an axis is called, by its key or the name that a person gave it.
func AxisName(key string) string {
	if name := axisNames.Of(AxisKey(key)); name != "" {
		return name
	}
	return key
}

// AxisFor is the axis to offer where a form is saved: what the form tells; otherwise, as of a
// linear axis, whose letter the person knows, that of the last entry, unless it is of another sort.
func AxisFor(typed *form.Form, last Entry) string {
	for _, f := range typed.Fields() {
		if f.Key != "axis" {
			continue
		}
		switch choice, ok := f.Cells.At(0).(*sheet.Choice); {
		case !ok:
		case choice.Word != "travel":
			return AxisName(choice.Word)
		case last.AxisName() != last.Axis:
			return ""
		}
	}
	return last.AxisName()
}

// AxisName is what the entry's axis is called.
func (e Entry) AxisName() string { return AxisName(e.Axis) }

// VerdictTitle is the title of the verdict.
func (e Entry) VerdictTitle() string {
	id := e.Verdict
	if now := verdictsOnce.Of(id); now != "" {
		id = now
	}
	if title := verdictTitles.Of(id); title != "" {
		return title
	}
	return e.Verdict
}

// ResultName is what the result is called. A setting with a verdict is one that was
// measured, which may say to leave another.
func (e Entry) ResultName() string {
	name := e.quantityName()
	if e.Verdict != "" && slices.Contains(axis.ConventionWords[:], e.Output) {
		return asMeasured.Fill("setting", name)
	}
	return name
}

// quantityName is what results of this kind are called, in whichever sheet.
func (e Entry) quantityName() string {
	if i := slices.Index(axis.ConventionWords[:], e.Output); i >= 0 {
		return axis.SettingName(drive.Convention(i), strings.Contains(e.Unit, "°"))
	}
	page, _ := calc.PageOf(e.Page)
	for _, o := range page.Outputs {
		if o.ID == e.Output {
			return o.Label
		}
	}
	return e.Label // of a page that this version does not have
}

// Figure returns the result as it is shown.
func (e Entry) Figure() report.Figure {
	return report.Figure{Label: e.ResultName(), Value: e.Value, Unit: e.Unit, U: e.U, Digits: 6}
}

// inWords is the entry with words in the place of its keys, for a table that people read.
func (e Entry) inWords() Entry {
	e.Axis, e.Verdict = e.AxisName(), e.VerdictTitle()
	if e.Answered() {
		e.Label = e.ResultName()
	}
	return e
}
