package parts_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/calctest"
	_ "striderule/calc/calctest/cases"
	"striderule/calc/form"
	"striderule/calc/report"
)

func TestPartsOfAMachine(t *testing.T) {
	p, _ := calc.PageOf("parts")
	f := calctest.Open(t, "parts", p.Example)
	assert.InEpsilon(t, 200*16*4.5/(math.Pi*8.5), calctest.Out(t, f, "steps-1"), 1e-14)
	assert.InEpsilon(t, math.Pi*8.5, calctest.Out(t, f, "output-1"), 1e-14)
	assert.InEpsilon(t, math.Pi*8.5/4.5, calctest.Out(t, f, "turn-1"), 1e-14)
	assert.InEpsilon(t, 4.5, calctest.Out(t, f, "ratio-1"), 1e-15)
	assert.InEpsilon(t, 3200./36, calctest.Out(t, f, "steps-2"), 1e-15)
	assert.InEpsilon(t, 0.18, calctest.Out(t, f, "fullstep-3"), 1e-15)
	assert.InEpsilon(t, 800., calctest.Out(t, f, "steps-4"), 1e-15)
	assert.InEpsilon(t, 0.00125, calctest.Out(t, f, "microstep-4"), 1e-15)
	assert.Contains(t, calctest.Answer(f), "Heron extruder, steps per mm: 539.2544 steps/mm\nA starting value only: run a test.")
	assert.Contains(t, calctest.Part(f, "all"), "Plover X | 88.88889 steps/mm | 36 mm/rev")
	assert.Contains(t, calctest.Part(f, "axis-4"), "Motor: 200 full steps per turn, 16 microsteps. Gear ratio: 1. Screw: 4 mm lead.")
	assert.Contains(t, calctest.Part(f, "axis-4"), "Trust this value over a measurement")
	assert.Contains(t, calctest.Part(f, "first"), "hand near the off switch")
}

func TestPartsOfEverySort(t *testing.T) {
	check := func(entries, id string, want float64) {
		t.Helper()
		assert.InEpsilon(t, want, calctest.Out(t, calctest.Open(t, "parts", "v=1&"+entries), id), 1e-14, entries)
	}
	check("angle=0.9&micro=32&pitch=2&teeth=16", "steps-1", 400)
	check("angle=0.9&micro=1/32&pitch=2.032&teeth=18", "steps-1", 12800/36.576)
	check("angle=200steps&micro=16&gears=ratio&ratio=3&pitch=0.2in&teeth=12", "stepsin-1", 3200*3/2.4)
	check("out=rack&angle=1.8&micro=16&module=1&pinion=20", "turn-1", 20*math.Pi)
	check("out=rotary&angle=1.8&micro=16&gears=pairs&driving=1&driven=90", "stepsrev-1", 288000)
	check("out=rotary&angle=1.8&micro=16", "microstep-1", 0.1125)
	check("out=roller&angle=1.8&micro=16&gears=pairs&driving=16%20x%2020&driven=46%C3%9736&roller=12", "ratio-1", 46*36/(16*20.))
	check("out=roller&angle=1.8&micro=8&gears=pairs&driving=1&driven=40&roller=20", "steps-1", 200*8*40/(20*math.Pi))
}

// By what stands on the shelf. Worked by hand: 25.4 mm over the threads, times the
// starts; a module of 25.4/DP; a drum with one cable; half of what is pulled in; the
// difference of two leads.
func TestPartsByTheNamesOnTheShelf(t *testing.T) {
	check := func(entries string, perTurn float64) {
		t.Helper()
		f := calctest.Open(t, "parts", "v=1&angle=1.8&micro=16&"+entries)
		assert.InEpsilon(t, perTurn, calctest.Out(t, f, "output-1"), 1e-15, entries)
		assert.InEpsilon(t, 3200/perTurn, calctest.Out(t, f, "steps-1"), 1e-15, entries)
	}
	check("out=screw&screw=20%20tpi", 1.27)
	check("out=screw&screw=20tpi%20x%202%20starts", 2.54)
	check("out=screw&screw=20%20threads%20per%20inch", 1.27)
	check("out=rack&module=24%20DP&pinion=20", 20*math.Pi*127/120)
	check("out=rack&module=DP%2024&pinion=20", 20*math.Pi*127/120)
	check("out=rack&module=m1.5&pinion=20", 30*math.Pi)
	check("out=belt2&pitch=2&teeth=20", 20)
	check("out=drum&drum=20&cable=0.8", 20.8*math.Pi)
	check("out=drum2&drum=20&cable=0.8", 10.4*math.Pi)
	check("out=differential&first=M8x1.25&second=M6x1", 0.25)
	check("out=differential&first=M8x1.25%20LH&second=M6x1", 2.25)
	check("out=differential&first=20%20tpi&second=24%20tpi", 127/600.)
}

