package sheet

import "striderule/calc/unit"

// One is the cells of a field that is not repeated.
func One(v Value) Cells { return single{v} }

type single struct{ value Value }

func (single) Len() int       { return 1 }
func (single) Resize(int)     {}
func (s single) At(int) Value { return s.value }

// Input is the cells of a quantity that is not repeated.
func Input[T unit.Quantity](in *unit.Input[T]) Cells { return single{in.Entry()} }

// A Column is the cells of a column of quantities.
type Column[T unit.Quantity] Entries

// ColumnOf makes a column whose rows are like one entry.
func ColumnOf[T unit.Quantity](model unit.Input[T]) Column[T] {
	return Column[T]{model: *model.Entry()}
}

// Row is the entry of one row.
func (c *Column[T]) Row(i int) unit.Input[T] { return unit.Input[T](c.Rows[i]) }

// Cells are the column as a field holds it.
func (c *Column[T]) Cells() *Entries { return (*Entries)(c) }

// Entries is what there is to every Column, whatever its quantity.
type Entries struct {
	Rows  []unit.Entry
	model unit.Entry // what a new row holds
}

// Len returns the number of rows.
func (c *Entries) Len() int { return len(c.Rows) }

// At returns a row's value.
func (c *Entries) At(i int) Value { return &c.Rows[i] }

// Resize adds rows that are not given, or takes away the last ones.
func (c *Entries) Resize(n int) {
	for len(c.Rows) < n {
		c.Rows = append(c.Rows, c.model)
	}
	c.Rows = c.Rows[:n]
}

// A List is the cells of a column of anything else: its rows, made like the first.
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

// ListOf makes a list whose rows are like one value.
func ListOf[V any, P interface {
	*V
	Value
}](model V) List[V, P] {
	return List[V, P]{model: model}
}

// The columns that the pages have.
type (
	LengthList   = Column[unit.Length]
	AngleList    = Column[unit.Angle]
	CountList    = Column[unit.Count]
	RatioList    = Column[unit.Ratio]
	PerLength    = Column[unit.StepsPerLength]
	PerAngle     = Column[unit.StepsPerAngle]
	LengthByTurn = Column[unit.LengthPerTurn]
	AngleByTurn  = Column[unit.AnglePerTurn]
	SpeedList    = Column[unit.Speed]
	TurningList  = Column[unit.AngularSpeed]
	RateUpList   = Column[unit.Acceleration]
	ChoiceList   = List[Choice, *Choice]
	TextList     = List[Text, *Text]
	FlagList     = List[Flag, *Flag]
)

// LengthsOf makes a column of lengths: most columns are.
func LengthsOf(model unit.Input[unit.Length]) LengthList { return ColumnOf(model) }
