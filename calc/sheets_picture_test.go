package calc_test

import (
	"strconv"
	"strings"

	"striderule/calc/report"
)

// Pictures are written at six digits, as a list of what is in them.

func places(xy ...report.XY) string {
	var all []string
	for _, p := range xy {
		all = append(all, short(p.X, 6)+","+short(p.Y, 6))
	}
	return strings.Join(all, " ")
}

var (
	roleNames   = [...]string{"body", "motion", "measure", "mark", "ghost"}
	anchorNames = [...]string{"start", "middle", "end"}
	pointNames  = [...]string{"counted", "aside", "suspect", "result", "later"}
)

// drawing writes a drawing; outside of the sheets that are there for drawings, of those
// after the first of its name only what they say.
func (w *writer) drawing(d *report.Drawing) {
	w.line("drawing ", d.ID, ", ", d.Title, ", ", short(d.From, 6), " to ", short(d.To, 6), ", high ", short(d.High, 6))
	w.line("  alt: ", d.Alt)
	if !w.drawn && !w.first("drawing "+d.ID) {
		return
	}
	for _, shape := range d.Shapes {
		switch s := shape.(type) {
		case report.Stroke:
			head := tagText(report.Tag{Of: s.Of})
			if s.Head {
				head += " >"
			}
			w.line("  line ", roleNames[s.Role], " ", places(s.Points...), head)
		case report.Disc:
			w.line("  disc ", roleNames[s.Role], " ", places(s.At), " r ", short(s.R, 6), " teeth ", strconv.Itoa(s.Teeth))
		case report.Plate:
			round := ""
			if s.Round {
				round = " round"
			}
			w.line("  plate ", roleNames[s.Role], " ", places(s.A, s.B), round)
		case report.Dim:
			w.line("  dim ", roleNames[s.Role], " ", places(s.A, s.B), " from ", short(s.Base, 6), tagText(s.Tag), ": ", s.Text)
		case report.Words:
			w.line("  words ", anchorNames[s.Anchor], " ", places(s.At), tagText(s.Tag), ": ", s.Text)
		default:
			panic("a shape of no known kind")
		}
	}
}

// tagText is the field that a shape shows.
func tagText(tag report.Tag) string {
	if tag == (report.Tag{}) {
		return ""
	}
	return " [" + tag.Letter + " " + tag.Of + "]"
}

func scaleText(s report.Scale) string {
	text := s.Title() + " (" + strconv.Itoa(s.Digits) + " digits)"
	if s.Names != nil {
		text += " " + strings.Join(s.Names, ",")
	}
	return text
}

// chart writes a chart; what is made of the same in words, for the first of its name only.
func (w *writer) chart(c *report.Chart) {
	flat := ""
	if c.Flat {
		flat = ", flat"
	}
	w.line("chart ", c.ID, ", ", c.Title, flat)
	w.line("  ", c.Says)
	w.line("  x: ", scaleText(c.X), "; y: ", scaleText(c.Y))
	w.line("  keys: ", strings.Join(c.Keys[:], "; "))
	for _, p := range c.Points {
		interval := ""
		if p.Lo != p.Y || p.Hi != p.Y {
			interval = " from " + short(p.Lo, 6) + " to " + short(p.Hi, 6)
		}
		w.line("  ", pointNames[p.Kind], " ", places(report.XY{X: p.X, Y: p.Y}), interval, ": ", p.Label)
	}
	for _, b := range c.Bands {
		w.line("  band ", short(b.Lo, 6), " to ", short(b.Hi, 6), ": ", b.Label)
	}
	for _, l := range c.Curves {
		var at []report.XY
		for _, p := range l.At {
			at = append(at, report.XY(p))
		}
		w.line("  curve ", strconv.Itoa(int(l.Kind)), " ", places(at...), ": ", l.Label)
	}
	if w.first("chart " + c.ID) {
		w.line("  alt: ", c.Alt())
		for _, p := range c.Points {
			w.line("  reading: ", c.Reading(p))
		}
		w.table(c.Values())
	}
}
