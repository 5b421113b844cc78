package calc

import "striderule/calc/unit"

// one is the cells of a field that is not repeated.
func one(v Value) Cells { return single{v} }

type single struct{ value Value }

func (single) Len() int       { return 1 }
func (single) Resize(int)     {}
func (s single) At(int) Value { return s.value }

// A List is the cells of a column: its rows, made like the first.
type List[V any, P interface {
	*V
	Value
}] struct {
	Rows  []V
	model V // what a new row holds
}

// Len returns the number of rows.
func (l *List[V, P]) Len() int { return len(l.Rows) }

// At returns a row's value.
func (l *List[V, P]) At(i int) Value { return P(&l.Rows[i]) }

// Resize adds rows that are not given, or takes away the last ones.
func (l *List[V, P]) Resize(n int) {
	for len(l.Rows) < n {
		l.Rows = append(l.Rows, l.model)
	}
	l.Rows = l.Rows[:n]
}

func listOf[V any, P interface {
	*V
	Value
}](model V) List[V, P] {
	return List[V, P]{model: model}
}

// The columns that the pages have.
type (
	lengthList   = List[unit.Input[unit.Length], *unit.Input[unit.Length]]
	angleList    = List[unit.Input[unit.Angle], *unit.Input[unit.Angle]]
	countList    = List[unit.Input[unit.Count], *unit.Input[unit.Count]]
	ratioList    = List[unit.Input[unit.Ratio], *unit.Input[unit.Ratio]]
	perLength    = List[unit.Input[unit.StepsPerLength], *unit.Input[unit.StepsPerLength]]
	perAngle     = List[unit.Input[unit.StepsPerAngle], *unit.Input[unit.StepsPerAngle]]
	lengthByTurn = List[unit.Input[unit.LengthPerTurn], *unit.Input[unit.LengthPerTurn]]
	angleByTurn  = List[unit.Input[unit.AnglePerTurn], *unit.Input[unit.AnglePerTurn]]
	speedList    = List[unit.Input[unit.Speed], *unit.Input[unit.Speed]]
	turningList  = List[unit.Input[unit.AngularSpeed], *unit.Input[unit.AngularSpeed]]
	rateUpList   = List[unit.Input[unit.Acceleration], *unit.Input[unit.Acceleration]]
	choiceList   = List[Choice, *Choice]
	textList     = List[Text, *Text]
)
