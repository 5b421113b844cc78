package drive

import (
	"errors"

	"striderule/calc/unit"
)

// ErrOutput is returned for an output element that cannot be.
var ErrOutput = errors.New("an output element needs sizes above 0")

// An Output turns the last shaft's rotation into the axis' travel.
type Output interface {
	// Name is what people call it: "belt".
	Name() string
	// Angular reports whether the travel is in degrees and not in mm.
	Angular() bool
	// Check returns ErrOutput if the element cannot be.
	Check() error
	// perTurn is P, the travel per output turn.
	perTurn() exact
}

// PerTurn returns P, the travel of one output turn, in mm or degrees.
func PerTurn(o Output) float64 { return o.perTurn().value() }

var _ = []Output{Belt{}, Screw{}, Rack{}, Roller{}, Rotary{}, Drum{}, MovingPulley{}, Differential{}}

// A Belt runs on a toothed pulley: P = pitch · teeth.
type Belt struct {
	Pitch unit.Length
	Teeth unit.Count // of the pulley on the output shaft
}

func (Belt) Name() string     { return "belt" }
func (Belt) Angular() bool    { return false }
func (b Belt) Check() error   { return positive(float64(b.Pitch), float64(b.Teeth)) }
func (b Belt) perTurn() exact { return whole(float64(b.Pitch)).times(whole(float64(b.Teeth))) }

// A Rack is driven by a pinion: P = π · module · teeth.
type Rack struct {
	Module unit.Length
	Teeth  unit.Count // of the pinion
}

func (Rack) Name() string   { return "rack" }
func (Rack) Angular() bool  { return false }
func (r Rack) Check() error { return positive(float64(r.Module), float64(r.Teeth)) }
func (r Rack) perTurn() exact {
	return exact{float64(r.Module) * float64(r.Teeth), 1, 1}
}

// A Roller grips what it feeds at its effective diameter: P = π · D.
type Roller struct {
	Diameter unit.Length // at which it really grips, not its outer one
}

func (Roller) Name() string     { return "roller" }
func (Roller) Angular() bool    { return false }
func (r Roller) Check() error   { return positive(float64(r.Diameter)) }
func (r Roller) perTurn() exact { return exact{float64(r.Diameter), 1, 1} }

// Rotary is an axis that turns its work: P = 360°.
type Rotary struct{}

func (Rotary) Name() string   { return "rotary" }
func (Rotary) Angular() bool  { return true }
func (Rotary) Check() error   { return nil }
func (Rotary) perTurn() exact { return whole(unit.Turn) }

// EffectiveDiameter returns the roller diameter that a travel per output turn
// implies: D = P/π.
func EffectiveDiameter(perOutputTurn float64) unit.Length {
	return unit.Length(exact{perOutputTurn, 1, -1}.value())
}

// PulleyTeeth returns the teeth, not rounded, of the pulley that a travel per
// output turn implies on a belt of this pitch: P/pitch.
func PulleyTeeth(perOutputTurn float64, pitch unit.Length) float64 {
	return perOutputTurn / float64(pitch)
}

// PinionTeeth returns the teeth, not rounded, of the pinion that a travel per
// output turn implies on a rack of this module: P/(π·module).
func PinionTeeth(perOutputTurn float64, module unit.Length) float64 {
	return exact{perOutputTurn, float64(module), -1}.value()
}

func positive(sizes ...float64) error {
	if !usable(sizes...) {
		return ErrOutput
	}
	return nil
}

// usable reports whether all values are above 0 and finite.
func usable(values ...float64) bool {
	for _, v := range values {
		if !(v > 0) || !unit.Finite(v) {
			return false
		}
	}
	return true
}
