package machine

import (
	"slices"
	"strings"

	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/lists"
	"striderule/calc/logbook"
	"striderule/calc/word"
)

// Page is the slug of Calibrate, whose sheets correct a setting: a link to it is what an axis is kept as.
const Page = "measure"

// An Axis is one motion of a machine, with what is known of it: the pieces of a link to Calibrate, in
// order. It is never changed.
type Axis []link.Piece

// facts are the keys of Calibrate that tell of the axis and its usual test, and not of one test.
var facts = [...]string{
	"axis", "as", "steps", "turn", "output", "stepsdeg", "turndeg", "outputdeg",
	"drive", "path", "trip", "asked", "askeddeg", "speed", "read", "marks", "mark",
	"tool", "step", "limits", "tooldeg", "stepdeg", "limitsdeg", "marktool", "markstep", "marklimits", "tol",
	"angle", "micro", "gears", "driving", "driven", "ratio", "counted", "limit",
	"line", "linetravel", "linerotary", "entry",
}

// keys are those of an Axis, in order.
var keys = append(append([]string(nil), facts[:]...), form.MachineKeys[:]...)

// LineKeys are the facts that would be sent to a machine.
var LineKeys = []string{"line", "linetravel", "linerotary", "entry"}

// gearKeys are the facts of the gears.
var gearKeys = []string{"gears", "driving", "driven", "ratio"}

// of makes an axis of pieces, of which the first with a key counts. It is none without a setting.
func of(pieces []link.Piece) (a Axis, ok bool) {
	for _, key := range keys {
		cells := link.CellsOf(pieces, key)
		if slices.Contains(form.MachineKeys[:], key) { // as the sheet that it fills in has it, to be found again
			cells = []string{form.NameText(link.TextOf(pieces, key))}
		}
		if len(cells) > 1 || len(cells) == 1 && cells[0] != "" {
			a = append(a, link.Piece{Key: key, Cells: cells})
		}
	}
	_, text := a.Setting()
	return a, text != ""
}

// Of takes an axis from a sheet of Calibrate: whose it is, and what it says of the axis, without its
// readings, and without a stranger's line that nobody has accepted.
func Of(f *form.Form) (Axis, bool) {
	a, ok := of(link.Split(f.Fragment()))
	return a.Without(lists.Keep(LineKeys, f.IsBrought)...), ok
}

// Read returns the axis of a text of Fragment, or of any link to Calibrate; ok is false if that names
// no machine or no setting, or is of another version.
func Read(text string) (a Axis, ok bool) {
	pieces := link.Split(text)
	a, ok = of(pieces)
	if day := a.Text("set"); len(day) != len("2026-11-29") || !logbook.IsDate(day) {
		a = a.Without("set")
	}
	return a, ok && a.Text("machine") != "" && link.TextOf(pieces, "v") == link.Version
}

// IsAxis reports whether a link has the facts of an axis, and nothing of a test.
func IsAxis(fragment string) bool {
	a, ok := Read(fragment)
	return ok && a.Fragment() == fragment
}

// Fragment is the link to Calibrate with what is known, and what an axis is stored as.
func (a Axis) Fragment() string {
	return link.Join(append([]link.Piece{{Key: "v", Cells: []string{link.Version}}}, a...))
}

// Text is what stands under a key: a fact, or one of form.MachineKeys.
func (a Axis) Text(key string) string { return link.TextOf(a, key) }

// ID tells the axis from others on a device.
func (a Axis) ID() string { return a.Text("id") }

// Title is what to call the axis: the machine's name and its own.
func (a Axis) Title() string {
	if a.Text("axisname") == "" {
		return a.Text("machine")
	}
	return title.Fill("machine", a.Text("machine"), "axis", a.Text("axisname"))
}

// Setting returns the key and the text of the setting.
func (a Axis) Setting() (key, text string) {
	for _, key := range form.SettingKeys {
		if text := a.Text(key); text != "" {
			return key, text
		}
	}
	return "", ""
}

// Shown is the setting as it is shown, with its unit.
func (a Axis) Shown() string {
	key, text := a.Setting()
	if text == "" || form.NamesUnit(text) {
		return text
	}
	return text + units.Of(key)
}

// Since is the setting as it is shown, with its day if that is known.
func (a Axis) Since() string {
	if a.Text("set") == "" {
		return a.Shown()
	}
	return since.Fill("setting", a.Shown(), "date", word.Day(a.Text("set")))
}

// Brief is what is known beside the setting, in a few words.
func (a Axis) Brief() string {
	var says []string
	for _, w := range factWords {
		if text := a.Text(w[0]); text != "" && !form.NamesUnit(text) {
			says = append(says, word.Template(w[1]).Fill("text", text))
		}
	}
	return strings.Join(says, ", ")
}

// Current is the setting, for a sheet of this axis.
func (a Axis) Current() form.Current {
	key, text := a.Setting()
	return form.Current{Key: key, Text: text, Shown: a.Shown(), Date: a.Text("set")}
}

// With is the axis with other texts, given as keys and texts in turn; an empty one takes the key away.
func (a Axis) With(keysAndTexts ...string) Axis {
	var pieces []link.Piece
	for i := 0; i < len(keysAndTexts); i += 2 {
		pieces = append(pieces, link.Piece{Key: keysAndTexts[i], Cells: []string{keysAndTexts[i+1]}})
	}
	with, _ := of(append(pieces, a...))
	return with
}

// Updated is the axis with what a sheet says of it: the facts of one of Calibrate, or the parts that
// one of Swap puts in. What the sheet does not say stays, and so do the
// axis' names: a link may have others under the same ID.
func (a Axis) Updated(f *form.Form) Axis {
	if f.Page.Slug != Page {
		return a.Swapped(f)
	}
	facts, _ := Of(f)
	updated, _ := of(lists.Concat(facts.Without(form.MachineKeys[:]...), a))
	return updated
}

// WithSetting is the axis with another setting, since a day.
func (a Axis) WithSetting(key, text, date string) Axis {
	as := strings.TrimSuffix(key, "deg")
	if as == form.SettingKeys[0] {
		as = ""
	}
	return a.Without(form.SettingKeys...).With("as", as, key, text, "set", date)
}

// Without is the axis without what stands under some keys.
func (a Axis) Without(keys ...string) Axis {
	return lists.Keep(a, func(p link.Piece) bool { return !slices.Contains(keys, p.Key) })
}

// Again is the sheet for testing the axis of another sheet once more: its facts, with the setting
// that the axis has now; without one where that is not known.
func Again(fragment string, now Axis) string {
	a, _ := of(link.Split(fragment))
	if now != nil {
		a = now
	} else {
		a = a.Without(form.SettingKeys...)
	}
	return a.Fragment()
}

// newSuffix ends the keys of Swap for parts that come in.
const newSuffix = "new"

// Swapped is the axis with the parts that a sheet of Swap puts in; of another page, as it is.
func (a Axis) Swapped(f *form.Form) Axis {
	pieces := link.Split(f.Fragment())
	if slices.Contains(link.CellsOf(pieces, "changed"), "gears") {
		a = a.Without(gearKeys...)
	}
	var fresh []link.Piece
	for _, p := range pieces {
		if key, is := strings.CutSuffix(p.Key, newSuffix); is && f.Page.Slug == "swap" {
			fresh = append(fresh, link.Piece{Key: key, Cells: p.Cells})
		}
	}
	swapped, _ := of(lists.Concat(fresh, a))
	return swapped
}