// The link carries what was typed, and hands it on.
func TestPartsKeepTheShelfNames(t *testing.T) {
	for entries, swap := range map[string]string{
		"out=screw&screw=20%20tpi":                         "out=screw&screw=20%20tpi&outnew=screw",
		"out=screw&screw=20TPI%20x%202%20starts":           "out=screw&screw=20TPI%20x%202%20starts&outnew=screw",
		"out=rack&module=DP%2024&pinion=20":                "out=rack&module=DP%2024&pinion=20&outnew=rack",
		"out=drum2&drum=20&cable=0.8":                      "out=drum2&drum=20&cable=0.8&outnew=drum2",
		"out=differential&first=20%20tpi&second=M6x1%20LH": "out=differential&first=20%20tpi&second=M6x1%20LH&outnew=differential",
	} {
		kind, size, _ := strings.Cut(entries, "&")
		f := calctest.Open(t, "parts", "v=1&"+kind+"&angle=1.8&micro=16&"+size)
		assert.Equal(t, "v=1&"+kind+"&angle=1.8&micro=16&"+size, f.Fragment())
		var fragment string
		for _, p := range f.Report().Parts {
			for _, b := range p.Blocks {
				l, _ := b.(report.Links)
				for _, link := range l.All {
					if link.Slug == "swap" {
						fragment = link.Fragment
						target := calctest.Open(t, "swap", fragment)
						assert.Equal(t, fragment, target.Fragment(), "handing over is a link like any other")
					}
				}
			}
		}
		assert.Contains(t, fragment, "&"+swap+"&")
	}
}

func TestPartsRefuseWhatIsNotOnTheShelf(t *testing.T) {
	p, _ := calc.PageOf("parts")
	problem := func(entries, key, says string) {
		t.Helper()
		f := calc.Load(p, "v=1&angle=1.8&micro=16&"+entries)
		assert.Equal(t, says, f.ProblemAt(key, 0))
		assert.Nil(t, f.Report().Answer)
	}
	problem("out=screw&screw=1/4-20", "screw", "Screw in axis 1: “1/4-20” isn't a screw. Write an inch screw by its threads per inch: 20 tpi, or 20 tpi x 2 for two starts.")
	problem("out=rack&module=24%20P&pinion=20", "module", "Module of the rack in axis 1: “P” in “24 P” isn't a unit this field takes. Write it like 0.8 mm or 24 DP.")
	problem("out=differential&first=20%20tpi&second=1.27", "second", "Second thread in axis 1: “1.27” has the same lead as the first thread, 1.27 mm: nothing would move. "+
		"The two leads must differ, or one thread be left-hand (LH).")
	f := calctest.Open(t, "parts", "v=1&find=element&out=differential&as=output&output=0.25")
	assert.Contains(t, calctest.Part(f, "axis-1"), "Choose “Lead screw” to get that.")
}

// Worked out and back, over a moving pulley and for a drum.
func TestPartsOverAMovingPulleyAndBack(t *testing.T) {
	page, _ := calc.PageOf("parts")
	rapid.Check(t, func(t *rapid.T) {
		teeth := rapid.IntRange(8, 200).Draw(t, "teeth")
		there := calc.Load(page, "v=1&out=belt2&angle=1.8&micro=16&pitch=2&teeth="+strconv.Itoa(teeth))
		alone := calc.Load(page, "v=1&angle=1.8&micro=16&pitch=2&teeth="+strconv.Itoa(teeth))
		require.InEpsilon(t, 2*alone.Report().Answer.Value, there.Report().Answer.Value, 1e-15, "half as far a turn")
		back := calc.Load(page, "v=1&out=belt2&find=element&steps="+there.Report().Answer.Full()+"&angle=1.8&micro=16&pitch=2")
		require.InEpsilon(t, float64(teeth), back.Report().Answer.Value, 1e-14)
		drum, cable := rapid.IntRange(10, 3000).Draw(t, "drum"), rapid.IntRange(1, 50).Draw(t, "cable")
		for _, kind := range []string{"drum", "drum2"} {
			there = calc.Load(page, "v=1&out="+kind+"&angle=1.8&micro=16&drum="+strconv.Itoa(drum)+"/10&cable="+strconv.Itoa(cable)+"/10")
			back = calc.Load(page, "v=1&out="+kind+"&find=element&steps="+there.Report().Answer.Full()+"&angle=1.8&micro=16")
			require.InEpsilon(t, float64(drum+cable)/10, back.Report().Answer.Value, 1e-14)
		}
	})
}

