package calc

import (
	"math"
	"strconv"
	"strings"

	"striderule/calc/unit"
)

// claimKey carries, in a shared link, the result that its sender saw.
const claimKey = "saw"

// claimDigits is how precisely a link carries it.
const claimDigits = 10

// A Claim is the headline result of a link's sender.
type Claim struct {
	Output string  // its ID
	Value  float64 // in the output's unit
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
	if f.received == nil {
		return Unclaimed, ""
	}
	saw := unit.Trim(f.received.Value, claimDigits)
	a := f.report.Answer
	switch {
	case a == nil:
		return Differs, "Differs: the link said " + saw + "; these entries give no result."
	case a.ID != f.received.Output:
		return Differs, "Differs: the link said " + f.received.Output + " " + saw + "; these entries give " + a.ID + " " + unit.Trim(a.Value, claimDigits) + "."
	case math.Abs(a.Value-f.received.Value) > 1e-9*math.Abs(a.Value):
		return Differs, "Differs: the link said " + saw + "; these entries give " + unit.Trim(a.Value, claimDigits) + "."
	}
	return Same, "Same result as when this sheet was sent or kept."
}

// ShareFragment is Fragment with the headline result for the receiver's check.
func (f *Form) ShareFragment() string {
	pieces := f.pieces()
	if a := f.report.Answer; a != nil && len(pieces) > 0 {
		pieces = append(pieces, Piece{claimKey, []string{a.ID + ":" + unit.Trim(a.Value, claimDigits)}})
	}
	return Join(pieces)
}

// receive takes a sender's result from a link.
func (f *Form) receive(cells []string) {
	if f.received != nil {
		f.notice(claimKey, quote(claimKey)+" stands in the link twice: the first one counts.")
		return
	}
	text := strings.Join(cells, ",")
	id, number, _ := strings.Cut(text, ":")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || !unit.Finite(v) {
		f.notice(claimKey, "The result that the sender saw, "+quote(text)+", is not a number: there is nothing to compare with.")
		return
	}
	f.received = &Claim{id, v}
}
