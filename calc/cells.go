package calc

import "striderule/calc/unit"

// one is the cells of a field that is not repeated.
func one(v Value) Cells { return single{v} }

type single struct{ value Value }

func (single) Len() int       { return 1 }
func (single) Resize(int)     {}
func (s single) At(int) Value { return s.value }

// input is the cells of a quantity that is not repeated.
func input[T unit.Quantity](in *unit.Input[T]) Cells { return single{in.Entry()} }

// A Column is the cells of a column of quantities.
type Column[T unit.Quantity] column

// columnOf makes a column whose rows are like one entry.
func columnOf[T unit.Quantity](model unit.Input[T]) Column[T] {
	return Column[T]{model: *model.Entry()}
}

// Row is the entry of one row.
func (c *Column[T]) Row(i int) unit.Input[T] { return unit.Input[T](c.rows[i]) }

func (c *Column[T]) cells() *column { return (*column)(c) }

// column is what there is to every Column, whatever its quantity.
type column struct {
	rows  []unit.Entry
	model unit.Entry // what a new row holds
}

func (c *column) Len() int       { return len(c.rows) }
func (c *column) At(i int) Value { return &c.rows[i] }
func (c *column) Resize(n int) {
	for len(c.rows) < n {
		c.rows = append(c.rows, c.model)
	}
	c.rows = c.rows[:n]
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

func listOf[V any, P interface {
	*V
	Value
}](model V) List[V, P] {
	return List[V, P]{model: model}
}

// The columns that the pages have.
type (
	lengthList   = Column[unit.Length]
	angleList    = Column[unit.Angle]
	countList    = Column[unit.Count]
	ratioList    = Column[unit.Ratio]
	perLength    = Column[unit.StepsPerLength]
	perAngle     = Column[unit.StepsPerAngle]
	lengthByTurn = Column[unit.LengthPerTurn]
	angleByTurn  = Column[unit.AnglePerTurn]
	speedList    = Column[unit.Speed]
	turningList  = Column[unit.AngularSpeed]
	rateUpList   = Column[unit.Acceleration]
	choiceList   = List[Choice, *Choice]
	textList     = List[Text, *Text]
	flagList     = List[Flag, *Flag]
)

func lengthsOf(model unit.Input[unit.Length]) lengthList { return columnOf(model) }