func TestPartsAsk(t *testing.T) {
	asks := func(entries string) string { return calctest.Part(calctest.Open(t, "parts", entries), "axis-1") }
	assert.Contains(t, asks(""), "steps per mm: pitch, teeth, angle, micro")
	assert.Contains(t, asks("v=1&out=rotary"), "angle, micro")
	assert.Contains(t, asks("v=1&out=screw&gears=ratio"), "steps per mm: screw, ratio, angle, micro")
	assert.Contains(t, asks("v=1&gears=pairs&driving=12&pitch=2&teeth=20"), "travel per motor turn: driving, driven")
	partly := calctest.Open(t, "parts", "v=1&gears=pairs&driving=12&pitch=2&teeth=20&angle=1.8")
	assert.InEpsilon(t, 40., calctest.Out(t, partly, "output-1"), 1e-15, "what can be told is told")
	assert.Nil(t, partly.Report().Answer)
	assert.Contains(t, asks("v=1&find=element"), "the size of the part: steps, pitch, angle, micro")
	assert.Contains(t, asks("v=1&out=rack&find=element&as=output&output=60"), "the size of the part: module")
	assert.Contains(t, asks("v=1&out=roller&find=element&as=turn&turn=6&gears=ratio"), "the size of the part: ratio")
	assert.Contains(t, asks("v=1&find=gears&as=turn&turn=20"), "the gear ratio: pitch, teeth")
	assert.Contains(t, asks("v=1&find=gears&as=turn&turn=20&pitch=2&teeth=20"), "the nearest teeth on the driven side: beside")
}

func TestPartsOneAxisDoesNotWaitForAnother(t *testing.T) {
	f := calctest.Open(t, "parts", "v=1&name=X,,Z&out=,,screw&angle=1.8,,1.8&micro=16,,16&pitch=2&screw=,,8")
	assert.Contains(t, calctest.Part(f, "axis-1"), "teeth")
	assert.Empty(t, calctest.Part(f, "axis-2"), "a row in which nothing is told asks for nothing")
	assert.Equal(t, "Z, steps per mm: 400 steps/mm", strings.SplitN(calctest.Answer(f), "\n", 2)[0])
}

func TestPartsBothWaysInOneTable(t *testing.T) {
	f := calctest.Open(t, "parts", "v=1&name=X,Feed&out=,roller&find=,element&as=,turn&turn=,5.67&angle=1.8&micro=16&gears=,pairs&driving=,12&driven=,54&pitch=2&teeth=20")
	assert.Contains(t, calctest.Part(f, "all"), "X | 80 steps/mm | 40 mm/rev")
	assert.Contains(t, calctest.Part(f, "all"), "Feed | 8.1216767 mm | Effective diameter of the drive gear")
}

func TestPartsStagesMustPair(t *testing.T) {
	p, _ := calc.PageOf("parts")
	f := calc.Load(p, "v=1&name=X,Feed&out=,roller&angle=1.8,1.8&micro=16,16&gears=,pairs&driving=,16x20&driven=,46&pitch=2&teeth=20&roller=,12")
	require.Len(t, f.Problems(), 1)
	assert.Equal(t, "Teeth on the driven side in axis 2: The two sides have different numbers of stages, 2 on the motor side and 1 here. "+
		"Enter the same stages on both, as 12 x 20 and 54 x 40.", f.Problems()[0].Says)
	assert.InEpsilon(t, 80., calctest.Out(t, f, "steps-1"), 1e-15, "the other axis has no gears")
	assert.Empty(t, calctest.Part(f, "axis-2"))
	f.Set("driven", 1, "46 x 36")
	assert.Empty(t, f.Problems())
	assert.InEpsilon(t, 3200*46*36/(16*20*12*math.Pi), calctest.Out(t, f, "steps-2"), 1e-14)
	f.Set("driven", 1, "46, 36")
	assert.Contains(t, f.Problems()[0].Says, "Teeth on the driven side in axis 2: “46, 36” isn't a list of teeth. Write it like 12,")
}

