package axis

import (
	"math"
	"slices"
	"strings"

	"striderule/calc/report"
	"striderule/calc/unit"
)

// DoubtInches asks beside a length without a unit, of less than so many mm, whether inches are
// meant; it reports whether it does.
func DoubtInches(to *report.Remarks, key string, row int, length *unit.Entry, least float64) bool {
	typed := length.Typed()
	if !length.Given || length.Number >= least || strings.Trim(typed, "0123456789./ ") != "" {
		return false
	}
	to.Doubt(key, row, littleRead.Fill("typed", typed))
	return true
}

// soldPitches are those that toothed belts are sold with, mm: ISO 5296, ISO 17396, and 8 and 14 of
// ISO 13050.
var soldPitches = []float64{2, 2.032, 2.5, 3, 3.175, 5, 5.08, 8, 9.525, 10, 12.7, 14, 15, 20, 22.225, 31.75}

// nearPitch is how near to one of them, as a share, a pitch comes that is typed with three digits.
const nearPitch = 0.002

// leastPitch is below every one of them, mm.
const leastPitch = 1

// DoubtPitch asks beside the pitch of a belt that none is sold with what was typed there; it
// reports whether it does.
func (o *OutputEntry) DoubtPitch(to *report.Remarks, suffix string, row int) bool {
	pitch, key := o.Pitch.Entry(), "pitch"+suffix
	if !pitch.Given || slices.ContainsFunc(soldPitches, func(p float64) bool { return math.Abs(pitch.Number/p-1) < nearPitch }) {
		return false
	}
	if !DoubtInches(to, key, row, pitch, leastPitch) {
		to.Doubt(key, row, oddPitch.Fill("pitch", millimetres(o.Pitch.Value())))
	}
	return true
}

// leastStarts is a lead from which a bare number is no pitch of a screw with several starts, mm.
const leastStarts = 4

// mayBePitch returns the lead of a screw that may be its pitch instead: it was typed as one small
// length, without designation or starts.
func (o *OutputEntry) mayBePitch() (lead string, ok bool) {
	s := o.Screw
	plain := s.Given && s.Value.Diameter == 0 && s.Value.Threads == 0 && !strings.ContainsAny(s.text, "x×X*")
	return millimetres(s.Value.Lead()), plain && s.Value.Lead() < leastStarts
}

// DoubtLead asks of such a screw whether its length is the lead or the pitch.
func (o *OutputEntry) DoubtLead() (note report.Note, ok bool) {
	lead, ok := o.mayBePitch()
	return report.DoubtNote(leadOrPitch, "lead", lead), ok
}
