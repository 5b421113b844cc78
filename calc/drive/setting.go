package drive

// A Convention is which fact about an axis its controller stores.
type Convention int

const (
	// StepsPerUnit is S, steps per mm or per degree.
	StepsPerUnit Convention = iota
	// TravelPerTurn is R, travel per motor revolution.
	TravelPerTurn
	// TravelPerOutputTurn is P, with the gear ratio stored apart.
	TravelPerOutputTurn
)

// Conventions are all of them, in the order in which they are shown.
var Conventions = []Convention{StepsPerUnit, TravelPerTurn, TravelPerOutputTurn}

// A Setting is what a controller stores of an axis.
type Setting struct {
	Convention Convention
	Value      float64 // above 0
}

// Corrected returns the setting for an axis that moved measured where
// commanded was asked for, with c = commanded/measured: S' = S·c, R' = R/c,
// P' = P/c.
func (s Setting) Corrected(c float64) Setting {
	if s.Convention == StepsPerUnit {
		s.Value *= c
	} else {
		s.Value /= c
	}
	return s
}

// Facts says what it takes to go from one convention to another: motor (step
// angle and microsteps) and gears.
func Facts(from, to Convention) (motor, gears bool) {
	if from == to {
		return false, false
	}
	return from == StepsPerUnit || to == StepsPerUnit,
		from == TravelPerOutputTurn || to == TravelPerOutputTurn
}

// In returns the same fact in another convention. Motor and stages matter as
// far as Facts says.
func (s Setting) In(to Convention, m Motor, g Stages) Setting {
	return s.in(to, m, g.exact())
}

// InRatio is In with the gear ratio as one number.
func (s Setting) InRatio(to Convention, m Motor, ratio float64) Setting {
	return s.in(to, m, whole(ratio))
}

func (s Setting) in(to Convention, m Motor, g exact) Setting {
	if s.Convention == to {
		return s // also where the motor is not known
	}
	// travel per motor turn, from which each of the others is one step away
	r := whole(s.Value)
	switch s.Convention {
	case StepsPerUnit:
		r = whole(m.Pulses()).over(r)
	case TravelPerOutputTurn:
		r = r.over(g)
	}
	switch to {
	case StepsPerUnit:
		r = whole(m.Pulses()).over(r)
	case TravelPerOutputTurn:
		r = r.times(g)
	}
	return Setting{to, r.value()}
}