func TestPartsTheWayBack(t *testing.T) {
	near := func(entries, label string, value, nearest, off float64, says string) *form.Form {
		t.Helper()
		f := calctest.Open(t, "parts", "v=1&"+entries)
		a := f.Report().Answer
		require.NotNil(t, a, entries)
		assert.Equal(t, label, a.Label)
		assert.InEpsilon(t, value, a.Value, 1e-12)
		assert.InEpsilon(t, nearest, calctest.Out(t, f, "nearest-1"), 1e-15)
		assert.InDelta(t, off, calctest.Out(t, f, "off-1"), 1e-9)
		assert.Contains(t, a.Says.String(), says)
		return f
	}
	const fits, not = "That's close enough: the part fits", "That's not close."
	f := near("find=element&steps=89&angle=1.8&micro=16&pitch=2", "Axis 1, pulley teeth", 1600/89., 18, 100*(1600/89./18-1), fits)
	assert.InEpsilon(t, 3200/36., calctest.Out(t, f, "fitting-1"), 1e-14, "what the pulley of 18 teeth gives")
	f = near("find=element&as=turn&turn=35.6&pitch=2", "Axis 1, pulley teeth", 17.8, 18, 100*(17.8/18-1), not)
	assert.InEpsilon(t, 36., calctest.Out(t, f, "fitting-1"), 1e-14)
	assert.Contains(t, calctest.Answer(f), "pitch or module")
	near("find=element&as=output&output=40&pitch=2", "Axis 1, pulley teeth", 20, 20, 0, "A pulley with 20 teeth gives exactly this setting.")
	near("out=rack&find=element&steps=50.9&angle=1.8&micro=16&module=1", "Axis 1, pinion teeth", 3200/50.9/math.Pi, 20, 100*(3200/50.9/math.Pi/20-1), fits)
	near("out=screw&find=element&steps=401&angle=1.8&micro=16", "Axis 1, screw lead", 3200/401., 8, 100*(400/401.-1), "a screw of 8 mm lead. Your setting calls for a part 0.25% smaller.")
	near("out=screw&find=element&as=turn&turn=0.5in", "Axis 1, screw lead", 12.7, 13, 100*(12.7/13-1), "and inches")
	f = near("find=gears&steps=160.4&angle=1.8&micro=16&beside=20&pitch=5&teeth=12", "Axis 1, gear ratio", 3.0075, 60, 0.25, "a gear pair of 20 → 60 teeth")
	assert.InEpsilon(t, 60.15, calctest.Out(t, f, "driven-1"), 1e-14)
	assert.InEpsilon(t, 160., calctest.Out(t, f, "fitting-1"), 1e-14)
	near("find=gears&as=turn&turn=24&beside=20&pitch=5&teeth=12", "Axis 1, gear ratio", 2.5, 50, 0, "A gear pair of 20 → 50 teeth gives exactly")
	near("out=rotary&find=gears&stepsdeg=801&angle=1.8&micro=16&beside=1", "Axis 1, gear ratio", 90.1125, 90, 100*(90.1125/90-1), fits)
}

func TestPartsRollerFromItsSetting(t *testing.T) {
	f := calctest.Open(t, "parts", "v=1&name=Heron&out=roller&find=element&steps=564.3356643&angle=1.8&micro=16&gears=pairs&driving=12&driven=54")
	assert.InEpsilon(t, 8.12222698477181, calctest.Out(t, f, "diameter"), 1e-12)
	assert.Contains(t, calctest.Answer(f), "its outer diameter is larger")
	assert.NotContains(t, f.Report().String(), "nearest", "any diameter can be")
	assert.NotContains(t, f.Report().String(), "Before the first move", "nothing new is set")
}

