package calc_test

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/page/calibrate"
	"striderule/calc/page/flow"
	"striderule/calc/page/parts"
	"striderule/calc/page/plan"
	"striderule/calc/page/swap"
	"striderule/calc/report"
	"striderule/calc/unit"
)

// guideID is that of the picture beside the fields.
const guideID = "guide"

// drawingsOf are the drawings of a report by their IDs, the picture beside the fields among them.
func drawingsOf(t require.TestingT, r report.Report) map[string]report.Drawing {
	all := map[string]report.Drawing{}
	if r.Picture != nil {
		require.Equal(t, guideID, r.Picture.ID)
		all[guideID] = *r.Picture
	}
	for _, p := range r.Parts {
		for _, b := range p.Blocks {
			if d, ok := b.(report.Drawing); ok {
				require.NotContains(t, all, d.ID, "two drawings of one name")
				all[d.ID] = d
			}
		}
	}
	return all
}

func drawn(t *testing.T, slug, fragment, id string) report.Drawing {
	t.Helper()
	p, ok := calc.PageOf(slug)
	require.True(t, ok)
	f := calc.Load(p, fragment)
	require.Empty(t, f.Problems())
	all := drawingsOf(t, f.Report())
	require.Contains(t, all, id)
	return all[id]
}

var numbers = regexp.MustCompile(`[−-]?[0-9][0-9.e−-]*`)

// checkDrawing holds what every drawing must be.
func checkDrawing(t require.TestingT, d report.Drawing) {
	isGuide := d.ID == guideID
	isScheme := isGuide && d.From == 0 && d.To == report.PaperWidth // a thing as such: its figures are those of the fields
	if !isGuide {
		require.NotEmpty(t, d.Title)
	}
	require.NotEmpty(t, d.Alt)
	require.NotEmpty(t, d.Shapes)
	require.NotContains(t, d.Alt, "NaN")
	require.Less(t, d.From, d.To)
	per := (d.To - d.From) / report.PaperWidth
	inside := func(x, y, r float64) {
		require.True(t, unit.Finite(x) && unit.Finite(y), "%s: %v, %v", d.Title, x, y)
		require.GreaterOrEqual(t, (x-d.From)/per-r, -1e-6, d.Alt)
		require.LessOrEqual(t, (x-d.From)/per+r, report.PaperWidth+1e-6, d.Alt)
		require.GreaterOrEqual(t, y-r, 0.0, d.Alt)
		require.LessOrEqual(t, y+r, d.High, d.Alt)
	}
	say := func(text string) {
		require.NotContains(t, text, "NaN")
		if isScheme {
			return
		}
		for _, n := range numbers.FindAllString(text, -1) {
			require.Contains(t, d.Alt, n, "the text says all figures")
		}
	}
	require.Less(t, len(d.Shapes), 300)
	require.LessOrEqual(t, d.High, float64(report.PaperWidth), "no higher than wide: it must fit a phone")
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case report.Stroke:
			require.Greater(t, len(s.Points), 1)
			for _, p := range s.Points {
				inside(p.X, p.Y, 0)
			}
		case report.Disc:
			require.Positive(t, s.R)
			inside(s.At.X, s.At.Y, s.R)
		case report.Plate:
			inside(s.A.X, s.A.Y, 0)
			inside(s.B.X, s.B.Y, 0)
			require.LessOrEqual(t, s.A.X, s.B.X)
			require.Less(t, s.A.Y, s.B.Y)
		case report.Dim:
			inside(s.A.X, s.A.Y, 0)
			inside(s.B.X, s.B.Y, 0)
			say(s.Text)
			n := numbers.FindString(s.Text)
			if isGuide { // of what was commanded and what was fed, the line shows what was fed
				all := numbers.FindAllString(s.Text, -1)
				n = append([]string{""}, all...)[len(all)]
			}
			if n != "" && s.A.Y == s.B.Y && !isScheme {
				digits, decimals, _ := strings.Cut(n, ".")
				last := -len(decimals) // place of the last digit that means something
				if last == 0 {
					last = len(digits) - len(strings.TrimRight(digits, "0"))
				}
				v, err := strconv.ParseFloat(n, 64)
				require.NoError(t, err)
				if v == 0 { // a reading of which nothing is known
					continue
				}
				require.InDelta(t, math.Abs(s.B.X-s.A.X), v, max(0.001*v, 0.51*math.Pow10(last)), "a dimension line is as long as it says: %s", s.Text)
			}
		case report.Words:
			inside(s.At.X, s.At.Y, 0)
			say(s.Text)
		default:
			require.Failf(t, "unknown shape", "%T", s)
		}
	}
}

