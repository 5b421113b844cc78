package calc_test

import (
	"strings"

	"striderule/calc/report"
)

// none writes that there is nothing in a block, which is a block all the same.
func (w *writer) none(n int, of string) {
	if n == 0 {
		w.line("  no ", of)
	}
}

func (w *writer) piece(block report.Block) {
	items := func(mark string, lines []report.Line) {
		w.none(len(lines), "items")
		for _, l := range lines {
			w.line("  ", mark, " ", w.sentence(l))
		}
	}
	switch b := block.(type) {
	case report.Para:
		w.line(w.sentence(b.Line))
	case report.Note:
		w.line(b.Kind.String(), ": ", w.sentence(b.Line))
	case report.Steps:
		items("1.", b.Items)
	case report.Points:
		items("-", b.Items)
	case report.Figures:
		w.none(len(b.All), "figures")
		for i := range b.All {
			w.figure(&b.All[i])
		}
	case report.Table:
		w.table(b)
	case report.Code:
		came := ""
		if b.Brought {
			came = ", came with the link"
		}
		w.line("code ", b.Label, " ", b.File, came)
		for text := range strings.SplitSeq(b.Text, "\n") {
			w.line("    ", text)
		}
	case report.Brought:
		for _, l := range b.All {
			w.line([...]string{report.ToAccept: "came with the link, before ", report.Refused: "came with the link, refused before ", report.Accepted: "accepted, before "}[b.State], b.Before, ": ", l.Label, ": ", l.Text)
		}
	case report.Ask:
		w.line("ask for ", strings.Join(b.Keys, " "), ": ", b.For)
	case report.Go:
		w.line("go to ", b.Key, ": ", b.Text)
	case report.Links:
		w.none(len(b.All), "links")
		for _, l := range b.All {
			w.line("link ", l.Text, ": ", l.Slug, "#", l.Fragment)
		}
	case report.Bars:
		w.line("bars ", b.Title, ", ", b.Unit)
		for i := range b.All {
			w.line("  ", b.All[i].Label, ": ", figureText(&b.All[i].Value))
		}
	case report.Lots:
		w.line("lots of ", short(b.Value, 12), ", commanded ", short(b.Commanded, 12), ", ", short(b.Low, 9), " to ", short(b.High, 9))
		for _, c := range b.Budget {
			w.line("  ", c.ID, " ", short(c.U, 9), " dof ", short(c.Dof, 9))
		}
	case report.Chart:
		w.chart(&b)
	case report.Drawing:
		w.drawing(&b)
	default:
		panic("a block of no known kind")
	}
}

// figure writes a labelled figure; one with an ID has its label for the first time only.
func (w *writer) figure(f *report.Figure) {
	label := f.Label
	if f.ID != "" && !w.first("figure "+f.ID+" "+f.Label) {
		label = "-"
	}
	w.line("  ", label, ": ", figureText(f))
}

func (w *writer) table(t report.Table) {
	how := ""
	if t.Folded {
		how = ", folded"
	}
	w.line("table ", t.Caption, how)
	w.line("  | ", strings.Join(t.Head, " | "))
	for _, row := range t.Rows {
		cells := make([]string, len(row))
		for i, c := range row {
			cells[i] = w.sentence(c)
		}
		w.line("  | ", strings.Join(cells, " | "))
	}
}
