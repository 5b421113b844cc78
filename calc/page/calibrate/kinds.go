package calibrate

import (
	"strconv"

	"striderule/calc/lists"
	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
	"striderule/calc/word"
)

// speeds tells slip from scale.
func (a *solution) speeds() *report.Part {
	if a.sheet.Method() != trial.SeveralSpeeds {
		return nil
	}
	p := &report.Part{ID: "speeds", Title: "Error and feed speed", Needs: a.readKeys}
	r := a.slip
	t := report.Table{Caption: "Mean error at each speed", Head: []string{"Speed, mm/s", "Error, %"}}
	for i, v := range r.Speeds {
		t.Row(&report.Figure{Value: v, Digits: 4},
			&report.Figure{ID: "speedmean-" + strconv.Itoa(i+1), Value: 100 * r.MeanErrors[i], Digits: 3})
	}
	slope := r.Line.SlopeEstimate()
	figures := report.FigureList{{ID: "slope", Label: "Error gained with each mm/s", Value: 100 * slope.Value, U: 100 * slope.Expanded(), Unit: "%", Digits: 3}}
	if v, ok := r.HoldsUpTo(a.sheet.tolerance(), a.judged.Verdict != measure.LeaveIt); ok {
		figures.Add(&report.Figure{ID: "holds", Label: "Within the tolerance up to", Value: v, Unit: "mm/s", Digits: 3})
	}
	p.Add(report.ParaOf(a.slipSays()), a.speedChart(), t, report.Figures{All: figures})
	if w, ok := r.MayHide(a.sheet.tolerance()); ok {
		p.Add(report.DoubtNote(string(w)))
	}
	if a.slips() {
		p.Add(report.TipNote("Steps are not the cure for slip: a setting that hides it at one speed is wrong at every other."))
	}
	return p
}

func (a *solution) slipSays() string {
	from := [...]string{
		measure.FromAllRuns:   "The setting is taken from all runs together.",
		measure.FromZeroSpeed: "The setting is taken from the line at zero speed, where nothing slips.",
		measure.FromPlateau:   "The setting is taken from the slow runs that agree with each other.",
	}[a.slip.Basis]
	switch {
	case a.slip.Trouble == measure.ErrorRises:
		return "The faster it feeds, the more comes out, which slip cannot do. " + from
	case a.slip.Basis == measure.FromPlateau:
		return "The drive holds up to some speed and then gives way: that is slip, not scale. " + from
	case a.slip.Trouble == measure.SlipFound:
		return "The faster it feeds, the less comes out: that is slip on top of the scale. " + from
	}
	return "Speed makes no difference that these runs show. " + from
}

// lengths tells the scale from a fixed offset.
func (a *solution) lengths() *report.Part {
	if a.sheet.Method() != trial.SeveralLengths {
		return nil
	}
	p := &report.Part{ID: "lengths", Title: "Scale and fixed offset", Needs: a.readKeys}
	offset := a.fit.Offset
	says := "No fixed offset shows."
	if a.fit.OffsetFound {
		says = "There is a fixed offset, the same at every length: slack, an edge, or a thick mark. It does not belong into the scale, and one length alone would have put it there."
	}
	p.Add(report.ParaOf(says), a.lengthChart(), a.residualChart(),
		report.Figures{All: []report.Figure{{ID: "offset", Label: "Fixed offset", Value: offset.Value, U: offset.Expanded(), Unit: "mm", Digits: 3}}},
	)
	return p
}

// sides tells what is lost on reversal.
func (a *solution) sides() *report.Part {
	if a.sheet.Method() != trial.BothSides {
		return nil
	}
	r := a.reversal
	figures := report.FigureList{
		{ID: "reversal", Label: "Lost on reversal, the largest (reversal value)", Value: r.B, Unit: "mm", Digits: 3},
		{ID: "lost", Label: "Lost on reversal, mean (up less down)", Value: r.MeanReversal.Value, U: r.MeanReversal.Expanded(), Unit: "mm", Digits: 3},
	}
	p := &report.Part{ID: "sides", Title: "Lost on reversal", Needs: a.readKeys, Blocks: []report.Block{
		report.Figures{All: figures}, a.sideChart(),
		report.ParaOf("What is lost when the direction changes is play, not scale: tighten the belt or the nut, or look for a loose pulley. Do not dial it into the steps."),
	}}
	p.Add(a.doubts()...)
	return p
}

// ratio names the usual mistakes that would explain what was found.
func (a *solution) ratio() *report.Part {
	fits := a.fits
	if len(fits) == 0 {
		return nil
	}
	p := &report.Part{ID: "ratio", Title: "It looks like a usual mistake", Needs: lists.Concat(a.readKeys, a.sheet.GearEntry.Keys(""), []string{"counted"})}
	var items report.Sentences
	for _, f := range fits[:min(len(fits), 4)] {
		what, look := "", ""
		for i, m := range f {
			if i > 0 {
				what, look = what+", and ", look+"; and at "
			}
			what, look = what+m.What, look+m.Look
		}
		items.Say(word.Capital(what) + ". Look at " + look + ".")
	}
	says := "The ratio that you found is just what this does:"
	if len(fits) > 1 {
		says = strconv.Itoa(len(fits)) + " explanations fit, the most usual first; the readings cannot tell which it is:"
	}
	p.Add(report.ParaOf(says), report.Points{Items: items},
		report.ParaOf("If one of them is true, put that right and measure again, instead of dialling it into the setting."))
	return p
}
