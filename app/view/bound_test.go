package view

import (
	"strings"
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/stretchr/testify/assert"

	"striderule/calc/report"
)

func TestBound(t *testing.T) {
	for says, want := range map[string]string{
		"80 mm":                               "80_mm",
		"Feed 80 mm at 1.5 mm/s, or 3.15 in.": "Feed 80_mm at 1.5_mm/s, or 3.15_in.",
		"0.5 % (40 000 pulses/s; 8 mm³/s)":    "0.5_% (40 000_pulses/s; 8_mm³/s)",
		"16 microsteps of 538 steps/mm":       "16 microsteps of 538_steps/mm",
		"3 runs, 2 more, V 5, mm 6":           "3 runs, 2 more, V 5, mm 6",
		"5 V":                                 "5_V",
		"5 ":                                  "5 ",
		" 5":                                  " 5",
		"":                                    "",
		"±2 mm 3 mm":                          "±2_mm 3_mm",
		"an error of ± 0.5%":                  "an error of ±_0.5%",
	} {
		assert.Equal(t, want, strings.ReplaceAll(Bound(says), noBreak, "_"), says)
	}
}

// In a sentence a figure keeps its unit, and its uncertainty keeps its sign; alone it may break.
func TestFiguresAreBound(t *testing.T) {
	breaks := func(l report.Line) int { return strings.Count(app.HTMLString(app.P().Body(Line(l)...)), noBreak) }
	length, setting := &report.Figure{Value: 80, Unit: "mm", Digits: 3}, &report.Figure{Value: 564.3, Unit: "steps/mm", U: 2.6}
	assert.Equal(t, 1, breaks(report.Say("Feed {length}.", "length", length)))
	assert.Equal(t, 2, breaks(report.Say("Set {it}.", "it", setting)))
	assert.Zero(t, breaks(report.Show(setting)))
	assert.Zero(t, breaks(report.Say("Turn {angle}.", "angle", &report.Figure{Value: 1.8, Unit: "°", Digits: 3})))
}
