package drive_test

import (
	"math/big"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc/drive"
	"striderule/calc/unit"
)

func TestParseScrew(t *testing.T) {
	check := func(text string, diameter, lead, pitch unit.Length, starts unit.Count) {
		t.Helper()
		s, err := drive.ParseScrew(text)
		require.NoError(t, err)
		assert.Equal(t, drive.Screw{Pitch: pitch, Starts: starts, Diameter: diameter}, s, text)
		assert.InEpsilon(t, float64(lead), float64(s.Lead()), 1e-15, text)
		left, err := drive.ParseScrew(text + " LH")
		require.NoError(t, err)
		assert.Equal(t, drive.Screw{Pitch: pitch, Starts: starts, Diameter: diameter, LeftHand: true}, left, text)
	}
	// ISO 2904: nominal diameter x lead, pitch in brackets
	check("Tr8x8(P2)", 8, 8, 2, 4)
	check("Tr8x2", 8, 2, 2, 1) // no pitch in it: one start
	check("Tr10x4(P2)", 10, 4, 2, 2)
	check("Tr 10 x 3", 10, 3, 3, 1)
	check("Tr 12 x 6 (P3)", 12, 6, 3, 2)
	check("Tr 40×14 (P7)", 40, 14, 7, 2)
	check("TR8X8(P2)", 8, 8, 2, 4)
	check("tr8*8(p2)", 8, 8, 2, 4)
	check("  Tr8x8( P 2 )  ", 8, 8, 2, 4)
	check("Tr\u00a08\u202f×\u20098\t(P2)", 8, 8, 2, 4) // spaces that typesetters use
	check("Tr8x1,5", 8, 1.5, 1.5, 1)
	check("Tr12,5x4,5(P1,5)", 12.5, 4.5, 1.5, 3)
	check("Tr8x0.6(P0.2)", 8, 0.6, 0.2, 3) // 0.6/0.2 is not quite 3 in binary
	check("Tr8mm x 8mm (P2mm)", 8, 8, 2, 4)
	// ISO 261
	check("M8x1.25", 8, 1.25, 1.25, 1)
	check("M8x1,25", 8, 1.25, 1.25, 1)
	check("M 8 x 1.25", 8, 1.25, 1.25, 1)
	check("M\u00a08×1.25", 8, 1.25, 1.25, 1)
	check("m6x1,000", 6, 1, 1, 1) // not a thousand
	// a lead alone, or pitch x starts
	check("8", 0, 8, 8, 1)
	check("8 mm", 0, 8, 8, 1)
	check("1/2 in", 0, 12.7, 12.7, 1)
	check("2 mm x 4", 0, 8, 2, 4)
	check("2x4", 0, 8, 2, 4)
	check("2,5 mm × 2 starts", 0, 5, 2.5, 2)
}

// Threads per inch, as they stand on the shelf. The leads are worked by hand:
// 25.4 mm over the threads, times the starts.
func TestParseScrewByThreadsPerInch(t *testing.T) {
	check := func(text string, threads unit.ThreadsPerInch, starts unit.Count, lead float64) {
		t.Helper()
		s, err := drive.ParseScrew(text)
		require.NoError(t, err, text)
		assert.Equal(t, drive.Screw{Threads: threads, Starts: starts}, s, text)
		assert.Equal(t, lead, float64(s.Lead()), text)
		assert.Equal(t, lead, drive.PerTurn(s), text)
		left, err := drive.ParseScrew(text + " LH")
		require.NoError(t, err)
		assert.True(t, left.LeftHand)
	}
	check("20 tpi", 20, 1, 1.27)
	check("20tpi", 20, 1, 1.27)
	check("20 TPI", 20, 1, 1.27)
	check("20 t.p.i.", 20, 1, 1.27)
	check("20 tpi x 2", 20, 2, 2.54)
	check("20tpi x 2 starts", 20, 2, 2.54)
	check("20 tpi × 2", 20, 2, 2.54)
	check("20 threads per inch", 20, 1, 1.27)
	check("20 threads/in x 2", 20, 2, 2.54)
	check("20 threads per inch*2", 20, 2, 2.54)
	check("10 tpi x 10", 10, 10, 25.4)
	check("127 tpi x 5", 127, 5, 1)
	check("16 tpi", 16, 1, 1.5875)
	check("11 1/2 tpi", 11.5, 1, 2.208695652173913) // 254/115
	check("11,5 tpi", 11.5, 1, 2.208695652173913)
	check("24 tpi", 24, 1, 1.0583333333333333) // 127/120
	check("13 tpi x 3", 13, 3, 5.861538461538461538)
	check("1,000 tpi", 1, 1, 25.4)
}

