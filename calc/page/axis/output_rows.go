package axis

import "striderule/calc/sheet"

type screwList = sheet.List[screwValue, *screwValue]

func screwColumn() screwList { return sheet.ListOf(screwValue{}) }

// OutputRows is an outputEntry for each row.
type OutputRows struct {
	Kind     sheet.ChoiceList
	Pitch    sheet.LengthList
	Teeth    sheet.CountList
	Screw    screwList
	Diameter sheet.LengthList
	Module   sheet.LengthList
	Pinion   sheet.CountList
	Drum     sheet.LengthList
	Cable    sheet.LengthList
	First    screwList
	Second   screwList
}

// NewOutputRows is a table without rows.
func NewOutputRows() OutputRows {
	wheels := func() sheet.CountList { return sheet.ColumnOf(wheelInput()) }
	return OutputRows{
		Kind:  sheet.ListOf(outputChoice()),
		Pitch: sheet.LengthsOf(pitchInput()), Teeth: wheels(),
		Screw: screwColumn(), First: screwColumn(), Second: screwColumn(),
		Diameter: sheet.LengthsOf(diameterInput()), Module: sheet.LengthsOf(moduleInput()), Pinion: wheels(),
		Drum: sheet.LengthsOf(diameterInput()), Cable: sheet.LengthsOf(cableInput()),
	}
}

// Cells are the columns.
func (o *OutputRows) Cells() outputCells {
	return outputCells{
		&o.Kind, o.Pitch.Cells(), o.Teeth.Cells(), &o.Screw, o.Diameter.Cells(), o.Module.Cells(), o.Pinion.Cells(),
		o.Drum.Cells(), o.Cable.Cells(), &o.First, &o.Second,
	}
}

// At is the entry of one row.
func (o *OutputRows) At(i int) *OutputEntry {
	return &OutputEntry{
		o.Kind.Rows[i], o.Pitch.Row(i), o.Teeth.Row(i), o.Screw.Rows[i], o.Diameter.Row(i), o.Module.Row(i), o.Pinion.Row(i),
		o.Drum.Row(i), o.Cable.Row(i), o.First.Rows[i], o.Second.Rows[i],
	}
}
