package axis

import "striderule/calc/report"

// The stations of a drivetrain in its picture, on the way from the driver to what moves.
const (
	AtDriver = iota
	AtMotor
	AtGears
	AtOutput
	stations
)

// stationKeys are the fields that each is typed in.
var stationKeys = [stations][]string{
	{"micro"}, {"angle"}, {"gears", "driving", "driven", "ratio"},
	{"out", "pitch", "teeth", "screw", "roller", "module", "pinion", "drum", "cable", "first", "second"},
}

// A Train is a drivetrain as its picture has it: the letters of its stations, empty where one
// stays as it is, what is given of each, and the keys of further fields of each.
type Train struct{ Letters, Texts, More [stations]string }

// stationsAt is where they stand on paper.
var stationsAt = [stations]float64{36, 104, 178, 256}

// trainPieces are a drivetrain: a driver with its pulses, a motor seen from its shaft, a pair of
// gears, and a belt between pulleys with what it moves.
var trainPieces = []report.Piece{
	{Role: report.Measure, At: []float64{58, 50, 84, 50}},
	{At: []float64{124, 50, 156, 50}},
	{At: []float64{200, 50, 230, 50}},
	{Kind: report.PlatePiece, At: []float64{16, 34, 58, 66}},
	{Role: report.Motion, At: []float64{21, 57, 27, 57, 27, 43, 33, 43, 33, 57, 39, 57, 39, 43, 45, 43, 45, 57, 52, 57}},
	{Kind: report.PlatePiece, At: []float64{84, 30, 124, 70}},
	{Kind: report.DiscPiece, At: []float64{104, 50, 11, 0}},
	{Kind: report.DiscPiece, At: []float64{104, 50, 2.5, 0}},
	{Kind: report.DiscPiece, At: []float64{165, 50, 9, 10}},
	{Kind: report.DiscPiece, At: []float64{190, 50, 16, 18}},
	{At: []float64{238, 41, 276, 41}},
	{At: []float64{238, 59, 276, 59}},
	{Kind: report.DiscPiece, At: []float64{238, 50, 9, 12}},
	{Kind: report.DiscPiece, At: []float64{276, 50, 9, 12}},
	{Kind: report.PlatePiece, Role: report.Motion, At: []float64{250, 35, 264, 44}},
}

// Guide is a small picture of a drivetrain beside its fields, whose keys end in these suffixes.
func (t *Train) Guide(alt string, suffixes ...string) *report.Drawing {
	s := report.Schematic("guide", "")
	s.Draw(0, 0, trainPieces)
	for i, letter := range t.Letters {
		if letter == "" {
			continue
		}
		tag := &report.Tag{Of: t.More[i], Letter: letter}
		for _, key := range stationKeys[i] {
			for _, suffix := range suffixes {
				if tag.Of != "" {
					tag.Of += " "
				}
				tag.Of += key + suffix
			}
		}
		s.WordsFor(tag, stationsAt[i], 18, "")
		if t.Texts[i] != "" {
			tag.Letter = ""
			s.WordsFor(tag, stationsAt[i], 82+14*float64(i%2), t.Texts[i]) // each free of the next
		}
	}
	d := s.Done(report.GuideHigh, alt)
	return &d
}
