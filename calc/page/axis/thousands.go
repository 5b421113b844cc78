package axis

import (
	"strings"

	"striderule/calc/report"
)

// fewSteps is fewer steps per mm than machines have.
const fewSteps = 5

// DoubtThousands asks about a setting like 1.234, which may be one thousand and more; key is that
// of the field it stands in.
func (s *ScaleEntry) DoubtThousands(key string) (note report.Note, ok bool) {
	typed := s.Steps.Entry().Bare()
	ones, rest, _ := strings.Cut(typed, ".")
	if key != AsSteps || s.Steps.Number >= fewSteps || len(rest) != 3 {
		return note, false
	}
	in := func(number string) string { return number + " " + s.Steps.Entry().Unit() }
	return report.DoubtNote(thousandsDoubt, "typed", typed, "read", in(typed), "rather", in(ones+rest)), true
}
