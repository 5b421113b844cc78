package form

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"striderule/calc/link"
	"striderule/calc/lists"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// Edition names the calculations: a release raises it, with the month, if after its
// changes the same entries give another result. A link carries that of its sender.
const Edition = "2026-12"

// How precisely a link carries the value and its uncertainty.
const (
	claimDigits  = 10
	claimUDigits = 3
)

// A Claim is the headline result of a link's sender.
type Claim struct {
	Output  string  // its ID
	Value   float64 // in the output's unit
	U       float64 // expanded uncertainty; 0 if it was not said
	Edition string  // that made it; empty if it was not said
	sum     string  // of the entries with which it was sent (link.Sum); empty if it was not said
}

// claimOf is what a link of these pieces says of an answer.
func claimOf(a *report.Answer, pieces []link.Piece) link.Piece {
	said := a.ID + ":" + unit.PlainTrim(a.Value, claimDigits) + ":"
	if a.U > 0 {
		said += unit.PlainTrim(a.U, claimUDigits)
	}
	return link.Piece{Key: link.ClaimKey, Cells: []string{said + ":" + Edition + ":" + link.Sum(pieces)}}
}

// A Check compares a sender's result with what this page works out.
type Check int

const (
	// Unclaimed: the link carried no result, or the entries were changed.
	Unclaimed Check = iota
	// Same: both agree in the digits that the link carries.
	Same
	// Differs: they do not.
	Differs
	// Reworked: the values agree, and their ± is of an edition that worked it out differently.
	Reworked
	// Altered: the results agree, and the entries are not those that were sent.
	Altered
)

// Check returns whether the sender saw the same result, with a sentence. The ± alone may have
// become another with an edition: that is no reason to doubt the sender.
func (f *Form) Check() (Check, string) {
	check, says := f.compareClaim()
	if check != Unclaimed && f.altered != "" {
		if check != Differs {
			return Altered, word.Together(f.altered, stillSame)
		}
		return check, word.Together(says, f.altered)
	}
	return check, says
}

// compareClaim is Check of the result alone.
func (f *Form) compareClaim() (Check, string) {
	c := f.received
	if c == nil || f.settingAsked {
		return Unclaimed, ""
	}
	ours, found := f.figureOf(c.Output)
	theirs := ours
	theirs.Value, theirs.U, theirs.Like = c.Value, c.U, ours.U
	said, here := apart(theirs, ours)
	says := ""
	switch a := f.report.Answer; {
	case !found && a == nil:
		says = noResult.Fill("theirs", said)
	case !found:
		says = otherOutput.Fill("output", theirs.Label, "theirs", said, "other", a.Label, "ours", a.Figure.String())
	case math.Abs(ours.Value-c.Value) > 1e-9*math.Abs(ours.Value):
		says = otherValue.Fill("theirs", said, "ours", here)
	case c.U == 0, math.Abs(ours.U-c.U) <= 0.006*c.U: // half of the third digit
		return Same, sameResult
	case c.Edition != "" && c.Edition != Edition:
		return Reworked, otherInterval.Fill("since", max(c.Edition, Edition))
	default:
		says = otherValue.Fill("theirs", "± "+unit.Trim(c.U, claimUDigits), "ours", "± "+unit.Trim(ours.U, claimUDigits))
	}
	why := eitherChanged
	switch {
	case c.Edition != "" && c.Edition != Edition:
		why = otherEdition.Fill("theirs", c.Edition, "ours", Edition)
	case f.altered != "" || len(f.Problems()) > 0:
		why = "" // that says why
	case c.sum != "":
		why = resultChanged
	}
	return Differs, word.Together(says, why)
}