func TestPartsThatCannotBeAskedFor(t *testing.T) {
	f := calctest.Open(t, "parts", "v=1&find=gears&as=output&output=40&pitch=2&teeth=20")
	assert.Contains(t, calctest.Part(f, "axis-1"), "the same with any gears")
	f = calctest.Open(t, "parts", "v=1&out=rotary&find=element&stepsdeg=80")
	assert.Contains(t, calctest.Part(f, "axis-1"), "no size to find")
	assert.Nil(t, f.Report().Answer)
}

func TestPartsDoubtsWhatSmallMachinesDoNotHave(t *testing.T) {
	doubts := func(entries string) string { return calctest.Answer(calctest.Open(t, "parts", "v=1&"+entries)) }
	assert.Contains(t, doubts("angle=1.8&micro=1&pitch=2&teeth=20"), "5 steps/mm is outside the usual range for small machines, 10 to 100000. Check the microsteps")
	assert.Contains(t, doubts("out=screw&angle=0.9&micro=256&gears=ratio&ratio=5&screw=2"), "outside")
	assert.NotContains(t, doubts("angle=1.8&micro=2&pitch=2&teeth=20"), "outside", "10 steps/mm still are")
	assert.Contains(t, doubts("out=rotary&angle=1.8&micro=16&gears=ratio&ratio=1:90"), "outside the usual range for small machines, 0.5 to 100000")
	assert.NotContains(t, doubts("out=rotary&angle=1.8&micro=16&gears=ratio&ratio=90"), "outside")
	assert.Contains(t, doubts("out=roller&angle=1.8&micro=16&roller=8.5in"), "An effective diameter of 215.9 mm is outside the usual range for drive gears, 3 to 40 mm")
	assert.Contains(t, doubts("out=roller&find=element&as=output&output=8.5"), "An effective diameter of 2.705634 mm is outside")
	assert.Contains(t, doubts("out=roller&angle=1.8&micro=16&gears=pairs&driving=54&driven=12&roller=8.5"), "turn the ratio round: 54:12")
	second := calctest.Open(t, "parts", "v=1&angle=1.8,1.8&micro=16,1&pitch=2,2&teeth=20,20")
	assert.NotContains(t, calctest.Answer(second), "outside")
	assert.Contains(t, calctest.Part(second, "axis-2"), "5 steps/mm is outside")
}

// Worked out and back: each part from the setting that it gives.
func TestPartsRoundTrip(t *testing.T) {
	page, _ := calc.PageOf("parts")
	rapid.Check(t, func(t *rapid.T) {
		micro := strconv.Itoa(rapid.IntRange(1, 256).Draw(t, "micro"))
		gears := "&gears=pairs&driving=" + strconv.Itoa(rapid.IntRange(1, 60).Draw(t, "driving")) + "&driven=" + strconv.Itoa(rapid.IntRange(1, 200).Draw(t, "driven"))
		teeth := rapid.IntRange(4, 200).Draw(t, "teeth")
		element := rapid.SampledFrom([][2]string{{"", "&pitch=2&teeth="}, {"&out=rack", "&module=0.8&pinion="}}).Draw(t, "element")
		there := calc.Load(page, "v=1"+element[0]+"&angle=1.8&micro="+micro+gears+element[1]+strconv.Itoa(teeth))
		require.NotNil(t, there.Report().Answer)
		known, _, _ := strings.Cut(element[1][1:], "&")
		back := calc.Load(page, "v=1"+element[0]+"&find=element&steps="+there.Report().Answer.Full()+"&angle=1.8&micro="+micro+gears+"&"+known)
		if back.Report().Answer == nil {
			require.NotEmpty(t, back.Problems(), "a setting that no page takes")
			return
		}
		require.InEpsilon(t, float64(teeth), back.Report().Answer.Value, 1e-13)
		require.Contains(t, back.Report().Answer.Says.String(), "gives exactly")
	})
}