func TestDrawingsKeepToTheLaw(t *testing.T) {
	file, err := os.Open("testdata/drawings.txt")
	require.NoError(t, err)
	defer func() { require.NoError(t, file.Close()) }()
	for lines := bufio.NewScanner(file); lines.Scan(); {
		slug, fragment, _ := strings.Cut(lines.Text(), " ")
		if slug == "#" {
			continue
		}
		t.Run(lines.Text(), func(t *testing.T) {
			p, ok := calc.PageOf(slug)
			require.True(t, ok)
			f := calc.Load(p, fragment)
			require.Empty(t, f.Problems())
			all := drawingsOf(t, f.Report())
			delete(all, "how")
			delete(all, "places")
			if besideFields := []string{"measure", "swap", "flow"}; !slices.Contains(besideFields, slug) {
				delete(all, guideID)
			}
			require.NotEmpty(t, all, "one of its own")
			for _, d := range drawingsOf(t, f.Report()) {
				checkDrawing(t, d)
				says := d.Title + ": " + d.Alt
				if d.ID == guideID {
					says = "\n" + d.Alt + "\n"
				}
				assert.Contains(t, f.Report().String(), says)
				if d.ID == guideID && slug == "flow" {
					saysAll(t, d)
				}
			}
		})
	}
}

// saysAll requires that the alternative text has every figure of a drawing.
func saysAll(t *testing.T, d report.Drawing) {
	t.Helper()
	for _, s := range d.Shapes {
		text := ""
		switch s := s.(type) {
		case report.Dim:
			text = s.Text
		case report.Words:
			text = s.Text
		}
		for _, n := range numbers.FindAllString(text, -1) {
			assert.Contains(t, d.Alt, n)
		}
	}
}

// dimOf is the dimension line whose text begins with a word.
func dimOf(t *testing.T, d report.Drawing, word string) report.Dim {
	t.Helper()
	for _, s := range d.Shapes {
		if dim, ok := s.(report.Dim); ok && strings.HasPrefix(dim.Text, word) {
			return dim
		}
	}
	require.Fail(t, "no dimension line "+word)
	return report.Dim{}
}

func length(d report.Dim) float64 { return d.B.X - d.A.X }

// lettered is the dimension line of a letter.
func lettered(t *testing.T, d report.Drawing, letter string) report.Dim {
	t.Helper()
	for _, s := range d.Shapes {
		if dim, ok := s.(report.Dim); ok && dim.Letter == letter {
			return dim
		}
	}
	require.Fail(t, "no dimension line "+letter)
	return report.Dim{}
}

