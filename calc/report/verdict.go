package report

// A Verdict is what to do about an error, in words. It shows by word and
// shape, never only by colour.
type Verdict struct {
	Kind    VerdictKind
	Title   string // "Change it"
	Says    Line   // why, in plain words
	Mistake bool   // a usual mistake makes just this error: it is to be looked for first
}

// Word names the verdict for machines: as its kind, or "mistake".
func (v Verdict) Word() string {
	if v.Mistake {
		return "mistake"
	}
	return v.Kind.String()
}

// A VerdictKind is which of the verdicts it is.
type VerdictKind int

const (
	// Leave: the error is inside the tolerance.
	Leave VerdictKind = iota
	// Change: it is outside.
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
