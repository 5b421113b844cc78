package sample

import "testing"

func TestLarger(t *testing.T) {
	if Larger(1, 2) != 2 || Larger(4, 3) != 4 || Larger(5, 5) != 5 {
		t.Error("not the larger")
	}
}

func TestSum(t *testing.T) {
	if Sum(4) != 6 {
		t.Error("not the sum")
	}
}

func TestPrice(t *testing.T) {
	for _, c := range []struct {
		weight    float64
		card, old bool
		want      float64
	}{{2, false, false, 5}, {2, true, false, 2.5}, {2, true, true, 5}, {2, false, true, 5}, {0, false, false, 0}} {
		if got, _ := Price(c.weight, c.card, c.old); got != c.want {
			t.Errorf("%v: got %v", c, got)
		}
	}
}

func TestRead(t *testing.T) {
	for text, want := range map[string]int{"40": 40, "41": 0, "-3": -3, "x": 0} {
		got, err := Read(text)
		if got != want || (err != nil) != (want == 0) {
			t.Errorf("%s: got %v, %v", text, got, err)
		}
	}
}
