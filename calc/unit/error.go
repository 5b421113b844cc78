package unit

import "errors"

// Causes for which a text is refused; match them with errors.Is.
var (
	ErrNumber    = errors.New("not a number")
	ErrUnit      = errors.New("unknown unit")
	ErrRange     = errors.New("outside the range")
	ErrWhole     = errors.New("not whole")
	ErrAmbiguous = errors.New("ambiguous decimal mark")
)

// An Error refuses a typed text. Problem says what is wrong with it and Advice
// what would be right; both are parts of a sentence that a form completes with
// the field's name.
type Error struct {
	Text    string // as typed
	Problem string // "not a length"
	Advice  string // "a length looks like 80 mm"
	Cause   error  // one of the sentinels, for errors.Is
}

func (e *Error) Error() string {
	return "`" + clip(e.Text) + "`: " + e.Problem + "; " + e.Advice
}

// clip shortens what a sentence repeats.
func clip(text string) string {
	const most = 60
	for i := range text { // at the start of a letter, not inside one
		if i >= most {
			return text[:i] + "…"
		}
	}
	return text
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Cause }
