package sheet

import (
	"strconv"
	"strings"

	"striderule/calc/unit"
)

// A Template is a line for a controller in the person's own wording, with places
// for figures: "M92 E{value}".
type Template struct {
	Value  string
	about  string
	places []string // what the line is for at first
}

// Places in lines for moves that are not for their length.
const (
	SpeedPlace = "{speed}"
	AxisPlace  = "{axis}"
)

// NewTemplate makes a template; about says what the line is for.
func NewTemplate(about string, places ...string) Template {
	return Template{about: about, places: places}
}

// mostTemplate is how long one may be, in characters.
const mostTemplate = 200

// Set takes the text, trimmed. What is sent to a machine must show whole: signs
// that hide a text, turn it round or break a line are refused, and so is whatever
// else is not printable ASCII.
func (t *Template) Set(text string) error {
	t.Value = ""
	text = strings.TrimSpace(text)
	if shown := inASCII(text); shown != text {
		return &unit.Error{Text: shown, Problem: noASCII, Cause: errText}
	}
	if len(text) > mostTemplate {
		return errLongText(text, mostTemplate)
	}
	t.Value = text
	return nil
}

// inASCII is a text in printable ASCII; what is not is named as the Unicode Standard
// does, in brackets: ‹U+202E›.
func inASCII(text string) string {
	var b strings.Builder
	for _, r := range text {
		if ' ' <= r && r <= '~' {
			b.WriteByte(byte(r))
			continue
		}
		digits := strings.ToUpper(strconv.FormatInt(int64(r), 16))
		b.WriteString("‹U+" + strings.Repeat("0", max(0, 4-len(digits))) + digits + "›")
	}
	return b.String()
}

// String returns the text.
func (t *Template) String() string { return t.Value }

// Plain returns the text, trimmed.
func (t *Template) Plain(text string) string { return strings.TrimSpace(text) }

// About says what the line is for.
func (t *Template) About() string {
	return aboutLine.Fill("what", t.about, "n", strconv.Itoa(mostTemplate))
}

// Template returns what a field holds if that is a template.
func (f Field) Template() (t *Template, ok bool) {
	if cell, alone := f.Cells.(single); alone {
		t, ok = cell.value.(*Template)
	}
	return t, ok
}
