package form

import (
	"slices"
	"strconv"
	"strings"

	"striderule/calc/link"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// read takes the pieces of a link of at most so many characters, and returns what its
// fields held before.
func (f *Form) read(fragment string, most int) (was map[string][]string) {
	if cut, long := cutLong(fragment, most); long {
		fragment = cut
		f.notice("link", longLink.Fill("n", strconv.Itoa(most)))
	}
	was = map[string][]string{}
	if link.EncodedTwice(fragment) {
		f.notice("link", encodedTwice)
	}
	pieces := link.Split(fragment)
	for _, p := range pieces {
		switch field, known := f.Field(p.Key); {
		case p.Key == "v" && len(p.Cells) > 0:
			if v := strings.Join(p.Cells, ","); v != link.Version {
				f.notice("v", otherVersion.Fill("theirs", v, "ours", link.Version))
			}
		case p.Key == link.ClaimKey && p.Cells != nil:
			f.receive(p.Cells)
		case p.Key == link.RemarkKey && p.Cells != nil && f.told == "":
			f.told = Remark(strings.Join(p.Cells, ","))
		case p.Key == link.RemarkKey && p.Cells != nil:
			f.notice(p.Key, keyTwice.Fill("key", p.Key))
		case p.Key == CardKey:
			f.card = word.Clip(strings.Join(p.Cells, ","), mostName)
		case f.takeWas(was, p), !known && isMachineKey(p.Key):
		case !known:
			f.keep(p, noField.Fill("key", p.Key))
		case p.Cells == nil:
			f.keep(p, noValue.Fill("key", p.Key))
		case f.text[p.Key] != nil:
			f.notice(p.Key, keyTwice.Fill("key", p.Key))
		default:
			f.take(field, p.Cells)
		}
	}
	f.SetMachine(pieces)
	f.checkWhole(pieces)
	return was
}

// mostRemark is how long a remark may be, in characters.
const mostRemark = 140

// Remark makes a text one line that may go with a reply.
func Remark(text string) string { return word.Clip(text, mostRemark) }

// Mended tells what was mended in the link that the form was read from.
func (f *Form) Mended(said []string) {
	if len(said) > 0 {
		f.notices = lists.Concat([]report.Problem{{Key: "link", Says: link.MendedNotice(said)}}, f.notices)
	}
}

// cutLong cuts a fragment to so many characters, at the end of a piece.
func cutLong(fragment string, most int) (string, bool) {
	if len(fragment) <= most {
		return fragment, false
	}
	end := strings.LastIndexByte(fragment[:most+1], '&')
	return fragment[:max(end, 0)], true
}

func (f *Form) notice(key, says string) {
	f.notices = append(f.notices, report.Problem{Key: key, Says: says})
}

// keep keeps what is not understood, less empty cells at the end: a comma there
// would pass for one that a sentence put behind the link.
func (f *Form) keep(p link.Piece, says string) {
	for len(p.Cells) > 1 && p.Cells[len(p.Cells)-1] == "" {
		p.Cells = p.Cells[:len(p.Cells)-1]
	}
	f.unknown = append(f.unknown, p)
	f.notice(p.Key, says)
}

// take puts a link's cells into a field.
func (f *Form) take(field sheet.Field, cells []string) {
	most := f.most(field)
	if len(cells) > most && most == 1 {
		cells = []string{strings.Join(cells, ",")} // a comma typed by hand
	}
	if len(cells) > most {
		f.notice(field.Key, manyValues.Fill("field", field.Label, "n", strconv.Itoa(len(cells)), "most", strconv.Itoa(most)))
		cells = cells[:most]
	}
	f.text[field.Key] = slices.Clone(cells)
	if field.Group != nil {
		f.rows[field.Group] = max(f.rows[field.Group], len(cells))
	}
}

// most is how many cells a field may have.
func (f *Form) most(field sheet.Field) int {
	if field.Group != nil {
		return field.Group.Most
	}
	if c, ok := field.Cells.(*sheet.Checks); ok {
		return len(c.Options())
	}
	return 1
}