func TestMarkTestIsDrawnToScale(t *testing.T) {
	d := drawn(t, "measure", "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6", guideID)
	asked, mark, left := lettered(t, d, "A"), lettered(t, d, "B"), lettered(t, d, "C")
	assert.InDelta(t, -(105-86.2/3)/105, length(asked)/length(mark), 1e-12)
	assert.InDelta(t, 86.2/3/105, length(left)/length(mark), 1e-12)
	assert.Equal(t, asked.A.X, mark.B.X, "the way of the mark")
	assert.Equal(t, asked.B.X, left.B.X)
	assert.Equal(t, "80 mm, fed 76.267 mm", asked.Text)
	assert.Equal(t, "105 mm", mark.Text)
	assert.Equal(t, "28.733 mm", left.Text)
	for _, says := range []string{"80 mm", "76.267 mm", "105 mm", "28.733 mm"} {
		assert.Contains(t, d.Alt, says)
	}

	d = drawn(t, "measure", "v=1&mark=105&rest=28.7", guideID)
	assert.Empty(t, lettered(t, d, "A").Text, "not told")
	assert.InDelta(t, 105-28.7, -length(lettered(t, d, "A")), 1e-12)
	d = drawn(t, "measure", "v=1&asked=200&mark=105&rest=1", guideID)
	assert.InDelta(t, 104, -length(lettered(t, d, "A")), 1e-12, "it ends at the extruder, whatever was commanded")
	d = drawn(t, "measure", "v=1&asked=80&mark=105", guideID)
	assert.InDelta(t, 80, -length(lettered(t, d, "A")), 1e-12)
	assert.InDelta(t, 25, length(lettered(t, d, "C")), 1e-12, "what should remain")
	assert.Empty(t, lettered(t, d, "C").Text, "it is not read yet")
	d = drawn(t, "measure", "v=1&read=fed&asked=80&fed=76.1,76.3", guideID)
	assert.InDelta(t, 76.2/80, length(lettered(t, d, "B"))/length(lettered(t, d, "A")), 1e-12)
	assert.Equal(t, "76.2 mm", lettered(t, d, "B").Text)
	d = drawn(t, "measure", "v=1&axis=travel&asked=200&moved=199,199.5", guideID)
	assert.InDelta(t, 199.25/200, length(lettered(t, d, "B"))/length(lettered(t, d, "A")), 1e-12)
	d = drawn(t, "plan", plan.Page.Example, "test")
	assert.InDelta(t, 90, -length(dimOf(t, d, "to feed")), 1e-12)
	assert.InDelta(t, 115, length(dimOf(t, d, "mark")), 1e-12)
	assert.InDelta(t, 25, length(dimOf(t, d, "should remain")), 1e-12)
	assert.Equal(t, "The mark is 115 mm from the extruder's inlet before the run. Once 90 mm is fed, 25 mm should remain.", d.Alt)
}

// A run that is left out does not count, here neither.
func TestMarkTestDrawsCountedRuns(t *testing.T) {
	d := drawn(t, "measure", "v=1&asked=80&mark=105&rest=28.7,28.9,60&aside=,,yes", guideID)
	assert.InDelta(t, 76.2, -length(lettered(t, d, "A")), 1e-12)
	assert.Equal(t, "28.8 mm", lettered(t, d, "C").Text)
}

func TestDrawingIsNeverStale(t *testing.T) {
	f := calc.Load(calibrate.Page, "v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6")
	letters := map[string]string{"asked": "A", "mark": "B", "rest": "C"}
	for _, key := range []string{"asked", "mark", "rest"} {
		was, whole := f.Text(key, 0), *f.Report().Picture
		f.Set(key, 0, "8Omm")
		d := *f.Report().Picture
		assert.Empty(t, lettered(t, d, letters[key]).Text, "%s is wrong", key)
		assert.NotContains(t, lettered(t, d, "A").Text, "fed", "%s is wrong, so what was fed is not known", key)
		assert.NotContains(t, d.Alt, "fed 76", key)
		f.Set(key, 0, was)
		assert.Equal(t, whole, *f.Report().Picture, key)
	}
	for slug, id := range map[string]string{"plan": "test", "parts": "train-1"} {
		p, _ := calc.PageOf(slug)
		assert.NotContains(t, drawingsOf(t, calc.NewForm(p).Report()), id)
		assert.Contains(t, drawingsOf(t, calc.Load(p, p.Example).Report()), id)
	}
}

// Beside the fields of a wall stands what is given of it, and no more.
func TestWallIsNeverStale(t *testing.T) {
	f := calc.Load(flow.Page, "v=1&scale=verified&width=0.45&layer=0.2&walls=4&thick=1.75,1.76")
	texts := func() map[string]string {
		all := map[string]string{}
		for _, tag := range tagsOf(f.Report().Picture) {
			all[tag.Of] = textOf(t, f.Report().Picture, tag.Of)
		}
		return all
	}
	given := map[string]string{"width": "0.45 mm", "layer": "0.2 mm", "walls": "4", "thick": "1.75 mm"}
	require.Equal(t, given, texts())
	for key, says := range given {
		was, whole := f.Text(key, 0), *f.Report().Picture
		f.Set(key, 0, "4O")
		require.NotEmpty(t, f.Problems())
		now := texts()
		assert.Empty(t, now[key], "%s is wrong", key)
		assert.NotContains(t, f.Report().Picture.Alt, "("+says+")", key)
		assert.Contains(t, f.Report().Picture.Alt, "(not given yet)", key)
		for other, text := range given {
			assert.True(t, other == key || now[other] == text, "%s is right", other)
		}
		f.Set(key, 0, was)
		assert.Equal(t, whole, *f.Report().Picture, key)
	}
	assert.Nil(t, calc.Load(flow.Page, "v=1&scale=verified&by=mass").Report().Picture, "a weight is not drawn")
}

