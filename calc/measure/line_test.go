package measure

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/distribution"
)

// JCGM 100:2008, H.3: calibration of a thermometer, Table H.6. Published:
// y1 −0.1712 °C (u 0.0029), y2 0.00218 (u 0.00067), r −0.930, s 0.0035; the
// correction at 30 °C −0.1494 °C (u 0.0041).
func ExampleFit() {
	t := []float64{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511}
	b := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	var points []Point
	for k := range t {
		points = append(points, Point{t[k] - 20, b[k]})
	}
	l, _ := Fit(points)
	at30, _ := l.At(10)
	fmt.Printf("y1 %.4f (%.4f), y2 %.5f (%.5f)\n", l.Intercept, l.SEIntercept(), l.Slope, l.SESlope())
	fmt.Printf("r %.3f, s %.4f, b(30) %.4f (%.4f)\n", l.Correlation(), l.ResidualSD, at30.Value, at30.U)
	// Output:
	// y1 -0.1712 (0.0029), y2 0.00218 (0.00067)
	// r -0.930, s 0.0035, b(30) -0.1494 (0.0041)
}

// NIST StRD, linear regression, NoInt1: certified B1 2.07438016528926, its
// standard deviation 0.165289256198347E-01, residual 3.56753034006338.
func ExampleFitThroughOrigin() {
	var points []Point
	for i := range 11 {
		points = append(points, Point{float64(60 + i), float64(130 + i)})
	}
	l, _ := FitThroughOrigin(points)
	fmt.Printf("%.12f %.12f %.12f %.12f\n", l.Slope, l.SESlope(), l.ResidualSD, l.RSquared())
	// Output: 2.074380165289 0.016528925620 3.567530340063 0.999365492299
}

func genPoints(t *rapid.T) []Point {
	n := rapid.IntRange(3, 12).Draw(t, "n")
	points := make([]Point, n)
	for i := range points {
		points[i] = Point{float64(10*i) + rapid.Float64Range(0, 9).Draw(t, "x"), rapid.Float64Range(-50, 50).Draw(t, "y")}
	}
	return points
}

func moved(points []Point, dx, dy, by float64) []Point {
	list := slices.Clone(points)
	for i := range list {
		list[i].X, list[i].Y = list[i].X+dx, list[i].Y*by+dy
	}
	return list
}

func TestLineLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := genPoints(t)
		given := slices.Clone(points)
		l, err := Fit(points)
		require.NoError(t, err)
		assert.Equal(t, given, l.Points)
		fit := func(p []Point) Line {
			other, err := Fit(p)
			require.NoError(t, err)
			return other
		}
		near := func(want, got float64) { t.Helper(); assert.InDelta(t, want, got, 1e-9*(1+math.Abs(want))) }

		shuffled := fit(rapid.Permutation(points).Draw(t, "order"))
		near(l.Slope, shuffled.Slope)
		near(l.SEIntercept(), shuffled.SEIntercept())

		offset := fit(moved(points, 0, 1000, 1)) // a fixed offset leaves the scale alone
		near(l.Slope, offset.Slope)
		near(l.SESlope(), offset.SESlope())
		near(l.Intercept+1000, offset.Intercept)

		double := fit(moved(points, 0, 0, 2))
		near(2*l.Slope, double.Slope)
		near(2*l.SESlope(), double.SESlope())
		near(l.RSquared(), double.RSquared())

		aside := fit(moved(points, 40, 0, 1))
		near(l.Slope, aside.Slope)
		near(l.Intercept-40*l.Slope, aside.Intercept)

		sum := 0.0
		for i := range l.Points {
			sum += l.Residual(i)
		}
		near(0, sum)
		at0, err := l.At(0)
		require.NoError(t, err)
		near(l.Intercept, at0.Value)
		near(l.SEIntercept(), at0.U)
		// JCGM 100, H.3.4 (H.15) as it is printed there.
		x := rapid.Float64Range(-200, 200).Draw(t, "at")
		at, err := l.At(x)
		require.NoError(t, err)
		u1, u2 := l.SEIntercept(), l.SESlope()
		assert.InDelta(t, u1*u1+x*x*u2*u2+2*x*u1*u2*l.Correlation(), at.U*at.U, 1e-8*(u1*u1+x*x*u2*u2))
		near(l.Covariance(), u1*u2*l.Correlation())
		next, err := l.NextAt(x)
		require.NoError(t, err)
		near(at.U*at.U+l.ResidualSD*l.ResidualSD, next.U*next.U)
		if math.Abs(l.Slope) > 1e-3 {
			back, err := l.Inverse(at.Value)
			require.NoError(t, err)
			assert.InDelta(t, x, back.Value, 1e-6)
			assert.InEpsilon(t, at.U/math.Abs(l.Slope), back.U, 1e-6)
		}
		if f, ok := l.F(); ok {
			tt, ok := l.SlopeEstimate().T(0)
			require.True(t, ok)
			assert.InEpsilon(t, f+1, tt*tt+1, 1e-9)
			p, err := distribution.FisherUpper(f, 1, l.Dof)
			require.NoError(t, err)
			assert.InDelta(t, p, l.SlopeEstimate().P(0), 1e-9)
		}
	})
}

