package distribution

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Student factors of 95 %: JCGM 100, Table G.2, column of p = 95 %.
func ExampleStudentQuantile() {
	for _, dof := range []float64{1, 2, 3, 5, 10, 50, math.Inf(1)} {
		t, _ := StudentQuantile(0.95, dof)
		fmt.Printf("%.2f ", t)
	}
	// Output: 12.71 4.30 3.18 2.57 2.23 2.01 1.96
}

// Worked out with 40 digits from the incomplete beta function, on both sides of
// where this code changes from one way to another.
func TestStudentDigits(t *testing.T) {
	check := func(dof, x, tail, middle float64) {
		t.Helper()
		got, err := StudentTails(-x, dof)
		require.NoError(t, err)
		assert.InEpsilon(t, tail, got, 1e-12)
		assert.InEpsilon(t, middle, centre(x, dof), 1e-12)
		up, err := StudentUpper(x, dof)
		require.NoError(t, err)
		assert.InEpsilon(t, tail/2, up, 1e-12)
		low, err := StudentCDF(-x, dof)
		require.NoError(t, err)
		assert.InEpsilon(t, tail/2, low, 1e-12)
		high, err := StudentCDF(x, dof)
		require.NoError(t, err)
		assert.InEpsilon(t, 1-tail/2, high, 1e-13)
	}
	check(0.5, 0.001, 0.99946064766848764, 0.00053935233151236192)
	check(0.5, 0.75, 0.66966513428251026, 0.33033486571748974)
	check(0.5, 1.0, 0.60224322168264416, 0.39775677831735584)
	check(0.5, 2.5, 0.40097052905329318, 0.59902947094670682)
	check(0.5, 8.0, 0.2265050928075786, 0.7734949071924214)
	check(1.0, 0.001, 0.99936338043983888, 0.00063661956016111788)
	check(1.0, 0.75, 0.5903344706017331, 0.4096655293982669)
	check(1.0, 1.0, 0.5, 0.5)
	check(1.0, 2.5, 0.2422378831816868, 0.7577621168183132)
	check(1.0, 8.0, 0.079166848321131084, 0.92083315167886892)
	check(2.25, 0.001, 0.99928382738655367, 0.00071617261344632721)
	check(2.25, 0.75, 0.52381157663241294, 0.47618842336758706)
	check(2.25, 1.0, 0.41246786960548329, 0.58753213039451671)
	check(2.25, 2.5, 0.11575864880528723, 0.88424135119471277)
	check(2.25, 8.0, 0.010721440178324121, 0.98927855982167588)
	check(7.0, 0.001, 0.99923001724499884, 0.00076998275500115624)
	check(7.0, 0.75, 0.47769990990689039, 0.52230009009310961)
	check(7.0, 1.0, 0.35061666282020753, 0.64938333717979247)
	check(7.0, 2.5, 0.040992218585752897, 0.9590077814142471)
	check(7.0, 8.0, 9.1149211708753624e-5, 0.99990885078829125)
	check(57.5, 0.001, 0.99920557693263505, 0.00079442306736494978)
	check(57.5, 0.75, 0.45631261443685502, 0.54368738556314498)
	check(57.5, 1.0, 0.32150034514391446, 0.67849965485608554)
	check(57.5, 2.5, 0.015294949758644731, 0.98470505024135527)
	check(57.5, 8.0, 6.4858033423070503e-11, 0.99999999993514197)
	check(300.0, 0.001, 0.9992027801981141, 0.00079721980188589846)
	check(300.0, 0.75, 0.45384247145890995, 0.54615752854109005)
	check(300.0, 1.0, 0.31811640443062628, 0.68188359556937372)
	check(300.0, 2.5, 0.012953109204319177, 0.98704689079568082)
	check(300.0, 8.0, 2.7350153901538422e-14, 0.99999999999997265)
	check(500.0, 0.001, 0.99920251441467285, 0.00079748558532714591)
	check(500.0, 0.75, 0.45360745902246708, 0.54639254097753292)
	check(500.0, 1.0, 0.3177942072606084, 0.6822057927393916)
	check(500.0, 2.5, 0.01273857550088384, 0.98726142449911616)
	check(500.0, 8.0, 8.7296627938801911e-15, 0.99999999999999127)
	check(501.0, 0.001, 0.99920251361877972, 0.00079748638122028279)
	check(501.0, 0.75, 0.45360675520357281, 0.54639324479642719)
	check(501.0, 1.0, 0.317793242275081, 0.682206757724919)
	check(501.0, 2.5, 0.012737935222244257, 0.98726206477775574)
	check(501.0, 8.0, 8.6983670058979875e-15, 0.9999999999999913)
	check(1000.0, 0.001, 0.99920231501845273, 0.00079768498154726971)
	check(1000.0, 0.75, 0.45343111719367373, 0.54656888280632627)
	check(1000.0, 1.0, 0.31755241808467231, 0.68244758191532769)
	check(1000.0, 2.5, 0.012578567801090797, 0.9874214321989092)
	check(1000.0, 8.0, 3.4266614823914744e-15, 0.99999999999999657)
	check(30000.0, 0.001, 0.9992021222211915, 0.00079787777880849947)
	check(30000.0, 0.75, 0.45326058630503145, 0.54673941369496855)
	check(30000.0, 1.0, 0.31731857348651694, 0.68268142651348306)
	check(30000.0, 2.5, 0.012424626089799844, 0.98757537391020016)
	check(30000.0, 8.0, 1.2886941345425403e-15, 0.99999999999999871)
}

