package measure

import "testing"

func BenchmarkCorrection(b *testing.B) {
	test := MarkTest{Marks: Series{105}, Remaining: Series{28.7, 28.9, 28.6, 28.8, 28.5}, With: caliper}
	for b.Loop() {
		m, err := test.Measure()
		if err != nil {
			b.Fatal(err)
		}
		s, _ := ScaleOf(80, m)
		s.Steps(538).Expanded()
		if _, err := s.Judge(0.005); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAdvise(b *testing.B) {
	s := heron(b)
	s.Ratio.Value = 0.9935 // not settled: all searches run
	for b.Loop() {
		if list, err := s.Advise(0.005); err != nil || len(list) == 0 {
			b.Fatal(err)
		}
	}
}

func BenchmarkFit(b *testing.B) {
	for b.Loop() {
		a, err := ScaleAndOffset(travelTest, caliper)
		if err != nil {
			b.Fatal(err)
		}
		a.Scale.Ratio.Expanded()
	}
}

func BenchmarkSlip(b *testing.B) {
	for b.Loop() {
		r, err := threshold.Solve()
		if err != nil {
			b.Fatal(err)
		}
		r.Scale.Ratio.Expanded()
	}
}
