package axis

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"striderule/calc/drive"
	"striderule/calc/unit"
	"striderule/calc/word"
)

// An Implied is the size of a part that a setting asks for.
type Implied struct {
	ID, Label, Unit string
	Value           float64
	Nearest         float64 // that is made; 0 where every size can be
	words           *partWords
	driving         int  // teeth on the motor side, of a gear pair
	whole           bool // it is a count
}

// Implied returns the size of an output element that a travel per output turn
// asks for. The element has one: it is no rotary table and no differential screw.
func (o *OutputEntry) Implied(perTurn float64) Implied {
	if o.Moving() {
		perTurn *= 2
	}
	switch o.Sort() {
	case "belt":
		return impliedTeeth("teeth", &pulleyWords, drive.PulleyTeeth(perTurn, o.Pitch.Value()))
	case "rack":
		return impliedTeeth("teeth", &pinionWords, drive.PinionTeeth(perTurn, o.Module.Value()))
	case "screw":
		return Implied{ID: "lead", Label: screwWords.label, Unit: "mm", Value: perTurn, Nearest: nearestLead(perTurn), words: &screwWords}
	}
	label := effectiveDiameter
	if o.Sort() == "drum" {
		label = drumDiameter
	}
	return Implied{ID: "diameter", Label: label, Unit: "mm", Value: float64(drive.EffectiveDiameter(perTurn))}
}

func impliedTeeth(id string, words *partWords, value float64) Implied {
	return Implied{ID: id, Label: words.label, Value: value, Nearest: max(1, math.Round(value)), words: words, whole: true}
}

// MissingPitch is what it takes besides the travel per turn.
func (o *OutputEntry) MissingPitch() []string {
	switch {
	case o.Sort() == "belt" && !o.Pitch.Given:
		return []string{"pitch"}
	case o.Kind.Word == "rack" && !o.Module.Given:
		return []string{"module"}
	}
	return nil
}

// ImpliedGear returns the driven teeth that a gear ratio asks for beside the
// teeth on the motor side.
func ImpliedGear(ratio float64, driving int) Implied {
	i := impliedTeeth("driven", &gearWords, ratio*float64(driving))
	i.driving = driving
	return i
}

// Coarse threads have these pitches up to M24 (ISO 261); above them a lead is
// taken to be whole.
var coarsePitches = []float64{0.5, 0.7, 0.8, 1, 1.25, 1.5, 1.75, 2, 2.5, 3}

// nearestLead is the lead, of those that are usual, from which a lead differs
// by the smallest factor.
func nearestLead(lead float64) float64 {
	best := max(1, math.Round(lead))
	for _, p := range coarsePitches {
		if math.Abs(math.Log(lead/p)) < math.Abs(math.Log(lead/best)) {
			best = p
		}
	}
	return best
}

// madeTravel is how near to a made part a travel per turn must be, as a share, to come from it:
// settings are typed with five digits or more.
const madeTravel = 1e-4

// IsMade reports whether a travel per turn in mm is one that belts and screws have: whole mm, as
// of whole teeth, or a usual lead.
func IsMade(travel float64) bool { return math.Abs(travel/nearestLead(travel)-1) < madeTravel }

// Off is how far the implied size lies from the nearest part, as a share of it.
func (i Implied) Off() float64 { return i.Value/i.Nearest - 1 }

// near reports whether the nearest part can be meant: a setting that was
// corrected by a measurement is rarely off by more than a hundredth, and of
// large counts some whole one is always that near.
func (i Implied) near() bool {
	return math.Abs(i.Off()) <= 0.01 && (!i.whole || math.Abs(i.Value-i.Nearest) <= 0.25)
}

// FewestUsual are the teeth of the smallest usual pulley: fewer are made, and seldom fitted.
const FewestUsual = 12

// Usual reports whether the nearest part is near, and one that small machines have.
func (i Implied) Usual() bool {
	usual := i.whole && i.Nearest >= FewestUsual || !i.whole && slices.Contains(drive.UsualLeads, i.Nearest)
	return usual && i.near()
}

// Says is what the nearest part means for the setting.
func (i Implied) Says() string {
	off := i.Off()
	exact := math.Abs(off) < 1e-6
	switch {
	case i.whole && (i.Nearest < fewestTeeth || i.Nearest < i.words.fewest && !exact):
		return i.together(i.words.notMade, i.words.otherwise)
	case exact: // as somebody typed it
		return i.together(i.words.exact)
	}
	than := settingLarger
	if off < 0 {
		than = settingSmaller
	}
	if i.near() {
		return i.together(i.words.nearest, than, closeEnough)
	}
	return i.together(i.words.nearest, than, notClose, i.words.otherwise)
}

// together are its sentences, one behind the other.
func (i Implied) together(sentences ...word.Template) string {
	all := make([]string, len(sentences))
	for n, s := range sentences {
		all[n] = s.Fill("size", unit.Trim(i.Nearest, 7), "value", unit.Trim(i.Value, 3),
			"driving", strconv.Itoa(i.driving), "off", unit.Trim(100*math.Abs(i.Off()), 2))
	}
	return strings.Join(all, " ")
}
