package calibrate

import (
	"strconv"
	"strings"

	"striderule/calc/measure"
	"striderule/calc/page/trial"
	"striderule/calc/report"
)

// speeds tells slip from an error of the setting.
func (a *solution) speeds() *report.Part {
	if a.sheet.Method() != trial.SeveralSpeeds {
		return nil
	}
	p := &report.Part{ID: "speeds", Title: speedsTitle, Needs: a.readKeys}
	r := a.slip
	t := report.Table{Caption: speedsCaption, Head: []string{speedHead, errorHead}}
	for i, v := range r.Speeds {
		t.Row(&report.Figure{Value: v, Digits: 4},
			&report.Figure{ID: "speedmean-" + strconv.Itoa(i+1), Value: 100 * r.MeanErrors[i], Digits: 3})
	}
	slope := r.Line.SlopeEstimate()
	figures := report.FigureList{{ID: "slope", Label: slopeLabel, Value: 100 * slope.Value, U: 100 * slope.HalfWidth(), Unit: "%", Digits: 3}}
	if v, ok := a.holdsUpTo(); ok {
		figures.Add(&report.Figure{ID: "holds", Label: holdsLabel, Value: v, Unit: "mm/s", Digits: 3})
	}
	p.Add(report.Para{Line: report.Text(strings.Join(a.slipSays(), " "))}, a.speedChart(), t, report.Figures{All: figures})
	if w, ok := r.MayHide(a.sheet.acceptable()); ok {
		p.Add(report.DoubtNote(trial.Doubt(w)))
	}
	if a.slips() {
		p.Add(report.TipNote(slipTip))
	}
	return p
}

// holdsUpTo is up to which speed the error is acceptable: with the new setting where the verdict
// is to set it, else with the one of the test.
func (a *solution) holdsUpTo() (float64, bool) {
	v := a.judged.Verdict
	return a.slip.HoldsUpTo(a.sheet.acceptable(), v == measure.ChangeIt || v == measure.EitherIsFine)
}

// slipSays says in sentences what speed does, and where the setting is taken from.
func (a *solution) slipSays() []string {
	what := slipNone
	switch {
	case a.slip.Trouble == measure.ErrorRises:
		what = slipRises
	case a.slip.Trouble == measure.ErrorUneven:
		what = slipUneven
	case a.slip.Basis == measure.FromSlowest:
		what = slipBent
	case a.slip.Trouble == measure.SlipFound:
		what = slipGrows
	}
	says := []string{what, basisSays[a.slip.Basis]}
	if a.scale.Ratio.U > 0 {
		says = append(says, slowestToo)
	}
	return says
}

// lengths tells an error of the setting from a fixed offset.
func (a *solution) lengths() *report.Part {
	if a.sheet.Method() != trial.SeveralLengths {
		return nil
	}
	p := &report.Part{ID: "lengths", Title: a.sheet.moves().LengthsTitle, Needs: a.readKeys}
	says := noOffset
	if a.fit.OffsetFound {
		says = a.sheet.moves().OffsetFound
	}
	p.Add(report.Para{Line: report.Text(says)}, a.lengthChart(), a.residualChart(),
		report.Figures{All: []report.Figure{a.offset("offset")}},
	)
	return p
}

func (a *solution) offset(id string) report.Figure {
	o := a.fit.Offset
	return report.Figure{ID: id, Label: offsetLabel, Value: o.Value, U: o.HalfWidth(), Unit: a.unit, Digits: 3}
}

// sides tells the backlash.
func (a *solution) sides() *report.Part {
	if a.sheet.Method() != trial.BothSides {
		return nil
	}
	r := a.reversal
	figures := report.FigureList{
		{ID: "reversal", Label: reversalLabel, Value: r.B, Unit: a.unit, Digits: 3},
		{ID: "lost", Label: lostLabel, Value: r.MeanReversal.Value, U: r.MeanReversal.HalfWidth(), Unit: a.unit, Digits: 3},
	}
	p := &report.Part{ID: "sides", Title: sidesTitle, Needs: a.readKeys, Blocks: []report.Block{
		report.Figures{All: figures}, a.sideChart(),
		report.ParaOf(a.sheet.moves().SidesSays),
	}}
	p.Add(a.doubts()...)
	return p
}
