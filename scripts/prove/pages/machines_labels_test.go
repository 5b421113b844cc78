package pages

import (
	"image"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/link"
	"striderule/calc/machine"
	"striderule/scripts/prove/browser"
)

// labelsCode is a picture of the code of a label, 25 mm wide in print: of as many dots as an
// office printer sets there, or fewer.
func labelsCode(t *testing.T, p *browser.Page, id string) string {
	t.Helper()
	const scale = 3.1
	p.DenseViewport(browser.Width, browser.Height, scale)
	selector := "#label-" + id + " svg"
	browser.Eval[bool](p, `(document.querySelector("`+selector+`").scrollIntoView({block: "center", behavior: "instant"}), true)`)
	p.Settle()
	file := filepath.Join(t.TempDir(), "page.png")
	p.Screenshot(file, false, false)
	box := browser.Eval[[4]float64](p, `((b) => [b.left, b.top, b.right, b.bottom])(document.querySelector("`+selector+`").getBoundingClientRect())`)
	assert.LessOrEqual(t, (box[2]-box[0])*scale, 300.0, "dots across")
	data, err := os.Open(filepath.Clean(file))
	require.NoError(t, err)
	defer func() { require.NoError(t, data.Close()) }()
	whole, err := png.Decode(data)
	require.NoError(t, err)
	cut := image.NewRGBA(image.Rect(0, 0, int((box[2]-box[0])*scale), int((box[3]-box[1])*scale)))
	draw.Draw(cut, cut.Bounds(), whole, image.Pt(int(box[0]*scale), int(box[1]*scale)), draw.Src)
	file = filepath.Join(t.TempDir(), "code.png")
	out, err := os.Create(filepath.Clean(file))
	require.NoError(t, err)
	require.NoError(t, png.Encode(out, cut))
	require.NoError(t, out.Close())
	return file
}

// The label on an axis leads to its calibration, with only the readings missing.
func TestLabelIsRead(t *testing.T) {
	browser.Alongside(t)
	needQRReader(t)
	const all = "&limit=200&counted=mm3&speed=60&gears=pairs&driving=12,18&driven=54,36&limits=0.03&line=M92%20E%7Bvalue%7D"
	most := strings.Replace(keptHeron, "&machine=Heron&axisname=extruder&id=k3x9", all+"&machine="+strings.Repeat("Heron", 8)+"&axisname=extruder&id=m1", 1)
	p := withMachines(t, keptHeron+"&line=M92%20E%7Bvalue%7D", keptPlover, most)
	p.Click("#labels")
	assert.Equal(t, "true", browser.Eval[string](p, `document.getElementById("labels").getAttribute("aria-expanded")`))
	for _, id := range []string{"k3x9", "p7", "m1"} {
		a, ok := machine.Read(keptMachines(p)[id])
		require.True(t, ok)
		label := p.Text("#label-" + id)
		assert.Contains(t, label, a.Title())
		assert.Contains(t, label, a.Shown()+", since "+a.Text("set"))
		says := readQR(t, labelsCode(t, p, id))
		assert.LessOrEqual(t, len(says), 270)
		fragment, found := strings.CutPrefix(says, p.Root()+"measure/#")
		require.True(t, found, says)
		assert.Empty(t, link.CellsOf(link.Split(fragment), "line"), "who scans it gets no command")
		read, ok := machine.Read(fragment)
		require.True(t, ok)
		if id == "m1" {
			assert.Equal(t, []string{a.Title(), "538.0", "80", "105"}, []string{read.Title(), read.Text("steps"), read.Text("asked"), read.Text("mark")}, "it does without the rest")
		} else {
			assert.Equal(t, a.Without(machine.LineKeys...), read)
		}
	}
	code := readQR(t, labelsCode(t, p, "k3x9"))
	p.Viewport(browser.Width, browser.Height)
	p.Open("/" + strings.TrimPrefix(code, p.Root()))
	p.FillNth("rest", 0, "28.7")
	assert.NotEmpty(t, answerOf(p), "with a reading there is an answer")
	p.Open("/machines/")
	p.Click("#labels")
	p.Click("#labels")
	assert.False(t, has(p, ".label"))
}

// Printed, there are the labels and nothing over them.
func TestLabelsAreWhatIsPrinted(t *testing.T) {
	browser.Alongside(t)
	needQRReader(t)
	if _, err := exec.LookPath("pdftoppm"); err != nil {
		t.Skip("pdftoppm, of poppler, is not there to read the PDF")
	}
	p := withMachines(t, keptHeron)
	p.Click("#labels")
	dir := t.TempDir()
	file := filepath.Join(dir, "labels.pdf")
	require.NoError(t, os.WriteFile(file, printed(p), 0o644))
	require.NoError(t, exec.Command("pdftoppm", "-r", "300", "-png", file, filepath.Join(dir, "labels")).Run())
	sheets, err := filepath.Glob(filepath.Join(dir, "labels-*.png"))
	require.NoError(t, err)
	assert.Len(t, sheets, 1, "one label is on one sheet")
	if keep := os.Getenv("PICTURES"); keep != "" {
		data, err := os.ReadFile(sheets[0])
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(keep, "labels.png"), data, 0o644))
	}
	assert.Contains(t, readQR(t, sheets[0]), p.Root()+"measure/#v=1&steps=538.0")
	text, err := exec.Command("pdftotext", file, "-").Output()
	require.NoError(t, err)
	assert.Contains(t, string(text), "Scan to calibrate")
	assert.NotContains(t, string(text), "No warranty", "the page's foot lies under the labels")
}

// A label says so where its code would be too fine.
func TestLabelThatIsTooLong(t *testing.T) {
	browser.Alongside(t)
	p := withMachines(t, keptHeron, strings.NewReplacer("Plover", strings.Repeat("%C3%A9", 60)).Replace(keptPlover))
	p.Click("#labels")
	assert.False(t, has(p, "#label-p7"))
	assert.Contains(t, p.Text("#label-sheet"), strings.Repeat("é", 60)+" X has too many facts for a code of this size.")
	assert.True(t, has(p, "#label-k3x9"))
	p.NoSidewaysScrolling()
}

// More labels than a sheet of paper has room for go on to the next, each in one piece.
func TestLabelsOfManyMachines(t *testing.T) {
	browser.Alongside(t)
	needQRReader(t)
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext, of poppler, is not there to read the PDF")
	}
	var many []string
	for i := range 40 {
		n := strconv.Itoa(100 + i)
		many = append(many, strings.NewReplacer("order=1", "order="+n, "Heron", "Heron"+n, "k3x9", "i"+n).Replace(keptHeron))
	}
	p := withMachines(t, many...)
	p.Click("#labels")
	file := filepath.Join(t.TempDir(), "labels.pdf")
	require.NoError(t, os.WriteFile(file, printed(p), 0o644))
	if keep := os.Getenv("PICTURES"); keep != "" {
		require.NoError(t, os.WriteFile(filepath.Join(keep, "labels.pdf"), printed(p), 0o644))
	}
	text, err := exec.Command("pdftotext", "-raw", file, "-").Output()
	require.NoError(t, err)
	sheets := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
	assert.Greater(t, len(sheets), 1)
	all := 0
	for i, sheet := range sheets {
		n := strings.Count(sheet, "Scan to calibrate")
		assert.Equal(t, n, strings.Count(sheet, "extruder"), "sheet %d has each with its name", i+1)
		assert.Positive(t, n, "sheet %d is not empty", i+1)
		all += n
	}
	assert.Equal(t, 40, all)
}