// The drivetrain names what was swapped as soon as both parts are given.
func TestSwapIsNeverStale(t *testing.T) {
	const change = "1.8° → 0.9°"
	f := calc.Load(swap.Page, "v=1&changed=angle&as=turn&turn=40&angle=1.8&anglenew=0.9")
	assert.Equal(t, change, textOf(t, f.Report().Picture, "angle anglenew"))
	for _, key := range []string{"angle", "anglenew"} {
		was, whole := f.Text(key, 0), *f.Report().Picture
		for _, text := range []string{"", "O.9"} {
			f.Set(key, 0, text)
			assert.Empty(t, textOf(t, f.Report().Picture, "angle anglenew"), "%s is %q", key, text)
		}
		f.Set(key, 0, was)
		assert.Equal(t, whole, *f.Report().Picture, key)
	}
}

// textOf is what stands in a picture beside the letter of fields.
func textOf(t *testing.T, d *report.Drawing, keys string) string {
	t.Helper()
	text, found := "", false
	for _, s := range d.Shapes {
		switch s := s.(type) {
		case report.Dim:
			if s.Of == keys {
				text, found = text+s.Text, true
			}
		case report.Words:
			if s.Of == keys {
				text, found = text+s.Text, true
			}
		}
	}
	require.True(t, found, "%s has no place", keys)
	return text
}

func discs(d report.Drawing) []report.Disc {
	var all []report.Disc
	for _, s := range d.Shapes {
		if disc, ok := s.(report.Disc); ok && disc.R > 3 {
			all = append(all, disc)
		}
	}
	return all
}

func TestDrivetrainShowsItsTeeth(t *testing.T) {
	d := drawn(t, "parts", "v=1&out=belt&angle=1.8&micro=16&gears=pairs&driving=20x12&driven=40x36&pitch=2&teeth=18", "train-1")
	w := discs(d)
	require.GreaterOrEqual(t, len(w), 5)
	assert.Equal(t, []int{20, 40, 12, 36, 18}, []int{w[0].Teeth, w[1].Teeth, w[2].Teeth, w[3].Teeth, w[4].Teeth})
	assert.InDelta(t, 2, w[1].R/w[0].R, 1e-12, "as the teeth")
	assert.InDelta(t, 3, w[3].R/w[2].R, 1e-12)
	assert.InDelta(t, w[0].R+w[1].R, w[1].At.X-w[0].At.X, 1e-12, "they mesh")
	assert.Equal(t, w[1].At, w[2].At, "on one shaft")
	assert.Equal(t, w[3].At, w[4].At, "the pulley is on the last one")
	assert.Equal(t, "Motor: full step 1.8°. 20 → 40 teeth. 12 → 36 teeth. Belt: 2 mm pitch, 18 teeth. One motor turn moves 6 mm.", d.Alt)

	d = drawn(t, "parts", "v=1&out=rotary&angle=0.9&micro=16&gears=pairs&driving=1&driven=10000", "train-1")
	w = discs(d)
	assert.InDelta(t, 4, w[1].R/w[0].R, 1e-12, "in bounds")
	assert.Contains(t, d.Alt, "One motor turn moves 0.036°")

	many := calc.Load(parts.Page, "v=1&pitch=2"+strings.Repeat(",2", 13)+"&teeth=20"+strings.Repeat(",20", 13))
	assert.Len(t, drawingsOf(t, many.Report()), 12+1, "a phone draws them anew at every key; one is the guide")

	d = drawn(t, "parts", "v=1&out=roller&roller=8.5", "train-1")
	assert.Equal(t, "Motor. Drive gear: 8.5 mm effective diameter. One motor turn moves 26.703538 mm.", d.Alt)
	d = drawn(t, "parts", "v=1&out=belt&pitch=2&teeth=18&gears=pairs&driving=12", "train-1")
	assert.Equal(t, "Motor. Belt: 2 mm pitch, 18 teeth.", d.Alt, "no more than is known")
}

