package measure

import "math"

// An Instrument is what a length is read with. What is not known is 0.
type Instrument struct {
	ID           string
	Resolution   float64 // mm, the step of the display or between graduation lines
	Accuracy     float64 // mm, limits of error ±a as stated for it; 0: not stated
	CertificateU float64 // mm, expanded uncertainty from a certificate, instead of Accuracy
	CertificateK float64 // its coverage factor
	Eye          float64 // mm, standard uncertainty of placing the mark and finding it again by eye
	Reach        float64 // mm, the longest reading; 0: no matter
	Usual        float64 // mm, limits of error to expect of its kind if none are stated: a hint, not used by itself
	zeroCancels  bool    // lengths are differences of two readings
}

// ForDifferences returns the instrument as it is for lengths that are mark less
// remaining, both read with it, for ScaleAndOffset: it has two steps, its zero
// cancels, and its limits count as reached at the longest mark, of which the
// longest length is a part. Sources: JCGM 100, 5.1.2, F.1.2.3.
func (i Instrument) ForDifferences(mark, length float64) Instrument {
	i.Resolution *= math.Sqrt2
	if part := ratio(length, mark); part > 0 && part < 1 {
		i.Accuracy *= part
		i.CertificateU *= part
	}
	i.zeroCancels = true
	return i
}

// Instruments are the usual kinds, from the coarse to the fine.
//
// Eye, Reach and Usual are our own rounded assumptions. A mark made with a pen
// is some 0.5 mm wide and its middle is found to ±0.2 mm at best, so 0.1 mm
// standard (0.2/√3, JCGM 100, 4.3.7); along a rule the line of sight adds as
// much again, and a tape hangs and its hook has play. Usual limits: a rule's
// or tape's edge and lines are good to some tenths, a caliper held square on a
// soft filament to about its step, but hardly better than 0.03 mm. A caliper
// of the common size reaches 150 mm. The accuracy is left at 0, not stated:
// the person who holds the instrument knows more than we do.
var Instruments = []Instrument{
	{ID: "tape", Resolution: 1, Eye: 0.3, Reach: 3000, Usual: 0.5},
	{ID: "rule", Resolution: 1, Eye: 0.2, Reach: 300, Usual: 0.2},
	{ID: "caliper-0.1", Resolution: 0.1, Eye: 0.1, Reach: 150, Usual: 0.1},
	{ID: "caliper-0.05", Resolution: 0.05, Eye: 0.1, Reach: 150, Usual: 0.05},
	{ID: "caliper-0.02", Resolution: 0.02, Eye: 0.1, Reach: 150, Usual: 0.03},
	{ID: "caliper-0.01", Resolution: 0.01, Eye: 0.1, Reach: 150, Usual: 0.03},
}

// InstrumentOf returns the one of Instruments with this ID.
func InstrumentOf(id string) (Instrument, bool) { return InstrumentAmong(Instruments, id) }

// InstrumentAmong returns the one of a list with this ID.
func InstrumentAmong(list []Instrument, id string) (Instrument, bool) {
	for _, i := range list {
		if i.ID == id {
			return i, true
		}
	}
	return Instrument{}, false
}

// Check returns ErrInstrument for what no instrument can be.
func (i Instrument) Check() error {
	values := []float64{i.Resolution, i.Accuracy, i.CertificateU, i.CertificateK, i.Eye, i.Reach, i.Usual}
	if !finite(values...) {
		return ErrInstrument
	}
	for _, v := range values {
		if v < 0 {
			return ErrInstrument
		}
	}
	if i.CertificateU > 0 && i.CertificateK == 0 {
		return ErrInstrument
	}
	return nil
}

// resolution is the step as a component: one reading, not reduced by repeating.
func (i Instrument) resolution(id string) Component {
	u := i.Resolution / math.Sqrt(12) // JCGM 100, F.2.2.1
	return Component{ID: id, U: u, Dof: math.Inf(1), Fixed: true, Step: true, Shape: Rectangular}
}

// limits are the stated accuracy and the certificate as components.
func (i Instrument) limits(accuracy, certificate string) Budget {
	var b Budget
	if i.Accuracy > 0 {
		u := i.Accuracy / math.Sqrt(3) // JCGM 100, 4.3.7 (7)
		b = append(b, Component{ID: accuracy, U: u, Dof: math.Inf(1), Fixed: true, Shape: Rectangular})
	}
	if i.CertificateU > 0 {
		u := i.CertificateU / i.CertificateK // JCGM 100, 4.3.3
		b = append(b, Component{ID: certificate, U: u, Dof: math.Inf(1), Fixed: true, Shape: Normal})
	}
	return b
}

// eye is the placing of the mark as a component, which more runs turn into scatter.
func (i Instrument) eye() Component {
	return Component{ID: Placement, U: i.Eye, Dof: math.Inf(1), Shape: Normal}
}

// Gain returns the relative standard uncertainty of the instrument's scale:
// its limits taken as reached at the longest reading, in mm. Lengths of one
// test share it. It is 0 if no accuracy is stated.
func (i Instrument) Gain(longest float64) float64 {
	if !(longest > 0) || !finite(longest) {
		return 0
	}
	return min(i.limits(Accuracy, Certificate).Combined()/longest, 1)
}

func (i Instrument) reaches(length float64) bool { return i.Reach == 0 || length <= i.Reach }
