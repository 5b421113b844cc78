package trial

import (
	"striderule/calc/measure"
	"striderule/calc/page/axis"
	"striderule/calc/report"
)

// FinerTool says what a finer measuring tool would bring, and which one would settle it.
func FinerTool(m measure.Remedy) report.Line {
	says, same := finerTool, m.Enough.With.ID == m.Next.With.ID
	switch {
	case m.About && same:
		says = finerToolMayDo
	case m.About:
		says = finerToolAbout
	case m.Settles() && same:
		says = finerToolEnough
	case m.Settles():
		says = finerToolSettles
	}
	return report.Say(says, "tool", axis.ToolName(m.Next.With), "error", report.Percent("", "", m.U, m.U), "enough", axis.ToolName(m.Enough.With))
}
