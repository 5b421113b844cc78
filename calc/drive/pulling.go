package drive

import (
	"math"

	"striderule/calc/unit"
)

// A Drum winds up a cable in one layer. What moves is the cable's middle, half
// of its diameter outside the drum: P = π · (diameter + cable).
type Drum struct {
	Diameter unit.Length // of the drum where the cable lies, without it
	Cable    unit.Length // the cable's own
}

func (Drum) Name() string   { return "drum" }
func (Drum) Angular() bool  { return false }
func (d Drum) Check() error { return positive(float64(d.Diameter), float64(d.Cable)) }
func (d Drum) perTurn() exact {
	return exact{float64(d.Diameter) + float64(d.Cable), 1, 1}
}

// A MovingPulley hangs in the loop of a belt or cable whose other end is fixed:
// it moves half as far as is pulled in, P = P of what pulls / 2. Source: two
// lines carry the pulley, and each gets shorter by half.
type MovingPulley struct {
	Pulled Output // what moves the belt or cable
}

func (MovingPulley) Name() string  { return "pulley" }
func (MovingPulley) Angular() bool { return false }

// Check returns ErrOutput where nothing, or something that turns, pulls it too.
func (m MovingPulley) Check() error {
	if m.Pulled == nil || m.Pulled.Angular() {
		return ErrOutput
	}
	return m.Pulled.Check()
}
func (m MovingPulley) perTurn() exact { return m.Pulled.perTurn().over(whole(2)) }

// A Differential screw has two threads on one shaft: the first turns in a nut of
// the frame, the second in that of what moves. P is the difference of the two
// leads, or their sum where one thread is left-hand. Source: each nut moves by
// its lead along the shaft (ISO 5408, lead).
type Differential struct {
	First, Second Screw
}

func (Differential) Name() string  { return "differential" }
func (Differential) Angular() bool { return false }

// Check returns ErrOutput where a thread cannot be, and where both leads are the
// same, so that nothing moves.
func (d Differential) Check() error {
	if d.First.Check() != nil || d.Second.Check() != nil {
		return ErrOutput
	}
	return positive(d.perTurn().value())
}

func (d Differential) perTurn() exact {
	a, b := d.First.typedLead(), d.Second.typedLead()
	if d.First.LeftHand != d.Second.LeftHand {
		b.num = -b.num
	}
	if a.den == b.den {
		return exact{math.Abs(a.num - b.num), a.den, 0}
	}
	return exact{math.Abs(a.num*b.den - b.num*a.den), a.den * b.den, 0}
}

// typedLead is the lead in millionths of a millimetre, as whole numbers: 0.8 and
// 0.7 as binary has them differ by more than 0.1.
func (s Screw) typedLead() exact {
	p := s.pitch()
	if n := math.Round(p.num * unit.Million); p.den == 1 && n/unit.Million == p.num {
		p = exact{n, unit.Million, 0}
	}
	return p.times(whole(float64(s.Starts)))
}
