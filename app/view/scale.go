package view

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"striderule/calc/report"
	"striderule/calc/unit"
)

// A Span maps values to pixels along one axis.
type Span struct {
	Lo, Hi   float64 // values at the ends
	From, To float64 // pixels at the ends
}

// At is where a value stands.
func (s Span) At(v float64) float64 {
	if s.Hi == s.Lo {
		return (s.From + s.To) / 2
	}
	return s.From + (v-s.Lo)/(s.Hi-s.Lo)*(s.To-s.From)
}

// widened is a span that holds all values, with a margin at both ends. What
// differs by rounding alone counts as one value.
func widened(values []float64, margin, from, to float64) Span {
	if len(values) == 0 {
		return Span{0, 1, from, to}
	}
	lo, hi := slices.Min(values), slices.Max(values)
	size := max(math.Abs(lo), math.Abs(hi))
	if hi-lo <= 1e-9*size {
		if size == 0 {
			size = 100
		}
		lo, hi = lo-size/100, hi+size/100
	}
	m := (hi - lo) * margin
	return Span{lo - m, hi + m, from, to}
}

// extent lists all values that a chart's axes must hold.
func extent(c *report.Chart) (xs, ys []float64) {
	for _, p := range c.Points {
		xs, ys = append(xs, p.X), append(ys, p.Y, p.Lo, p.Hi)
	}
	for _, b := range c.Bands {
		ys = append(ys, b.Lo, b.Hi)
	}
	for _, l := range c.Curves {
		for _, at := range l.At {
			xs, ys = append(xs, at.X), append(ys, at.Y)
		}
	}
	if n := len(c.X.Names); n > 0 {
		xs = append(xs, 0.5, float64(n)+0.5)
	}
	return xs, ys
}

// A tick is a value on an axis, as written there.
type tick struct {
	at   float64 // in pixels
	text string
}

// glyph is about how wide a sign of a tick is, in pixels: rather too wide.
const glyph = 6.6

func (t tick) width() float64 { return glyph * float64(len([]rune(t.text))) }

// ticks are at most n round values inside a span: steps of 1, 2 or 5.
func ticks(s Span, n int) []tick {
	width := s.Hi - s.Lo
	if !(width > 0 && width < math.MaxFloat64) || n < 1 {
		return nil
	}
	power := int(math.Floor(math.Log10(width / float64(n))))
	for ; ; power++ {
		for _, digit := range []float64{1, 2, 5} {
			step := digit * math.Pow10(power)
			first, last := math.Ceil(s.Lo/step), math.Floor(s.Hi/step)
			if last-first >= float64(n) {
				continue
			}
			var all []tick
			for i := first; i <= last; i++ {
				all = append(all, tick{s.At(i * step), written(i*step, -power)})
			}
			return all
		}
	}
}

// written is a value with so many decimals, or whole if they are below 0:
// 40 000, −0.25. What is too long for an axis has an exponent.
func written(v float64, decimals int) string {
	if decimals > 6 || math.Abs(v) >= 1e9 {
		return strings.ReplaceAll(strconv.FormatFloat(v, 'g', 3, 64), "-", "−")
	}
	text := strconv.FormatFloat(math.Abs(v), 'f', max(0, decimals), 64)
	whole, fraction, _ := strings.Cut(text, ".")
	if len(whole) > 4 {
		for i := len(whole) - 3; i > 0; i -= 3 {
			whole = whole[:i] + "\u202f" + whole[i:]
		}
	}
	if fraction != "" {
		whole += unit.Shown("." + fraction)
	}
	if v < 0 && strings.Trim(text, "0.") != "" {
		return "−" + whole
	}
	return whole
}

// across are the ticks of the horizontal axis, as many as there is room for.
func across(s Span) []tick {
	for n := 6; n > 1; n-- {
		if all := ticks(s, n); apart(all) {
			return all
		}
	}
	return ticks(s, 1)
}

// apart reports whether ticks leave a gap between their texts, even if the one
// at the edge is moved inwards by half its width.
func apart(all []tick) bool {
	for i := 1; i < len(all); i++ {
		if all[i].at-all[i-1].at < max(all[i].width(), all[i-1].width())*1.5 {
			return false
		}
	}
	return true
}

// named are ticks for whole numbers from 1: the last one, and of the others
// those that there is room for.
func named(s Span, names []string) []tick {
	var all []tick
	free := math.Inf(1)
	for i := len(names) - 1; i >= 0; i-- {
		t := tick{s.At(float64(i + 1)), names[i]}
		if t.at+t.width()/2 <= free {
			all = append(all, t)
			free = t.at - t.width()/2 - glyph
		}
	}
	return all
}

// inside moves a text of a tick inwards from the edges of the picture.
func (t tick) inside(left, right float64) float64 {
	return max(left+t.width()/2, min(t.at, right-t.width()/2))
}
