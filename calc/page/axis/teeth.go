package axis

import (
	"errors"
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

var errTeeth = errors.New("not a list of teeth")

// mostStages is more gear stages than small machines have.
const mostStages = 6

// TeethInput reads the teeth of a wheel.
func TeethInput() unit.Input[unit.Count] { return unit.Teeth.Input("", 1, 10_000) }

// Teeth are the tooth counts on one side of one or more gear stages, in order
// from the motor: 12, or 12 x 20.
type Teeth struct {
	Value []unit.Count // nil while not given
}

// Set reads counts with an x between them. A text that is refused leaves
// nothing given.
func (t *Teeth) Set(text string) error {
	t.Value = nil
	if strings.TrimSpace(text) == "" {
		return nil
	}
	stages := strings.Split(unit.Replaced(text, "×", "x", "X", "x", "*", "x"), "x")
	if len(stages) > mostStages {
		return refuseTeeth(text, "more than "+strconv.Itoa(mostStages)+" stages", "write the product of some of them as one stage")
	}
	var all []unit.Count
	for _, s := range stages {
		in := TeethInput()
		err := in.Entry().Set(s)
		if refused, ok := errors.AsType[*unit.Error](err); ok && errors.Is(err, unit.ErrRange) {
			return refuseTeeth(text, refused.Problem, refused.Advice)
		}
		if err != nil || !in.Given {
			return refuseTeeth(text, "not a list of teeth", "teeth look like 12; several stages like 12 x 20, in order from the motor")
		}
		all = append(all, in.Value())
	}
	t.Value = all
	return nil
}

func refuseTeeth(text, problem, advice string) error {
	return &unit.Error{Text: text, Problem: problem, Advice: advice, Cause: errTeeth}
}

// String returns the counts with an x between them.
func (t *Teeth) String() string {
	all := make([]string, len(t.Value))
	for i, n := range t.Value {
		all[i] = strconv.Itoa(int(n))
	}
	return strings.Join(all, " x ")
}

// Plain returns the counts without what a link would have to escape; what
// cannot be read stays as it was typed.
func (t *Teeth) Plain(text string) string {
	var read Teeth
	if err := read.Set(text); err != nil {
		return strings.TrimSpace(text)
	}
	return strings.ReplaceAll(read.String(), " ", "")
}

// About says what is read.
func (t *Teeth) About() string {
	return "a number of teeth, 1 to 10000; for several stages like 12 x 20, in order from the motor"
}

// StagesOf pairs the teeth of both sides. ok is false where a side is not
// given, or has another number of stages.
func StagesOf(driving, driven Teeth) (stages drive.Stages, ok bool) {
	if len(driving.Value) == 0 || len(driving.Value) != len(driven.Value) {
		return nil, false
	}
	for i := range driving.Value {
		stages = append(stages, drive.Stage{Driving: driving.Value[i], Driven: driven.Value[i]})
	}
	return stages, true
}