// The lead of a screw by the inch is the nearest number to the exact one: whole
// numbers are multiplied, and divided once.
func TestThreadsPerInchAreExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		threads := rapid.Int64Range(1, 500).Draw(t, "threads")
		starts := rapid.Int64Range(1, 100).Draw(t, "starts")
		text := strconv.FormatInt(threads, 10) + rapid.SampledFrom([]string{" tpi", "tpi", " threads per inch"}).Draw(t, "unit")
		s, err := drive.ParseScrew(text + " x " + strconv.FormatInt(starts, 10))
		require.NoError(t, err)
		exactly, _ := big.NewRat(254*starts, 10*threads).Float64()
		require.Equal(t, exactly, float64(s.Lead()))
		// text → value → text
		again, err := drive.ParseScrew(unit.Threads.Text(s.Threads) + " x " + unit.Starts.Text(s.Starts))
		require.NoError(t, err)
		require.Equal(t, s, again)
	})
}

func TestLeftHand(t *testing.T) {
	check := func(text string) {
		t.Helper()
		s, err := drive.ParseScrew(text)
		require.NoError(t, err)
		assert.Equal(t, drive.Screw{Pitch: 2, Starts: 4, Diameter: 8, LeftHand: true}, s)
	}
	check("Tr8x8(P2)LH")
	check("Tr8x8(P2) lh")
	check("Tr8x8(P2)-LH")
	check("Tr 8 x 8 (P2) – LH") // en dash
	check("Tr8x8(P2)\u00a0LH")
}

func TestScrewRefused(t *testing.T) {
	check := func(text, sentence string) {
		t.Helper()
		s, err := drive.ParseScrew(text)
		require.Error(t, err, "%q was read as %+v", text, s)
		assert.ErrorIs(t, err, drive.ErrScrew)
		var e *unit.Error
		require.ErrorAs(t, err, &e)
		assert.Equal(t, "Screw: “"+strings.TrimSpace(text)+"” isn't a screw. "+sentence, e.In("Screw"))
		assert.Equal(t, text, e.Text)
		assert.Zero(t, s)
	}
	const like = "Write it like Tr8x8(P2), M8x1.25, 8 mm (its lead), 2 mm x 4 (pitch x starts) or 20 tpi (threads per inch)."
	for _, text := range []string{
		"", " ", "LH", "Tr", "M", "x", "Tr8", "M8", "Tr8x", "Trx8", "Tr x 8", "Tr8x8(", "Tr8x8(P", "Tr8x8(P)", "Tr8x8(P2", "Tr8x8(2)", "Tr8x8 P2",
		"Tr8x8(P2))", "Tr8x8(P2)(P2)", "Tr8x8(P2)x", "Tr8x8x2", "M8x1.25x2", "Tr8x8(P0)", "Tr0x8", "Tr8x0", "Tr8x-8(P2)", "Tr8x8(P-2)", "Tr-8x8",
		"Tr8x8(PNaN)", "TrInfx8", "Tr8x1e999", "Tr8x8(P0.001)", "Tr8x2000", "Tr8x8°",
		"8 kg", "-8", "0", "8 mm x", "x 4", "8 mm x 0", "8 mm x -1", "8 mm x 1.5", "8 mm x 101", "2 mm x 4 mm", "8mm8", "screw",
		"tpi", "tpi 20", "20 tpi x", "20 tpi x 0", "20 tpi x 2 tpi", "20 x 2 tpi", "20 tpi x 1.5", "20 tpi 2", "20 threads", "Tr8x20 tpi", "20 tpi mm",
	} {
		check(text, like)
	}
	const whole = "The lead must be a whole number of pitches, as in Tr8x8(P2)."
	check("Tr8x8(P3)", whole)
	check("Tr8x2(P8)", whole)
	check("Tr8x8(P2.01)", whole)
	const many = "A screw has from 0.1 to 500 threads per inch."
	check("501 tpi", many)
	check("0 tpi", many)
	check("-20 tpi", many)
	check("0.09 threads per inch x 2", many)
	const inch = "Write an inch screw by its threads per inch: 20 tpi, or 20 tpi x 2 for two starts."
	check("1/4-20", inch)
	check("1/2-10 2 starts", inch)
	check(`3/8"-16`, inch)
	check("5/16–18", inch) // en dash
	huge := strings.Repeat("Tr8x8(P2)", 1<<16)
	_, err := drive.ParseScrew(huge)
	assert.ErrorIs(t, err, drive.ErrScrew)
	assert.Less(t, len(err.Error()), 1000)
}

