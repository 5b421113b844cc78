package unit_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"striderule/calc/unit"
)

// FuzzInput reads any text as every kind: nothing panics, what is refused is
// not given, and what is accepted is finite, inside the range, and comes back.
func FuzzInput(f *testing.F) {
	for _, text := range []string{
		"", " ", "80", "80 mm", "80,5mm", "3.15 in", "5/16 in", "1 5/16 in", "0.9°", "0.9deg", "200 steps", "90 mm/min", "1.5 mm/s",
		"400", "1/16", "54:12", "−5", "1 000,5", "1\u00a0000", "1,000.5", "1.000,5", "1,000,000", "1,000", "0,125", "1e-3", "1e+15",
		"8Omm", "80 furlongs", "NaN", "Inf", "1e999", "1e-999", "0", "1..2", "1,2,3", "5/0", "--5", "5'", "5''", "1’000", "80 µm",
		"1 000/5", "1,000/5", ".", ",", "/", ":", "e", "1e", "1e+", "-", "1/1/1", "1:1/1", "80 mm.", "80..", "80 per mm", "5/16:2",
		"24 DP", "DP 24", "24dp", "m1.5", "mod 0,8", "DP.5", "DP -24", "DP 24 mm", "DP. 1,000", "20 threads per inch", "3.3 Ω", "850 mΩ",
	} {
		f.Add(text)
	}
	all := entries()
	f.Fuzz(func(t *testing.T, text string) {
		for _, e := range all {
			v, given, err := e.read(text)
			plain := e.plain(text)
			if err != nil {
				var refusal *unit.Error
				require.ErrorAs(t, err, &refusal)
				require.NotNil(t, refusal.Cause)
				require.False(t, given)
				require.Zero(t, v)
				require.Equal(t, text, plain)
				continue
			}
			if !given {
				require.Empty(t, strings.TrimSpace(text))
				require.Empty(t, plain)
				continue
			}
			require.True(t, finite(v))
			require.GreaterOrEqual(t, v, e.least)
			require.LessOrEqual(t, v, e.most)
			for _, again := range []string{e.write(v), plain} {
				back, _, err := e.read(again)
				require.NoError(t, err, "%s: %q as %q", e.name, text, again)
				require.Equal(t, v, back, "%s: %q as %q", e.name, text, again)
			}
			require.Equal(t, plain, e.plain(plain), "%s: %q", e.name, text)
			require.NotContains(t, plain, ",")
		}
	})
}
