package form

import (
	"cmp"
	"strings"
	"unicode"
	"unicode/utf8"

	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// A PostKind is how a forum marks its posts up.
type PostKind int

const (
	// PlainPost has no marks.
	PlainPost PostKind = iota
	// MarkdownPost is CommonMark, also as forums extend it.
	MarkdownPost
	// BBCodePost has tags in square brackets.
	BBCodePost
)

// marks are what a kind of post writes. Nothing stands at the front of a line
// that could be typed text: there, some of it would be a heading or a list.
type marks struct {
	escape func(string) string
	strong [2]string
	list   [2]string
	item   string
	link   word.Template
}

var postMarks = [...]marks{
	PlainPost:    {escapeWide, [2]string{}, [2]string{}, "- ", plainLink},
	MarkdownPost: {escapeMarkdown, [2]string{"**", "**"}, [2]string{}, "- ", markdownLink},
	BBCodePost:   {escapeWide, [2]string{"[b]", "[/b]"}, [2]string{"[list]\n", "[/list]\n"}, "[*]", bbCodeLink},
}

// Post returns the sheet as a text for a forum's thread: situation, result,
// verdict, entries, and the link to it. It has several lines.
func Post(f *Form, kind PostKind, link string) string {
	m := postMarks[kind]
	var b strings.Builder
	write := func(parts ...string) {
		for _, p := range parts {
			b.WriteString(p)
		}
	}
	named := func(name, text string) string {
		return m.strong[0] + m.escape(name) + ":" + m.strong[1] + " " + m.escape(text)
	}
	write(m.strong[0], m.escape(f.Page.Title), m.strong[1], "\n\n")
	if a := f.report.Answer; a != nil {
		if v := a.Verdict; v != nil {
			write(named(v.Title, v.Says.String()), "\n\n")
		}
		if a.Keep != nil {
			write(named(a.Keep.Label, a.Keep.String()), "\n\n")
		}
		if a.Instead == nil {
			write(named(a.Label, a.Figure.String()), "\n\n")
		} else {
			write(m.strong[0], m.escape(a.Instead.Title), m.strong[1], "\n\n")
			for _, b := range a.Instead.Blocks {
				switch b := b.(type) {
				case report.Para:
					write(m.escape(b.String()), "\n\n")
				case report.Figures:
					write(m.list[0])
					for _, x := range b.All {
						write(m.item, named(x.Label, x.String()), "\n")
					}
					write(m.list[1], "\n")
				}
			}
		}
	} else {
		write(noResultYet, "\n\n")
	}
	if c := f.Compare(); c != nil {
		for _, d := range c.Differences {
			write(named(postChanged, postChange.Fill("entry", d.Name, "before", cmp.Or(d.Before, "–"), "after", cmp.Or(d.After, "–"))), "\n")
		}
		write(named(postResult, postMoved.Fill("before", resultOf(c.Before), "after", resultOf(c.After))), "\n\n")
	}
	if remark := cmp.Or(Remark(f.remark), f.told); remark != "" {
		write(named(postRemark, remark), "\n\n")
	}
	write(m.list[0])
	for _, field := range f.fields {
		if text := f.Entered(field); text != "" && !f.brought[field.Key] {
			write(m.item, named(field.Label, text), "\n")
		}
	}
	write(m.list[1], "\n", m.link.Fill("address", link))
	return b.String()
}

func resultOf(a *report.Answer) string {
	if a == nil {
		return noResultThen
	}
	return a.Figure.String()
}

// Entered is what is typed or chosen in a field, in one line, with the unit
// where the text brings none; empty if nothing is, or if it does not apply.
func (f *Form) Entered(field sheet.Field) string {
	cells := f.plainCells(field)
	if len(cells) == 0 {
		return ""
	}
	if _, ok := field.Cells.At(0).(*sheet.Flag); ok {
		return f.flagged(field, cells)
	}
	return inWords(field, cells)
}

// flagged names the rows that a yes stands in.
func (f *Form) flagged(field sheet.Field, cells []string) string {
	var rows []string
	for row, cell := range cells {
		if cell != "" {
			rows = append(rows, field.Group.Row(row))
		}
	}
	return strings.Join(rows, ", ")
}

// unitOf is the unit of numbers in a field that bring none.
func unitOf(field sheet.Field) string {
	if field.Cells.Len() == 0 {
		return ""
	}
	if q, ok := field.Cells.At(0).(interface{ Unit() string }); ok {
		return q.Unit()
	}
	return ""
}

// NamesUnit reports whether a text brings a unit of its own, beside which the
// field's would mislead.
func NamesUnit(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune("°\"'/", r) })
}

// unlinked breaks up, with a space of no width, what forums make links and mentions of by
// themselves. What else cannot be seen goes.
func unlinked(s string) string {
	s = word.Shown(s)
	var b strings.Builder
	for i := range len(s) {
		b.WriteByte(s[i])
		next := byte(' ')
		if i+1 < len(s) {
			next = s[i+1]
		}
		switch {
		case s[i] == '@' && next != ' ', s[i] == ':' && next == '/',
			s[i] == '.' && i > 0 && s[i-1] != ' ' && (next|0x20 >= 'a' && next|0x20 <= 'z' || next >= utf8.RuneSelf):
			b.WriteString("\u200b")
		}
	}
	return b.String()
}

// escapeMarkdown writes text that stands in the middle of a line so that it
// comes out as it is: CommonMark takes a backslash before any ASCII sign.
func escapeMarkdown(s string) string {
	var b strings.Builder
	for _, r := range unlinked(s) {
		if strings.ContainsRune("\\`*_[]<>&~|$^=", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

// escapeWide writes wide brackets, as there is no escape that all forums know: nobody knows
// which of them plain text is put into.
func escapeWide(s string) string { return unit.Replaced(unlinked(s), wideBrackets...) }

var wideBrackets = []string{"[", "［", "]", "］", "<", "＜"}
