package axis

import (
	"errors"
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/unit"
	"striderule/calc/word"
)

var errTeeth = errors.New("not-teeth")

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
		return refuseTeeth(text, manyStages, "n", strconv.Itoa(mostStages))
	}
	var all []unit.Count
	for _, s := range stages {
		in := TeethInput()
		err := in.Entry().Set(s)
		if refused, ok := errors.AsType[*unit.Error](err); ok && errors.Is(err, unit.ErrRange) {
			return refuseTeeth(text, teethRange, refused.Parts...)
		}
		if err != nil || !in.Given {
			return refuseTeeth(text, notTeeth)
		}
		all = append(all, in.Value())
	}
	t.Value = all
	return nil
}

func refuseTeeth(text string, problem word.Template, parts ...string) error {
	return &unit.Error{Text: text, Problem: problem, Parts: parts, Cause: errTeeth}
}

// String returns the counts with an x between them.
func (t *Teeth) String() string {
	all := make([]string, len(t.Value))
	for i, n := range t.Value {
		all[i] = strconv.Itoa(int(n))
	}
	return strings.Join(all, betweenStages)
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
func (t *Teeth) About() string { return aboutTeeth }

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