func TestPartsHandOver(t *testing.T) {
	links := func(entries string) map[string]string {
		all := map[string]string{}
		for _, p := range calctest.Open(t, "parts", "v=1&"+entries).Report().Parts {
			for _, b := range p.Blocks {
				l, _ := b.(report.Links)
				for _, link := range l.All {
					all[link.Slug] = link.Fragment
					target := calctest.Open(t, link.Slug, link.Fragment)
					assert.Equal(t, link.Fragment, target.Fragment(), "handing over is a link like any other")
				}
			}
		}
		return all
	}
	roller := links("out=roller&angle=1.8&micro=16&gears=pairs&driving=12x2&driven=54x3&roller=8.5")
	assert.Equal(t, "v=1&steps=808.88159&angle=1.8&micro=16&gears=pairs&driving=12,2&driven=54,3", roller["measure"])
	assert.Equal(t, "v=1&changed=out&moves=feed&steps=808.88159&out=roller&roller=8.5&outnew=roller&anglekept=1.8&microkept=16&gearskept=pairs&drivingkept=12,2&drivenkept=54,3", roller["swap"])
	belt := links("angle=200steps&micro=1/16&gears=ratio&ratio=3:1&pitch=0.2in&teeth=20")
	assert.Equal(t, "v=1&axis=travel&steps=94.488189&angle=1.8&micro=16&gears=ratio&ratio=3", belt["measure"])
	assert.Equal(t, "v=1&changed=out&steps=94.488189&pitch=5.08&teeth=20&anglekept=1.8&microkept=16&gearskept=ratio&ratiokept=3", belt["swap"])
	assert.Contains(t, links("out=screw&angle=1.8&micro=16&screw=Tr8x8(P2)")["swap"], "out=screw&screw=Tr8x8%28P2%29&outnew=screw")
	assert.Contains(t, links("out=rack&angle=1.8&micro=16&module=1&pinion=20")["swap"], "out=rack&module=1&pinion=20&outnew=rack")
	rotary := links("out=rotary&angle=1.8&micro=16&gears=pairs&driving=1&driven=90")
	assert.Equal(t, "v=1&axis=rotary&stepsdeg=800&angle=1.8&micro=16&gears=pairs&driving=1&driven=90", rotary["measure"])
	assert.Equal(t, "v=1&changed=gears&moves=rotary&stepsdeg=800&gears=pairs&driving=1&driven=90&anglekept=1.8&microkept=16", rotary["swap"])
}

// Rollers of just 3 and 40 mm are none to be doubted.
func TestPartsRollersAtTheLimits(t *testing.T) {
	for diameter, doubted := range map[string]bool{"2.99": true, "3": false, "3.5": false, "40": false, "40.1": true} {
		f := calctest.Open(t, "parts", "v=1&out=roller&angle=1.8&micro=16&roller="+diameter)
		assert.Equal(t, doubted, len(f.Report().Answer.Notes) > 0, diameter)
	}
}

// A setting of other microsteps makes a pulley that nobody has; the one that would be is said.
func TestPartsOfOtherMicrosteps(t *testing.T) {
	f := calctest.Open(t, "parts", "v=1&find=element&steps=88.888889&angle=1.8&micro=8&pitch=2")
	assert.Contains(t, calctest.Answer(f), "A pulley of fewer than 12 teeth is rare. Is 88.888889 steps/mm the value at other microsteps? At 16 it would be 18 teeth.")
	assert.NotContains(t, calctest.Answer(calctest.Open(t, "parts", "v=1&find=element&steps=88.888889&angle=1.8&micro=16&pitch=2")), "rare")
	assert.NotContains(t, calctest.Answer(calctest.Open(t, "parts", "v=1&find=element&as=output&output=18&pitch=2")), "rare", "the microsteps are not in it")
}

// A bare number is taken for a screw's lead, and it may be the pitch of one with several starts.
func TestPartsAskForTheStartsOfAScrew(t *testing.T) {
	const z = "v=1&out=screw&angle=1.8&micro=16&screw="
	for _, bare := range []string{"2", "2%20mm"} {
		f := calctest.Open(t, "parts", z+bare)
		assert.InEpsilon(t, 1600., calctest.Out(t, f, "steps"), 1e-15, "as the link means")
		answer := calctest.Answer(f)
		assert.Contains(t, answer, "Is 2 mm the lead or the pitch? Count the threads that start at the screw's end. With 4 starts write 2 mm x 4, with one 2 mm x 1.")
		assert.NotContains(t, answer, "Trust this value")
		assert.NotContains(t, calctest.Part(f, "axis-1"), "Trust this value")
		assert.Contains(t, answer, "Check the part in doubt first. Then run a short test.")
	}
	for _, told := range []string{"8", "4", "2%20mm%20x%204", "2x1", "Tr8x2", "M6x1", "20%20tpi"} {
		f := calctest.Open(t, "parts", z+told)
		assert.Empty(t, f.Report().Answer.Notes, told)
		assert.Contains(t, calctest.Answer(f), "Trust this value", told)
	}
}

