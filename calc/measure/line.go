package measure

import (
	"math"
	"slices"

	"striderule/calc/distribution"
)

// A Point is a reading y at a known x.
type Point struct{ X, Y float64 }

// A Line is a straight line y = Intercept + Slope·x by least squares. Formulas:
// JCGM 100, H.3.2, written with deviations from the means, so that large x far
// from 0 lose no digits.
type Line struct {
	Points           []Point
	Intercept, Slope float64
	MeanX, MeanY     float64 // the line goes through here; 0, 0 if it goes through the origin
	Sxx              float64 // sum of the squared deviations from MeanX
	SSE, SSR         float64 // sums of squares: of the residuals, of what the slope explains
	Dof              float64
	ResidualSD       float64 // standard deviation of the residuals, √(SSE/Dof)
	origin           bool
	rounding         float64 // what it leaves, at most, of residuals that are none
}

// Fit returns the line through points. They are ErrTooFew below three, and
// ErrOneLength if all have the same x.
func Fit(points []Point) (Line, error) {
	l, err := newLine(points, 3)
	if err != nil {
		return Line{}, err
	}
	xs, ys := make(Series, len(points)), make(Series, len(points))
	for i, p := range points {
		xs[i], ys[i] = p.X, p.Y
	}
	l.MeanX, l.MeanY = xs.Mean(), ys.Mean()
	l.Dof = float64(len(points) - 2)
	if err := l.fit(); err != nil {
		return Line{}, err
	}
	l.Intercept = l.MeanY - l.Slope*l.MeanX // JCGM 100, H.3.2 (H.13a)
	return l, nil
}

// FitThroughOrigin returns the line through points and the origin. They are
// ErrTooFew below two, and ErrOneLength if all are at 0.
func FitThroughOrigin(points []Point) (Line, error) {
	l, err := newLine(points, 2)
	if err != nil {
		return Line{}, err
	}
	l.origin, l.Dof = true, float64(len(points)-1)
	if err := l.fit(); err != nil {
		return Line{}, err
	}
	return l, nil
}

func newLine(points []Point, least int) (Line, error) {
	if len(points) < least {
		return Line{}, ErrTooFew
	}
	for _, p := range points {
		if !finite(p.X, p.Y) {
			return Line{}, ErrNotFinite
		}
	}
	return Line{Points: slices.Clone(points)}, nil
}

// fit finds the slope, through the means.
func (l *Line) fit() error {
	sxy, widest, highest := 0.0, 0.0, 0.0
	for _, p := range l.Points {
		l.Sxx += (p.X - l.MeanX) * (p.X - l.MeanX)
		sxy += (p.X - l.MeanX) * (p.Y - l.MeanY)
		widest, highest = max(widest, math.Abs(p.X)), max(highest, math.Abs(p.Y))
	}
	if rounding := widest * 1e-15; l.Sxx <= rounding*rounding*float64(len(l.Points)) {
		return ErrOneLength
	}
	l.Slope = sxy / l.Sxx // JCGM 100, H.3.2 (H.13b)
	for i := range l.Points {
		l.SSE += l.Residual(i) * l.Residual(i)
	}
	l.SSR = l.Slope * l.Slope * l.Sxx
	l.ResidualSD = math.Sqrt(l.SSE / l.Dof) // JCGM 100, H.3.2 (H.13f)
	if !finite(l.Slope, l.SSE, l.SSR) {
		return ErrRange
	}
	l.settle(highest * noise)
	return nil
}

// noise is what rounding leaves, at most, of residuals that are none, as a share of the
// values that they are the differences of.
const noise = 1e-14

// settle makes a line that is not missed by more than rounding leaves an exact one: else
// that would pass for a scatter, and the line for known to the last digit.
func (l *Line) settle(most float64) {
	l.rounding = most
	if l.ResidualSD <= most {
		l.SSE, l.ResidualSD = 0, 0
	}
}

// Residual returns how far point i lies above the line.
func (l Line) Residual(i int) float64 {
	p := l.Points[i]
	return (p.Y - l.MeanY) - l.Slope*(p.X-l.MeanX)
}

// SESlope returns the standard uncertainty of the slope.
func (l Line) SESlope() float64 {
	return l.ResidualSD / math.Sqrt(l.Sxx) // JCGM 100, H.3.2 (H.13d)
}

