package report

import (
	"strconv"
	"strings"

	"striderule/calc/unit"
)

// leastChance is the least probability that is shown as a figure, in percent.
const leastChance = 0.1

// Number returns the figure's digits as shown, without its unit, and with a
// real minus.
func (f Figure) Number() string {
	var s string
	switch {
	case f.Chance && f.Value < leastChance:
		return "< " + unit.Trim(leastChance, 1)
	case f.Chance && f.Value > 100-leastChance:
		return "> " + unit.Trim(100-leastChance, 3)
	case f.U > 0 || f.Like > 0:
		s, _ = unit.Measured(f.Value, max(f.U, f.Like))
	case f.Keep:
		s = unit.Digits(f.Value, f.Digits)
	default:
		s = unit.Trim(f.Value, f.Digits)
	}
	if minus, negative := strings.CutPrefix(s, "-"); negative {
		return "−" + minus
	}
	return s
}

// Plain is Number with the point in every language, as a machine reads it.
func (f Figure) Plain() string { return unit.Plain(f.Number()) }

// Full returns the figure at full precision, as a machine reads it.
func (f Figure) Full() string { return unit.Full(f.Value) }

// Gap is what stands between number and unit: nothing before degrees and percent.
func (f Figure) Gap() string {
	if f.Unit == "" || f.Unit == "%" || strings.HasPrefix(f.Unit, "°") {
		return ""
	}
	return " "
}

// Uncertainty returns the digits of U, empty if there is none.
func (f Figure) Uncertainty() string {
	if f.U <= 0 {
		return ""
	}
	_, u := unit.Measured(f.Value, f.U)
	return u
}

// String returns the figure with its uncertainty and unit: 564.3 ± 2.6
// steps/mm.
func (f Figure) String() string {
	if u := f.Uncertainty(); u != "" {
		return f.Number() + " ± " + u + f.Gap() + f.Unit
	}
	return f.Number() + f.Gap() + f.Unit
}

// String returns the line as plain text.
func (l Line) String() string {
	var b strings.Builder
	for _, s := range l {
		if s.Figure != nil {
			b.WriteString(s.Figure.String())
		} else {
			b.WriteString(s.Text)
		}
	}
	return b.String()
}

// String returns the report as plain text, for a post or a test.
func (r Report) String() string {
	var b strings.Builder
	if r.Answer != nil {
		if v := r.Answer.Verdict; v != nil {
			b.WriteString(v.Title + ": " + v.Says.String() + "\n")
		}
		if k := r.Answer.Keep; k != nil {
			b.WriteString(k.Label + ": " + k.String() + "\n")
		}
		b.WriteString(r.Answer.Aloud() + "\n")
		for _, n := range r.Answer.Notes {
			writeBlock(&b, n)
		}
	}
	for _, p := range r.Parts {
		b.WriteString("\n")
		p.write(&b)
	}
	if r.Care != "" {
		b.WriteString("\n" + Caution.String() + ": " + r.Care + "\n")
	}
	if r.Picture != nil {
		b.WriteString("\n" + r.Picture.Alt + "\n")
	}
	for i, m := range r.Remarks {
		if i == 0 {
			b.WriteString("\n")
			b.WriteString(asRead)
			b.WriteString("\n")
		}
		b.WriteString("  ")
		b.WriteString(remarkLine.Fill("key", m.Key, "says", m.Says))
		b.WriteString("\n")
	}
	return b.String()
}

// Aloud is the figure, or what stands in its place, and what it means. It may have several
// lines.
func (a *Answer) Aloud() string {
	var b strings.Builder
	if a.Instead != nil {
		a.Instead.write(&b)
	} else {
		b.WriteString(a.Label + ": " + a.Figure.String() + "\n")
	}
	b.WriteString(a.Says.String())
	return b.String()
}

func (p *Part) write(b *strings.Builder) {
	b.WriteString(p.Title + "\n")
	for _, block := range p.Blocks {
		writeBlock(b, block)
	}
}

func writeBlock(b *strings.Builder, block Block) {
	write := func(parts ...string) {
		for _, p := range parts {
			b.WriteString(p)
		}
		b.WriteByte('\n')
	}
	switch x := block.(type) {
	case Para:
		write(x.String())
	case Figures:
		for _, f := range x.All {
			write("  ", f.Label, ": ", f.String())
		}
	case Table:
		write("  ", strings.Join(x.Head, " | "))
		for _, row := range x.Rows {
			cells := make([]string, len(row))
			for i, c := range row {
				cells[i] = c.String()
			}
			write("  ", strings.Join(cells, " | "))
		}
	case Steps:
		for i, l := range x.Items {
			write("  ", strconv.Itoa(i+1), ". ", l.String())
		}
	case Points:
		for _, l := range x.Items {
			write("  - ", l.String())
		}
	case Brought:
		for _, l := range x.All {
			write("  ", broughtLines[x.State].Fill("label", l.Label, "line", l.Text))
		}
	case Code:
		write("  ", x.Label, ": ", strings.ReplaceAll(x.Text, "\n", "\n    "))
	case Note:
		write("  ", x.Kind.String(), ": ", x.String())
	case Ask:
		write("  ", neededFor.Fill("result", x.For, "keys", strings.Join(x.Keys, ", ")))
	case Chart:
		write("  ", x.Title, ": ", x.Alt())
	case Drawing:
		write("  ", x.Title, ": ", x.Alt)
	case Lots:
		write("  ", onRequest)
	case Bars:
		for _, bar := range x.All {
			write("  ", bar.Label, ": ", bar.Value.String())
		}
	case Go:
		write("  ", x.Text)
	case Links:
		for _, l := range x.All {
			write("  ", l.Text, ": ", l.Slug, "/#", l.Fragment)
		}
	}
}

// String names the kind.
func (k NoteKind) String() string { return [...]string{tipKind, doubtKind, cautionKind}[k] }
