package form

import (
	"strconv"
	"strings"
	"unicode"

	"striderule/calc/sheet"
	"striderule/calc/unit"
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

// PostKinds are all of them, by name.
var PostKinds = [...]string{"Plain text", "Markdown", "BBCode"}

// marks are what a kind of post writes. Nothing stands at the front of a line
// that could be typed text: there, some of it would be a heading or a list.
type marks struct {
	escape         func(string) string
	strong         [2]string
	list           [2]string
	item           string
	before, behind string // around the address of a link
	end            string
}

var postMarks = [...]marks{
	PlainPost:    {func(s string) string { return s }, [2]string{}, [2]string{}, "- ", "Sheet to check or correct: ", "", ""},
	MarkdownPost: {escapeMarkdown, [2]string{"**", "**"}, [2]string{}, "- ", "[Sheet to check or correct](<", ">", ")"},
	BBCodePost:   {escapeBBCode, [2]string{"[b]", "[/b]"}, [2]string{"[list]\n", "[/list]\n"}, "[*]", "[url=", "]", "Sheet to check or correct[/url]"},
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
		write(named(a.Label, a.Figure.String()), "\n\n")
	} else {
		write("No result yet.\n\n")
	}
	write(m.list[0])
	for _, field := range f.fields {
		if text := f.Entered(field); text != "" {
			write(m.item, named(field.Label, text), "\n")
		}
	}
	write(m.list[1], "\n", m.before, link, m.behind, m.end)
	return b.String()
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
			rows = append(rows, field.Group.Noun+" "+strconv.Itoa(row+1))
		}
	}
	return strings.Join(rows, ", ")
}

// unitOf is the unit of numbers in a field that bring none.
func unitOf(field sheet.Field) string {
	if field.Cells.Len() == 0 {
		return ""
	}
	if q, ok := field.Cells.At(0).(interface {
		Unit() string
		Numeric() bool
	}); ok && q.Numeric() {
		return q.Unit()
	}
	return ""
}

// NamesUnit reports whether a text brings a unit of its own, beside which the
// field's would mislead.
func NamesUnit(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune("°\"'/", r) })
}

// escapeMarkdown writes text that stands in the middle of a line so that it
// comes out as it is: CommonMark takes a backslash before any ASCII sign. What
// forums make links of by themselves is broken up too.
func escapeMarkdown(s string) string {
	var b strings.Builder
	for i := range len(s) {
		c := s[i]
		if strings.IndexByte("\\`*_[]<>&~|@", c) >= 0 || c == ':' && strings.HasPrefix(s[i:], "://") ||
			c == '.' && i >= 3 && strings.EqualFold(s[i-3:i], "www") {
			b.WriteByte('\\')
		}
		b.WriteByte(c)
	}
	return b.String()
}

// escapeBBCode writes wide brackets, as there is no escape that all forums know,
// and a space of no width into what they make links of by themselves.
func escapeBBCode(s string) string { return unit.Replaced(s, bbCode...) }

var bbCode = []string{"[", "［", "]", "］", "://", ":\u200b//", "www.", "www\u200b."}
