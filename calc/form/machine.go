package form

import (
	"slices"

	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// MachineKeys are the keys of a link that say whose axis a sheet is about, and are no fields: the
// machine's name, the axis' name, what tells it from others on a device, and the day of its setting.
var MachineKeys = [...]string{"machine", "axisname", "id", "set"}

// mostName is how long each of their texts may be, in characters.
const mostName = 60

func isMachineKey(key string) bool { return slices.Contains(MachineKeys[:], key) }

// NameText is a text under one of MachineKeys as a sheet has it: on one line, and no longer than that.
func NameText(text string) string { return word.Clip(text, mostName) }

// Machine returns the pieces of a link that say whose axis the sheet is about.
func (f *Form) Machine() []link.Piece { return f.machine }

// MachineText is what the sheet has under one of MachineKeys.
func (f *Form) MachineText(key string) string { return link.TextOf(f.machine, key) }

// SetMachine makes the sheet one of the machine that such pieces, among others, tell of.
func (f *Form) SetMachine(pieces []link.Piece) {
	f.machine = nil
	for _, key := range MachineKeys {
		if text := NameText(link.TextOf(pieces, key)); text != "" {
			f.machine = append(f.machine, link.Piece{Key: key, Cells: []string{text}})
		}
	}
}

// A Current is the setting that an axis has now, as this device knows it.
type Current struct {
	Key, Text string // as in a link
	Shown     string // with its unit
	Date      string // since when; empty if that is not known
}

// SetCurrent hands the form the setting that its axis has now. While the sheet has another one, and
// its result is not how the axis came to it, the answer waits until the person has said which of the
// two the readings were made with.
func (f *Form) SetCurrent(c Current) {
	if c != f.current {
		f.current = c
		f.solve()
	}
}

// Agree says that the readings were made with the setting of the sheet, whatever the axis has now.
// It holds until one of the two is changed.
func (f *Form) Agree() {
	f.agreed = f.both()
	f.solve()
}

// both are the setting of the sheet and that of now, as one text.
func (f *Form) both() string {
	key, text := f.Setting()
	return key + "=" + text + "&" + f.current.Key + "=" + f.current.Text
}

// Setting is what the sheet has as the setting: the key of its field, and the text as a link has it.
func (f *Form) Setting() (key, text string) {
	for _, key := range SettingKeys {
		if field, ok := f.Field(key); ok && field.Group == nil && f.Visible(field, 0) {
			return key, field.Cells.At(0).Plain(f.Text(key, 0))
		}
	}
	return "", ""
}

// SettingKeys are the fields that may hold a setting, of which one shows.
var SettingKeys = []string{"steps", "turn", "output", "stepsdeg", "turndeg", "outputdeg"}

// IsSettingAsked reports whether the answer waits for which setting it was.
func (f *Form) IsSettingAsked() bool { return f.settingAsked }

// askSetting puts that question, where it is one.
func (f *Form) askSetting() {
	key, text := f.Setting()
	f.settingAsked = f.current.Text != "" && text != "" && f.agreed != f.both() &&
		!f.IsCurrent(key, text) && !f.IsCurrent(f.report.SetKey, f.report.Set) && f.ProblemAt(key, 0) == ""
	if !f.settingAsked {
		return
	}
	// Nothing is worked out with it meanwhile.
	field, _ := f.Field(key)
	sheets := f.Entered(field)
	if err := field.Cells.At(0).Set(""); err == nil {
		f.report = f.sheet.Solve()
	}
	says := whichSettingOnce
	if f.current.Date != "" {
		says = whichSetting
	}
	f.problems = append(f.problems, report.Problem{Key: key, Row: 0, Says: says.Fill("current", f.current.Shown, "date", word.Day(f.current.Date), "sheet", sheets)})
}

// IsCurrent reports whether a setting is the one that the axis has now.
func (f *Form) IsCurrent(key, text string) bool {
	if key != f.current.Key || text == "" {
		return false
	}
	a, aOK := f.NumberOf(key, text)
	b, bOK := f.NumberOf(key, f.current.Text)
	return aOK && bOK && a == b
}

// NumberOf is what a text would be in a field, in its base unit; false where it is no number there.
func (f *Form) NumberOf(key, text string) (float64, bool) {
	field, known := f.Field(key)
	if !known {
		return 0, false
	}
	e, ok := field.Cells.At(0).(*unit.Entry)
	if !ok {
		return 0, false
	}
	other := *e
	err := other.Set(text)
	return other.Number, err == nil && other.Given
}
