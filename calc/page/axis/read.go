package axis

import (
	"strings"

	"striderule/calc/drive"
	"striderule/calc/report"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// ReadRatio says beside a gear ratio what it was read as; the teeth of a pair in the order in
// which they stand everywhere, the motor's first.
func ReadRatio(to *report.Remarks, key string, row int, ratio *unit.Entry) {
	if !ratio.Given || ratio.Number == 1 {
		return
	}
	driven, driving, pair := strings.Cut(ratio.Typed(), ":")
	if ratio.Number < 1 {
		turned := unit.Trim(1/ratio.Number, Digits)
		if pair {
			turned = driving + ":" + driven
		}
		to.Doubt(key, row, ratioFaster.Fill("times", unit.Trim(1/ratio.Number, Digits), "turned", turned))
		return
	}
	if pair {
		readPair(to, key, row, driving, driven, ratio.Number)
		return
	}
	to.Read(key, row, ratioRead.Fill("ratio", unit.Trim(ratio.Number, Digits)))
}

// readPair is ReadRatio of teeth.
func readPair(to *report.Remarks, key string, row int, driving, driven string, ratio float64) {
	if ratio < 1 {
		to.Doubt(key, row, pairFaster.Fill("driving", driving, "driven", driven, "times", unit.Trim(1/ratio, Digits)))
		return
	}
	to.Read(key, row, pairRead.Fill("driving", driving, "driven", driven, "ratio", unit.Trim(ratio, Digits)))
}

// ReadTeeth says beside the driven teeth what they make with those on the motor side.
func ReadTeeth(to *report.Remarks, row int, driving, driven Teeth) {
	if stages, ok := StagesOf(driving, driven); ok {
		readPair(to, "driven", row, driving.String(), driven.String(), stages.Reduction())
	}
}

// Read says how the gearing was read. That a stage turns the output faster is doubted only
// where all of them together do.
func (g *GearEntry) Read(to *report.Remarks, suffix string) {
	if g.Kind.Word == "ratio" {
		ReadRatio(to, "ratio"+suffix, 0, g.Ratio.Entry())
		return
	}
	for i := range g.Driving.Rows {
		a, b := g.Driving.Row(i), g.Driven.Row(i)
		if !a.Given || !b.Given {
			continue
		}
		driving, driven := a.Bare(), b.Bare()
		stage := drive.Stages{{Driving: a.Value(), Driven: b.Value()}}.Reduction()
		if stage < 1 && g.Known() && g.Reduction() >= 1 {
			to.Read("driven"+suffix, i, pairRead.Fill("driving", driving, "driven", driven, "ratio", unit.Trim(stage, Digits)))
			continue
		}
		readPair(to, "driven"+suffix, i, driving, driven, stage)
	}
}

// lastOf are the fields that complete an element, by its sort.
var lastOf = word.Table{{"belt", "teeth"}, {"roller", "roller"}, {"rack", "pinion"}, {"drum", "cable"}}

// Read says how the element was read: the lead of a screw, and how far one turn of another
// moves the axis.
func (o *OutputEntry) Read(to *report.Remarks, suffix string, row int) {
	screw := func(key string, s *screwValue) {
		if s.Given {
			to.Read(key+suffix, row, screwRead.Fill(int(s.Value.Starts), "lead", millimetres(s.Value.Lead())))
		}
	}
	screw("screw", &o.Screw)
	screw("first", &o.First)
	if !o.alike() { // else a problem says it
		screw("second", &o.Second)
	}
	last := lastOf.Of(o.Sort())
	if element, missing := o.Element(suffix); last != "" && len(missing) == 0 {
		to.Read(last+suffix, row, turnRead.Fill("travel", millimetres(unit.Length(drive.PerTurn(element)))))
	}
}