// A pitch that belts are not sold with, of which some is the width of one.
func TestPartsDoubtThePitchOfABelt(t *testing.T) {
	const x = "v=1&angle=1.8&micro=1/16&teeth=20&pitch="
	f := calctest.Open(t, "parts", x+"6")
	assert.Equal(t, report.Remark{Key: "pitch", Says: "Belts with a pitch of 6 mm are rare. Is that the width? The pitch is from tooth to tooth.", Doubt: true}, f.RemarkAt("pitch", 0))
	assert.NotContains(t, f.Report().String(), "Trust this value")
	assert.Contains(t, calctest.Answer(f), "Check the part in doubt first.")
	f = calctest.Open(t, "parts", x+"0.2")
	assert.Equal(t, report.Remark{Key: "pitch", Says: "0.2 mm is very little. Do you mean inches? Then write 0.2 in.", Doubt: true}, f.RemarkAt("pitch", 0))
	assert.NotContains(t, f.Report().String(), "Trust this value")
	assert.NotEmpty(t, calctest.Open(t, "parts", "v=1&find=element&steps=80&angle=1.8&micro=16&pitch=6").RemarkAt("pitch", 0).Says)
	for _, usual := range []string{"2", "2.03", "2.032", "2.5", "3", "3.175", "5", "5.08", "0.2in", "8", "3/8in", "10", "14"} {
		f := calctest.Open(t, "parts", x+usual)
		assert.Empty(t, f.RemarkAt("pitch", 0).Says, usual)
		assert.Contains(t, calctest.Answer(f), "Trust this value", usual)
	}
	page, _ := calc.PageOf("parts")
	f = calctest.Open(t, "parts", page.Example)
	for i := range 4 {
		assert.False(t, f.RemarkAt("pitch", i).Doubt)
		assert.False(t, f.RemarkAt("screw", i).Doubt)
	}
	assert.Empty(t, f.Report().Answer.Notes)
	swap := calctest.Open(t, "swap", "v=1&changed=out&pitch=2&teeth=20&pitchnew=6&teethnew=20")
	assert.True(t, swap.RemarkAt("pitchnew", 0).Doubt)
	assert.Empty(t, swap.RemarkAt("pitch", 0).Says)
}

// A part that is found holds for the microsteps of its setting.
func TestPartsFoundHoldForTheirMicrosteps(t *testing.T) {
	notes := func(entries string) string {
		var all []string
		for _, n := range calctest.Open(t, "parts", "v=1&find=element&angle=1.8&"+entries).Report().Answer.Notes {
			assert.Equal(t, report.Doubt, n.Kind)
			all = append(all, n.Line.String())
		}
		return strings.Join(all, "\n")
	}
	const pulley = "This holds if the setting was made at 32 microsteps. At 16 it would be 20 teeth: count them."
	assert.Equal(t, pulley, notes("steps=80&micro=32&pitch=2"))
	assert.Equal(t, pulley, notes("out=belt2&steps=160&micro=32&pitch=2"))
	assert.Equal(t, "This holds if the setting was made at 64 microsteps. At 16 it would be 8 mm lead: measure it.", notes("out=screw&steps=400&micro=64"))
	assert.Contains(t, notes("steps=40&micro=16&pitch=2"), "At 8 it would be 20 teeth")
	assert.Contains(t, notes("out=screw&steps=800&micro=32"), "At 16 it would be 4 mm lead")
	assert.Empty(t, notes("steps=80&micro=16&pitch=2"), "10 teeth are few")
	assert.Empty(t, notes("steps=88.888889&micro=16&pitch=2"))
	assert.Empty(t, notes("out=screw&steps=400&micro=16"))
	assert.Empty(t, notes("steps=86.486486&micro=32&pitch=2"), "half of 37 teeth")
	assert.Empty(t, notes("as=turn&turn=80&micro=32&pitch=2"), "the microsteps are not in it")
	assert.Empty(t, notes("out=roller&steps=100&micro=32"))
}
