package report

// A Verdict is what to do about an error, in words. It shows by word and
// shape, never only by colour.
type Verdict struct {
	Kind    VerdictKind
	Title   string // "Change it"
	Says    Line   // why, in plain words
	Mistake bool   // a common mistake makes just this error: it is to be looked for first
	Parts   bool   // what is set is what the parts give, which is worth more than the readings
	Interim bool   // what is to be set is better by far, and not yet good enough
	Slip    bool   // the runs slipped, which the title says too
	After   bool   // it is of check runs, made after a change
}

// Word names the verdict for machines: as its kind, "mistake", "parts" or "interim".
func (v Verdict) Word() string {
	switch {
	case v.Mistake:
		return "mistake"
	case v.Parts:
		return "parts"
	case v.Interim:
		return "interim"
	}
	return v.Kind.String()
}

// ID names all that the title says, for what is stored: "change", "mistake-slip", "after-leave".
func (v Verdict) ID() string {
	id := v.Word()
	if v.After {
		id = "after-" + id
	}
	if v.Slip {
		id += "-slip"
	}
	return id
}

// A VerdictKind is which of the verdicts it is.
type VerdictKind int

const (
	// Leave: the error is acceptable.
	Leave VerdictKind = iota
	// Change: it is not.
	Change
	// MeasureMore: these readings cannot tell.
	MeasureMore
	// Hopeless: no number of runs could tell, with these means.
	Hopeless
	// Either: it does not matter.
	Either
)

// String names the kind in links to style sheets and in tests.
func (k VerdictKind) String() string {
	return [...]string{"leave", "change", "more", "hopeless", "either"}[k]
}
