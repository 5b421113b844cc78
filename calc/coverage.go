package calc

// A Coverage is how often an interval held the true value of simulated tests, in %: the worst
// of 160 mixes of scatter, accuracy and kind of test.
type Coverage struct {
	Runs  int
	Shown float64 // the interval that the pages show
	Guide float64 // k · u
	Width float64 // mean width of the one shown, over that of a test whose scatter is known
}

// Coverages are for the method page. The program that found them, scripts/gauge/cover, fails
// where it finds others.
var Coverages = []Coverage{
	{2, 96.6, 86.9, 4.1},
	{3, 95.1, 92.0, 1.5},
	{4, 95.0, 93.5, 1.2},
	{5, 95.2, 94.1, 1.1},
	{10, 95.0, 94.8, 1.0},
}