// SEIntercept returns the standard uncertainty of the intercept.
func (l Line) SEIntercept() float64 { return l.ResidualSD * l.leverage(0) } // JCGM 100, H.3.2 (H.13c)

// Correlation returns that of intercept and slope, 0 through the origin.
func (l Line) Correlation() float64 {
	if l.origin {
		return 0
	}
	return -l.MeanX / math.Hypot(l.MeanX, math.Sqrt(l.Sxx/float64(len(l.Points)))) // JCGM 100, H.3.2 (H.13e)
}

// Covariance returns that of intercept and slope.
func (l Line) Covariance() float64 {
	return l.Correlation() * l.SEIntercept() * l.SESlope()
}

// RSquared returns the share of the squares that the line explains, about the
// mean, or about 0 through the origin. It is 1 if there is nothing to explain.
func (l Line) RSquared() float64 {
	if l.SSE == 0 {
		return 1
	}
	return l.SSR / (l.SSR + l.SSE)
}

// F returns the F statistic of the slope, false if the line fits exactly.
func (l Line) F() (float64, bool) {
	f := l.SSR / (l.SSE / l.Dof)
	return f, l.SSE > 0 && finite(f)
}

// SlopeEstimate returns the slope with its uncertainty.
func (l Line) SlopeEstimate() Estimate {
	return Estimate{Value: l.Slope, U: l.SESlope(), Dof: l.Dof}
}

// InterceptEstimate returns the intercept with its uncertainty.
func (l Line) InterceptEstimate() Estimate {
	return Estimate{Value: l.Intercept, U: l.SEIntercept(), Dof: l.Dof}
}

// leverage is the standard uncertainty of the line at x, in ResidualSD.
func (l Line) leverage(x float64) float64 {
	if l.origin {
		return math.Abs(x) / math.Sqrt(l.Sxx)
	}
	n := float64(len(l.Points))
	return math.Hypot(1/math.Sqrt(n), (x-l.MeanX)/math.Sqrt(l.Sxx)) // JCGM 100, H.3.4 (H.15), about the mean
}

// At returns the line at x with its uncertainty, ErrNotFinite or ErrRange if x
// is out of all bounds.
func (l Line) At(x float64) (Estimate, error) {
	if !finite(x) {
		return Estimate{}, ErrNotFinite
	}
	y := l.MeanY + l.Slope*(x-l.MeanX) // JCGM 100, H.3.4 (H.14)
	e := Estimate{Value: y, U: l.ResidualSD * l.leverage(x), Dof: l.Dof}
	if !finite(e.Value, e.U) {
		return Estimate{}, ErrRange
	}
	return e, nil
}

// NextAt returns where one more reading at x is to be expected: the line, and
// the scatter of a single reading on top.
func (l Line) NextAt(x float64) (Estimate, error) {
	e, err := l.At(x)
	if err == nil {
		e.U = math.Hypot(e.U, l.ResidualSD)
	}
	return e, err
}

// Inverse returns the x at which the line reaches an exact y. It is ErrLevel
// where it never does. Source: JCGM 100, 5.1.2, 5.2.2, to first order.
func (l Line) Inverse(y float64) (Estimate, error) {
	x := l.MeanX + (y-l.MeanY)/l.Slope
	u := l.ResidualSD * l.leverage(x) / math.Abs(l.Slope) // JCGM 100, 5.2.2 (13)
	if l.Slope == 0 || !finite(x, u) {
		return Estimate{}, ErrLevel
	}
	return Estimate{Value: x, U: u, Dof: l.Dof}, nil
}

// T returns how many standard uncertainties the value is away from another,
// false if it has none.
func (e Estimate) T(from float64) (float64, bool) {
	t := (e.Value - from) / e.U
	return t, e.U > 0 && finite(t)
}

// P returns the probability that a value so far away from another, or farther,
// would be found by chance alone. It is 0 or 1 of a value without uncertainty.
// Source: JCGM 100, G.3.
func (e Estimate) P(from float64) float64 {
	t, ok := e.T(from)
	switch {
	case ok && e.Dof > 0:
		return distribution.Missed(math.Abs(t), e.Dof)
	case e.Value == from:
		return 1
	}
	return 0
}
