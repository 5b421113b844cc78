package form

import (
	"math"
	"strconv"
	"strings"

	"striderule/calc/link"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// Edition names the calculations: a release raises it, with the month, if after its
// changes the same entries give another result. A link carries that of its sender.
const Edition = "2026-11"

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
}

// claimOf is what a link says of an answer.
func claimOf(a *report.Answer) link.Piece {
	said := a.ID + ":" + unit.Trim(a.Value, claimDigits) + ":"
	if a.U > 0 {
		said += unit.Trim(a.U, claimUDigits)
	}
	return link.Piece{Key: link.ClaimKey, Cells: []string{said + ":" + Edition}}
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
)

// Check returns whether the sender saw the same result, with a sentence.
func (f *Form) Check() (Check, string) {
	c := f.received
	if c == nil {
		return Unclaimed, ""
	}
	saw, name := unit.Trim(c.Value, claimDigits), ""
	found := ""
	switch a := f.report.Answer; {
	case a == nil:
		found = "no result"
	case a.ID != c.Output:
		name, found = c.Output+" ", a.ID+" "+unit.Trim(a.Value, claimDigits)
	case math.Abs(a.Value-c.Value) > 1e-9*math.Abs(a.Value):
		found = unit.Trim(a.Value, claimDigits)
	case c.U > 0 && math.Abs(a.U-c.U) > 0.006*c.U: // half of the third digit
		saw, found = "± "+unit.Trim(c.U, claimUDigits), "± "+unit.Trim(a.U, claimUDigits)
	default:
		return Same, "Same result as when this sheet was sent or kept."
	}
	says := "Differs: the link said " + name + saw + "; these entries give " + found + "."
	if c.Edition != "" && c.Edition != Edition {
		says += " The link was made by edition " + c.Edition + " of the calculations; this is edition " + Edition + "."
	}
	return Differs, says
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

// claimed adds the headline result to the pieces of a sheet.
func (f *Form) claimed(pieces []link.Piece) []link.Piece {
	if a := f.report.Answer; a != nil && len(pieces) > 0 {
		return append(pieces, claimOf(a))
	}
	return pieces
}

// mostClaim is how long a sender's result may be, in characters.
const mostClaim = 80

// receive takes a sender's result from a link.
func (f *Form) receive(cells []string) {
	if f.received != nil {
		f.notice(link.ClaimKey, word.Quote(link.ClaimKey)+" stands in the link twice: the first one counts.")
		return
	}
	text := strings.Join(cells, ",")
	parts := append(strings.Split(text, ":"), "", "", "")
	v, err := strconv.ParseFloat(parts[1], 64)
	u, errU := 0.0, error(nil)
	if parts[2] != "" {
		u, errU = strconv.ParseFloat(parts[2], 64)
	}
	if err != nil || errU != nil || !isPlain(parts[0]) || !isPlain(parts[3]) || !unit.Finite(v) || !unit.Finite(u) || u < 0 || len(text) > mostClaim {
		f.notice(link.ClaimKey, "The result that the sender saw, "+word.Quote(text)+", is not a number: there is nothing to compare with.")
		return
	}
	f.received = &Claim{parts[0], v, u, parts[3]}
}

// isPlain reports whether a text is as the ID of an output, or an edition: no
// words of a stranger get into what the page itself says.
func isPlain(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-' })
}