func TestLineEdges(t *testing.T) {
	fails := func(want error, points ...Point) {
		t.Helper()
		_, err := Fit(points)
		assert.ErrorIs(t, err, want)
		_, err = FitThroughOrigin(points)
		assert.ErrorIs(t, err, want)
	}
	fails(ErrTooFew)
	fails(ErrTooFew, Point{1, 1})
	fails(ErrNotFinite, Point{1, 1}, Point{2, 2}, Point{3, math.NaN()})
	fails(ErrRange, Point{1, 1}, Point{2, 2}, Point{3, 1e90})
	fails(ErrOneLength, Point{0, 1}, Point{0, 2}, Point{0, 3})
	_, err := Fit([]Point{{1, 1}, {2, 2}})
	assert.ErrorIs(t, err, ErrTooFew)
	_, err = Fit([]Point{{100, 1}, {100, 2}, {100, 3}})
	assert.ErrorIs(t, err, ErrOneLength)
	_, err = Fit([]Point{{0.3, 1}, {0.1 + 0.2, 2}, {0.3, 3}})
	assert.ErrorIs(t, err, ErrOneLength, "apart by rounding only")

	exact, err := Fit([]Point{{1, 5}, {2, 5}, {3, 5}})
	require.NoError(t, err)
	assert.Equal(t, 1.0, exact.RSquared())
	_, ok := exact.F()
	assert.False(t, ok)
	_, err = exact.Inverse(6)
	assert.ErrorIs(t, err, ErrLevel)
	assert.Equal(t, 1.0, exact.SlopeEstimate().P(0))
	assert.Equal(t, 0.0, exact.SlopeEstimate().P(1))
	_, ok = exact.SlopeEstimate().T(1)
	assert.False(t, ok)
	for _, x := range []float64{math.NaN(), math.Inf(1)} {
		_, err = exact.At(x)
		assert.ErrorIs(t, err, ErrNotFinite)
		_, err = exact.NextAt(x)
		assert.ErrorIs(t, err, ErrNotFinite)
	}
	steep, err := Fit([]Point{{1, 1e40}, {2, 3e40}, {3, 4e40}})
	require.NoError(t, err)
	_, err = steep.At(1e99)
	assert.ErrorIs(t, err, ErrRange)

	origin, err := FitThroughOrigin([]Point{{1, 2}, {2, 4.1}, {4, 7.9}})
	require.NoError(t, err)
	assert.Zero(t, origin.Correlation())
	assert.Zero(t, origin.SEIntercept())
	at, err := origin.At(10)
	require.NoError(t, err)
	assert.InEpsilon(t, 10*origin.Slope, at.Value, 1e-14)
	assert.InEpsilon(t, 10*origin.SESlope(), at.U, 1e-14)
}

func TestLackOfFit(t *testing.T) {
	bent := []Point{{1, 1.0}, {1, 1.1}, {2, 4.0}, {2, 4.1}, {3, 9.0}, {3, 9.1}}
	l, err := Fit(bent)
	require.NoError(t, err)
	lack, err := l.LackOfFit()
	require.NoError(t, err)
	// By hand: the means 1.05, 4.05, 9.05 lie 1/3, −2/3, 1/3 off the line, two
	// readings each; repeats 0.05 off their means.
	assert.InEpsilon(t, 2*(1+4+1)/9.0/1, lack.F*lack.PureSD*lack.PureSD, 1e-9)
	assert.InEpsilon(t, 6*0.05*0.05/3, lack.PureSD*lack.PureSD, 1e-9)
	assert.Equal(t, 1.0, lack.DofLack)
	assert.Equal(t, 3.0, lack.DofPure)
	assert.False(t, lack.Adequate)

	origin, err := FitThroughOrigin(bent)
	require.NoError(t, err)
	lack, err = origin.LackOfFit()
	require.NoError(t, err)
	assert.Equal(t, 2.0, lack.DofLack, "one parameter less")

	fails := func(want error, points ...Point) {
		t.Helper()
		l, err := Fit(points)
		require.NoError(t, err)
		_, err = l.LackOfFit()
		assert.ErrorIs(t, err, want)
	}
	fails(ErrTooFew, Point{1, 1}, Point{2, 2.1}, Point{3, 3})
	fails(ErrTooFew, Point{1, 1}, Point{1, 2.1}, Point{3, 3})
	fails(ErrNoSpread, Point{1, 1}, Point{1, 1}, Point{2, 2.1}, Point{3, 3})
}