// FuzzParseScrew reads any text: nothing panics, what is accepted is a screw
// that can be, and reads the same from its own designation.
func FuzzParseScrew(f *testing.F) {
	for _, text := range []string{
		"Tr8x8(P2)", "Tr 12 x 6 (P3) LH", "M8x1.25", "8 mm", "2 mm x 4", "1/2 in", "Tr8x8(P3)", "Tr8", "tr8*8(p2)-lh", "Tr12,5×4,5(P1,5)",
		"M6x1,000", "", "LH", "Tr8x0.6(P0.2)", "Tr8x8(P0.001)", "x", "(P", "İLH", "ſLH", "Tr8x8(P2)\u202fLH", "M\u00a08x1", "8 mm x 1e2",
		"20 tpi", "20tpi x 2 starts", "11 1/2 threads per inch x 2 LH", "1,000 tpi", "501 tpi", "1/4-20", "1/3 tpi",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := drive.ParseScrew(text)
		if err != nil {
			require.ErrorIs(t, err, drive.ErrScrew)
			require.Zero(t, s)
			return
		}
		require.NoError(t, s.Check())
		require.True(t, s.Starts >= 1 && s.Starts <= 100)
		if s.Threads != 0 {
			require.True(t, s.Pitch == 0 && s.Threads >= 0.1 && s.Threads <= 500)
		} else {
			require.True(t, s.Pitch > 0 && s.Pitch < 1000)
		}
		require.True(t, s.Diameter >= 0 && s.Diameter < 1000)
		again := unit.Full(float64(s.Pitch)) + " x " + unit.Full(float64(s.Starts))
		if s.Threads != 0 {
			again = unit.Threads.Text(s.Threads) + " x " + unit.Full(float64(s.Starts))
		}
		if s.Diameter > 0 {
			again = "Tr" + unit.Full(float64(s.Diameter)) + "x" + unit.Full(float64(s.Lead())) + "(P" + unit.Full(float64(s.Pitch)) + ")"
			if s.Lead() >= 999 {
				return // its own designation is beyond what is read
			}
		}
		if s.LeftHand {
			again += " LH"
		}
		back, err := drive.ParseScrew(again)
		require.NoError(t, err, "%q as %q", text, again)
		require.Equal(t, s, back, "%q as %q", text, again)
	})
}

// As many starts as any screw has, and not one more.
func TestMostStarts(t *testing.T) {
	screw, err := drive.ParseScrew("Tr8x100(P1)")
	require.NoError(t, err)
	assert.EqualValues(t, 100, screw.Starts)
	_, err = drive.ParseScrew("Tr8x101(P1)")
	assert.ErrorIs(t, err, drive.ErrScrew)
}