// figureOf returns a figure of the report, the headline before any other. Where there is none it
// is false, and the figure has no value but the label and the unit that it would have.
func (f *Form) figureOf(id string) (report.Figure, bool) {
	if a := f.report.Answer; a != nil && a.ID == id {
		return a.Figure, true
	}
	for _, figure := range f.report.Figures() {
		if figure.ID == id {
			return figure, true
		}
	}
	none := report.Figure{Label: id}
	for _, o := range f.Page.Outputs {
		if o.ID != id {
			continue
		}
		straight, rotary, two := strings.Cut(o.Unit, eitherUnit)
		none.Label, none.Unit = o.Label, straight
		for _, cells := range f.text {
			if two && slices.Contains(cells, "rotary") {
				none.Unit = rotary
			}
		}
		if none.Unit == "1" { // a bare number
			none.Unit = ""
		}
	}
	return none, false
}

// apart writes two figures in the digits that they support, or in as many as it takes to tell
// one from the other.
func apart(a, b report.Figure) (string, string) {
	for digits := 6; digits <= claimDigits && (a.Number() == b.Number() || a.U+a.Like == 0 && a.Digits == 0); digits++ {
		a.U, a.Like, a.Digits = 0, 0, digits
		b.U, b.Like, b.Digits = 0, 0, digits
	}
	return a.String(), b.String()
}

// ShareFragment is Fragment with the headline result for the receiver's check.
func (f *Form) ShareFragment() string { return link.Join(f.claimed(f.pieces())) }

// LinkFragment is that of the link to the sheet as it stands: what was changed in a received
// sheet goes with it, where both fit into a link. It is false where not even the sheet does.
func (f *Form) LinkFragment() (fragment string, ok bool) {
	if fragment = f.ReplyFragment(); len(fragment) > link.MostLink {
		fragment = f.ShareFragment()
	}
	return fragment, len(fragment) <= link.MostLink
}

// claimed adds the headline result to the pieces of a sheet, behind the version.
func (f *Form) claimed(pieces []link.Piece) []link.Piece {
	if a := f.report.Answer; a != nil && len(pieces) > 0 {
		return lists.Concat(pieces[:1], []link.Piece{claimOf(a, pieces)}, pieces[1:])
	}
	return pieces
}

// checkWhole tells where a link's entries are not those that its sum was made of, at the last
// of them: there it was cut, if it was.
func (f *Form) checkWhole(pieces []link.Piece) {
	if f.received == nil || len(pieces) == 0 {
		return
	}
	missing, ok := link.Missing(pieces, f.received.sum)
	if !ok || f.received.sum == link.Sum(pieces) {
		return
	}
	last := pieces[len(pieces)-1]
	f.altered = otherEntries
	if missing > 0 {
		f.altered = cutShort.Fill(missing, "last", word.Clip(cmp.Or(f.Label(last.Key), last.Key), 40))
	}
	f.notices = append(f.notices, report.Problem{Key: last.Key, Row: max(0, len(last.Cells)-1), Says: f.altered})
}

// mostClaim is how long a sender's result may be, in characters.
const mostClaim = 80

// receive takes a sender's result from a link.
func (f *Form) receive(cells []string) {
	if f.received != nil {
		f.notice(link.ClaimKey, keyTwice.Fill("key", link.ClaimKey))
		return
	}
	text := strings.Join(cells, ",")
	parts := append(strings.Split(text, ":"), "", "", "", "")
	v, err := strconv.ParseFloat(parts[1], 64)
	u, errU := 0.0, error(nil)
	if parts[2] != "" {
		u, errU = strconv.ParseFloat(parts[2], 64)
	}
	if err != nil || errU != nil || !isPlain(parts[0]) || !isPlain(parts[3]) || !isPlain(parts[4]) || !unit.Finite(v) || !unit.Finite(u) || u < 0 || len(text) > mostClaim {
		f.notice(link.ClaimKey, badClaim.Fill("typed", text))
		return
	}
	f.received = &Claim{parts[0], v, u, parts[3], parts[4]}
}

// isPlain reports whether a text is as the ID of an output, or an edition: no
// words of a stranger get into what the page itself says.
func isPlain(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' })
}
