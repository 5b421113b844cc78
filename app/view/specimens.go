//go:build !wasm

package view

import (
	"striderule/calc/measure"
	"striderule/calc/report"
)

// Specimens are one of every block that a report can have, for who works on their look.
func Specimens() []report.Block {
	length := report.Figure{Label: "Length fed", Value: 76.267, Unit: "mm", U: 0.21}
	says := func(text string) report.Line { return report.Line{{Text: text + " "}, {Figure: &length}} }
	lines := []report.Line{says("First"), says("Then")}
	blocks := []report.Block{
		report.Para{Line: says("A paragraph with a figure:")},
		report.Figures{All: []report.Figure{length, {Label: "Error", Value: -4.67, Unit: "%", U: 0.2}}},
		report.Table{Caption: "Short", Head: []string{"Run", "Fed", "Error"}, Rows: [][]report.Line{{report.Say("1"), says(""), report.Say("0.1%")}}},
		report.Table{Caption: "Long", Head: []string{"Setting", "Before", "After", "What to do"}, Rows: [][]report.Line{{report.Say("Steps per mm"), report.Say("538.0"), report.Say("564.3"), report.Say("Write it into the controller and save it there.")}}},
		report.Steps{Items: lines}, report.Points{Items: lines},
		report.Code{ID: "look-1", Label: "Steps per mm", Text: "564.3"},
		report.Code{ID: "look-2", Label: "Several lines", Text: "G1 X10 F600\nG1 X100 F600", File: "test.txt"},
		report.Brought{Before: "moves", All: []report.TemplateText{{Key: "move", Label: "Line of a move", Text: "G1 {axis}{length} F6000"}}},
		report.Code{ID: "moves", Label: "Moves", Text: "G1 X10 F6000", Brought: true},
		report.Brought{Before: "line", State: report.Accepted, All: []report.TemplateText{{Key: "move", Label: "Line of a move", Text: "G1 {axis}{length} F6000"}}},
		report.Ask{Keys: []string{"asked", "steps"}, For: "the correction"},
		report.Go{Key: "asked", Text: "I have set it: check it"},
		report.Links{All: []report.Link{{Text: "Convert it", Slug: "convert"}}},
		report.Bars{Title: "Where the uncertainty comes from", Unit: "%", All: []report.Bar{{Label: "Scatter", Value: length}, {Label: "Resolution", Value: report.Figure{Value: 12, Unit: "mm"}}}},
		report.Lots{Value: 76, Budget: measure.Budget{}, Commanded: 80, Low: -5, High: -4.4},
	}
	for kind := report.Tip; kind <= report.Caution; kind++ {
		blocks = append(blocks, report.Note{Kind: kind, Line: says(kind.String())})
	}
	picture := report.Chart{ID: "look", Title: "Every mark", X: report.Scale{Label: "Run", Digits: 3}, Y: report.Scale{Label: "Error", Unit: "%", Digits: 3},
		Bands: []report.Band{{Lo: -0.5, Hi: 0.5, Label: "Acceptable error"}}}
	for kind := report.Counted; kind <= report.Later; kind++ {
		at := float64(kind)
		picture.Keys[kind] = "Kind " + string('1'+rune(kind))
		picture.Points = append(picture.Points, report.Point{X: at, Y: at / 3, Lo: at/3 - 0.2, Hi: at/3 + 0.2, Label: picture.Keys[kind], Kind: kind})
	}
	for kind := report.Fitted; kind <= report.Limit+3; kind++ {
		picture.Curves = append(picture.Curves, report.Curve{Label: "Curve " + string('1'+rune(kind)), Kind: kind, At: []report.Place{{X: 0, Y: float64(kind) / 4}, {X: 4, Y: float64(kind) / 3}}})
	}
	sketch := report.Drawing{ID: "look", Title: "Every role", Alt: "A line of each role.", To: 100, High: 100}
	for role := report.Body; role <= report.Ghost; role++ {
		y := 15 + 15*float64(role)
		sketch.Shapes = append(sketch.Shapes, report.Stroke{Role: role, Points: []report.XY{{X: 5, Y: y}, {X: 95, Y: y}}, Head: true})
	}
	return append(blocks, picture, sketch)
}