func TestTravelIsDrawnToScale(t *testing.T) {
	d := drawn(t, "plan", "v=1&axis=travel&trip=lengths&tool=tape&from=20&to=320", "test")
	assert.InDelta(t, 300, length(dimOf(t, d, "free")), 1e-12)
	assert.InDelta(t, 5, length(dimOf(t, d, "backlash")), 1e-12)
	var runs []float64
	for _, s := range d.Shapes {
		if dim, ok := s.(report.Dim); ok && dim.Role == report.Motion {
			runs = append(runs, length(dim))
			assert.InDelta(t, 25, dim.A.X, 1e-12, "from behind the slack")
		}
	}
	assert.InDeltaSlice(t, []float64{58, 174, 290}, runs, 1e-12)
	assert.InDelta(t, -295, length(dimOf(t, d, "back")), 1e-12)

	d = drawn(t, "plan", "v=1&axis=travel&trip=sides&tool=tape&from=0&to=300", "test")
	var targets []float64
	for _, s := range d.Shapes {
		if stroke, ok := s.(report.Stroke); ok && stroke.Role == report.Mark {
			targets = append(targets, stroke.Points[0].X)
		}
	}
	assert.InDeltaSlice(t, []float64{5, 77.5, 150, 222.5, 295}, targets, 1e-12)
	assert.Contains(t, d.Alt, "Targets at 5 mm, 77.5 mm, 150 mm, 222.5 mm, 295 mm")
}

// The wall beside its fields has the lines that were typed, as wide for their height as they are.
func TestWallIsDrawnToScale(t *testing.T) {
	wall := func(fragment string) (report.Drawing, []report.Plate) {
		d := drawn(t, "flow", "v=1&scale=verified&"+fragment, guideID)
		var lines []report.Plate
		for _, s := range d.Shapes {
			if p, ok := s.(report.Plate); ok && p.Round {
				lines = append(lines, p)
			}
		}
		return d, lines
	}
	for _, c := range []struct {
		width, layer float64
		lines        int
	}{{0.45, 0.2, 4}, {0.45, 0.2, 1}, {0.45, 0.2, 8}, {0.3, 0.3, 2}, {1.2, 0.1, 2}, {0.4, 0.08, 3}, {0.05, 0.04, 5}} {
		d, lines := wall(fmt.Sprintf("width=%v&layer=%v&walls=%d&thick=%v", c.width, c.layer, c.lines, c.width*float64(c.lines)))
		require.Len(t, lines, 2*c.lines, "two layers")
		assert.Equal(t, 1., (d.To-d.From)/report.PaperWidth, "across and down to one scale")
		ground := map[float64]int{}
		for _, l := range lines {
			assert.InEpsilon(t, c.width/c.layer, (l.B.X-l.A.X)/(l.B.Y-l.A.Y), 1e-9, "%+v", c)
			assert.InEpsilon(t, lines[0].B.X-lines[0].A.X, l.B.X-l.A.X, 1e-9)
			ground[l.B.Y]++
		}
		assert.Len(t, ground, 2)
		for _, side := range ground {
			assert.Equal(t, c.lines, side, "in each layer")
		}
		width, layer, thick := lettered(t, d, "A"), lettered(t, d, "B"), lettered(t, d, "D")
		assert.InEpsilon(t, c.width/c.layer, length(width)/(layer.B.Y-layer.A.Y), 1e-9)
		assert.InEpsilon(t, float64(c.lines), length(thick)/length(width), 1e-9, "the jaws take all lines")
		for _, says := range []string{width.Text, layer.Text, thick.Text, "(" + strconv.Itoa(c.lines) + ")"} {
			require.NotEmpty(t, says)
			assert.Contains(t, d.Alt, says)
		}
	}

	// Of many lines some are drawn as one; what is said to be a line's width still is one.
	for _, n := range []int{9, 20} {
		d, _ := wall(fmt.Sprintf("width=0.45&layer=0.2&walls=%d", n))
		width, layer := lettered(t, d, "A"), lettered(t, d, "B")
		assert.InEpsilon(t, 0.45/0.2, length(width)/(layer.B.Y-layer.A.Y), 1e-9)
		assert.InEpsilon(t, float64(n), length(lettered(t, d, "D"))/length(width), 1e-9)
		assert.Empty(t, lettered(t, d, "D").Text, "nothing is read yet")
	}
	d, lines := wall("")
	assert.Len(t, lines, 2*2, "as such, while nothing is given")
	assert.Empty(t, numbers.FindAllString(d.Alt, -1))
}