func TestStudentQuantileDigits(t *testing.T) {
	check := func(p, dof, want float64) {
		t.Helper()
		got, err := StudentQuantile(p, dof)
		require.NoError(t, err)
		assert.InEpsilon(t, want, got, 1e-12)
	}
	check(0.0009765625, 0.5, 0.0018106227699738428)
	check(0.5, 0.5, 1.5537739740300373)
	check(0.9375, 0.5, 105.31607013949743)
	check(0.99999904632568359375, 0.5, 452335194173.83979)
	check(0.0009765625, 2.25, 0.0013635856547711897)
	check(0.5, 2.25, 0.79881105306864073)
	check(0.9375, 2.25, 3.4663255111747184)
	check(0.99999904632568359375, 2.25, 511.93250783245716)
	check(0.0009765625, 500.0, 0.0012245520162791608)
	check(0.5, 500.0, 0.67498073796593903)
	check(0.9375, 500.0, 1.8669040881630544)
	check(0.99999904632568359375, 500.0, 4.9629475202702825)
	check(0.0009765625, 501.0, 0.0012245507941725755)
	check(0.5, 501.0, 0.67497975731721683)
	check(0.9375, 501.0, 1.8668957419615315)
	check(0.99999904632568359375, 501.0, 4.9628224483893784)
	check(0.0009765625, 100000.0, 0.0012239429526631207)
	check(0.5, 100000.0, 0.67449220355329221)
	check(0.9375, 100000.0, 1.8627526826095911)
	normal, err := StudentQuantile(0.95, math.Inf(1))
	require.NoError(t, err)
	assert.InEpsilon(t, 1.959963984540054, normal, 1e-15)
	guard, err := StudentQuantile(0.9, math.Inf(1))
	require.NoError(t, err)
	assert.InEpsilon(t, 1.6448536269514722, guard, 1e-15)
}

func TestStudentThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dof := math.Exp(rapid.Float64Range(-1, 40).Draw(t, "ln dof"))
		p := rapid.Float64Range(1e-9, 1-1e-9).Draw(t, "p")
		x, err := StudentQuantile(p, dof)
		require.NoError(t, err)
		q, err := StudentTails(x, dof)
		require.NoError(t, err)
		assert.InEpsilon(t, 1-p, q, 1e-9) // p itself has lost that much of a small 1 − p
		wider, err := StudentQuantile(p, dof/2)
		require.NoError(t, err)
		assert.GreaterOrEqual(t, wider, x*(1-1e-12), "fewer degrees of freedom, wider")
	})
}

func TestStudentRefuses(t *testing.T) {
	fails := func(want error, _ float64, err error) {
		t.Helper()
		assert.ErrorIs(t, err, want)
	}
	call := func(f func(a, b float64) (float64, error), a, b float64) (error, float64, error) {
		v, err := f(a, b)
		assert.Zero(t, v)
		return err, v, err
	}
	for _, f := range []func(a, b float64) (float64, error){StudentCDF, StudentUpper, StudentTails} {
		_, v, err := call(f, 1, 0)
		fails(ErrDof, v, err)
		_, v, err = call(f, 1, math.NaN())
		fails(ErrDof, v, err)
		_, v, err = call(f, math.Inf(1), 3)
		fails(ErrNotFinite, v, err)
	}
	for _, p := range []float64{0, 1, -1, 2, math.NaN()} {
		_, v, err := call(StudentQuantile, p, 3)
		fails(ErrProbability, v, err)
	}
	_, v, err := call(StudentQuantile, 0.5, -1)
	fails(ErrDof, v, err)
	_, v, err = call(StudentQuantile, 1-1e-9, 0.001)
	fails(ErrRange, v, err)
}

// What does not check says the same as what does.
func TestSpanAndMissed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dof := rapid.OneOf(rapid.Float64Range(1, 60), rapid.Just(math.Inf(1))).Draw(t, "dof")
		q := rapid.OneOf(rapid.Just(0.05), rapid.Float64Range(1e-6, 0.999)).Draw(t, "q")
		x, err := StudentQuantile(1-q, dof)
		require.NoError(t, err)
		for range 2 { // what is kept is what was found
			assert.InEpsilon(t, x, Span(q, dof), 1e-9)
		}
		tails, err := StudentTails(x, dof)
		require.NoError(t, err)
		assert.Equal(t, tails, Missed(x, dof))
	})
	assert.Zero(t, Missed(math.Inf(1), 3))
	assert.InEpsilon(t, Least, Missed(Span(Least, 4), 4), 1e-9)
	assert.Equal(t, math.Inf(1), Span(1e-9, 0.001), "no number holds it")
}

// The upper 5 % points of F: NIST/SEMATECH e-Handbook of Statistical Methods,
// 1.3.6.7.3, printed to three decimals.
func TestFisherUpper(t *testing.T) {
	check := func(f, d1, d2 float64) {
		t.Helper()
		p, err := FisherUpper(f, d1, d2)
		require.NoError(t, err)
		assert.InDelta(t, 0.05, p, 0.0001)
	}
	check(161.448, 1, 1)
	check(4.965, 1, 10)
	check(3.708, 3, 10)
	check(2.978, 10, 10)
	for _, f := range []float64{0, -3} {
		p, err := FisherUpper(f, 2, 2)
		require.NoError(t, err)
		assert.Equal(t, 1.0, p)
	}
	_, err := FisherUpper(math.NaN(), 2, 2)
	assert.ErrorIs(t, err, ErrNotFinite)
	for _, d := range [][2]float64{{0, 2}, {2, 0}, {math.Inf(1), 2}, {2, math.Inf(1)}, {math.NaN(), 2}} {
		_, err := FisherUpper(1, d[0], d[1])
		assert.ErrorIs(t, err, ErrDof)
	}
	// F of 1 and ν degrees of freedom is t².
	p, err := FisherUpper(2.5*2.5, 1, 7)
	require.NoError(t, err)
	assert.InEpsilon(t, tails(2.5, 7), p, 1e-12)
}
