package report

// Figures returns the figures of a report that have an ID, in the order in which it shows
// them.
func (r Report) Figures() []Figure {
	var all []Figure
	add := func(f Figure) {
		if f.ID != "" {
			all = append(all, f)
		}
	}
	lines := func(lines ...Line) {
		for _, l := range lines {
			for _, s := range l {
				if s.Figure != nil {
					add(*s.Figure)
				}
			}
		}
	}
	parts := r.Parts
	if a := r.Answer; a != nil {
		if a.Instead != nil {
			parts = append([]Part{*a.Instead}, parts...)
		} else {
			add(a.Figure)
		}
		lines(a.Says)
		for _, n := range a.Notes {
			lines(n.Line)
		}
	}
	for _, p := range parts {
		for _, b := range p.Blocks {
			switch b := b.(type) {
			case Para:
				lines(b.Line)
			case Note:
				lines(b.Line)
			case Steps:
				lines(b.Items...)
			case Points:
				lines(b.Items...)
			case Figures:
				for _, f := range b.All {
					add(f)
				}
			case Bars:
				for _, bar := range b.All {
					add(bar.Value)
				}
			case Table:
				for _, row := range b.Rows {
					lines(row...)
				}
			}
		}
	}
	return all
}

// Notes returns what stands out in a report: that of the answer first, that beside fields last.
func (r Report) Notes() []Note {
	var all []Note
	if r.Answer != nil {
		all = append(all, r.Answer.Notes...)
	}
	for _, p := range r.Parts {
		for _, b := range p.Blocks {
			if n, ok := b.(Note); ok {
				all = append(all, n)
			}
		}
	}
	for _, m := range r.Remarks {
		if m.Doubt {
			all = append(all, Note{Doubt, Text(m.Says)})
		}
	}
	return all
}

// Percent is a relative error as a figure, in the digits that u supports.
func Percent(id, label string, v, u float64) *Figure {
	return &Figure{ID: id, Label: label, Value: 100 * v, Like: 100 * u, Unit: "%", Digits: 3}
}
