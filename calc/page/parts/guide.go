package parts

import (
	"striderule/calc/page/axis"
	"striderule/calc/report"
)

// guide is a drivetrain, with the letters of the fields of each axis.
func guide() *report.Drawing {
	t := axis.Train{Letters: [...]string{axis.AtMotor: "A", axis.AtDriver: "B", axis.AtGears: "C", axis.AtOutput: "D"}, More: [...]string{axis.AtGears: "beside", axis.AtOutput: ""}}
	return t.Guide(guideAlt, "")
}
