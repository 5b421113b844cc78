package pages

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// readQR reads the QR code in a picture with a reader that is none of ours.
func readQR(t *testing.T, picture string) string {
	t.Helper()
	says, err := tryQR(picture)
	require.NoError(t, err, says)
	return says
}

// tryQR reads a picture that may have no code in it.
func tryQR(picture string) (string, error) {
	read := exec.Command("node", "readqr.cjs", picture)
	read.Env = append(os.Environ(), "NODE_PATH="+os.Getenv("QR_READER"))
	out, err := read.CombinedOutput()
	return string(out), err
}

// needQRReader skips the test where the reader is not there.
func needQRReader(t *testing.T) {
	t.Helper()
	if os.Getenv("QR_READER") == "" {
		t.Skip("QR_READER names no folder with jsqr and pngjs: run scripts/test, or npm install jsqr pngjs")
	}
}

// showCode opens the fold and the code in it, and brings it into view.
func showCode(p *browser.Page) {
	p.T().Helper()
	browser.Eval[bool](p, `(document.getElementById("across").open = true)`)
	press(p, "#show-code")
	// Below the answer, which stays at the top of a desk's screen.
	browser.Eval[bool](p, `(document.getElementById("code").scrollIntoView({block: "end"}), scrollBy(0, 40), true)`)
	p.Settle()
}

// linkOf is what the page's own button copies.
func linkOf(p *browser.Page) string {
	return browser.Eval[string](p, `document.getElementById("copy-link").dataset.copy`)
}

// sheetOf has names and settings of 50 axes.
func sheetOf(letters int) string {
	var names, steps, angles []string
	for i := range 50 {
		n := letters / 50
		if i < letters%50 {
			n++
		}
		names = append(names, fmt.Sprintf("%02d", i)+strings.Repeat("x", n))
		angles = append(angles, "1.8")
		steps = append(steps, fmt.Sprintf("%d.%06d1", 400+i, 1000+i))
	}
	return "/convert/#v=1&name=" + strings.Join(names, ",") + "&steps=" + strings.Join(steps, ",") + "&angle=" + strings.Join(angles, ",") + "&micro=16" + strings.Repeat(",16", 49)
}

// A camera reads the link that "Copy link" copies: the shortest, an everyday one
// and the longest, light, dark and with forced colours, on a phone and on a desk.
func TestQRCodeIsTheLink(t *testing.T) {
	browser.Alongside(t)
	needQRReader(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open(sheetOf(1500))
	longest := 1500 + 2953 - len(linkOf(p))
	for _, look := range []struct {
		name          string
		width, height int64
		dark, forced  bool
	}{{"phone", browser.Width, browser.Height, false, false}, {"phone, dark", browser.Width, browser.Height, true, false}, {"desk", 1280, 900, false, false}, {"desk, forced colours", 1280, 900, true, true}} {
		for _, c := range []struct {
			name, path string
			dense      bool
		}{
			{"shortest", "/flow/#v=1&width=1", false},
			{"everyday", "/measure/#" + heron, false},
			{"longest", sheetOf(longest), true},
		} {
			t.Run(c.name+", "+look.name, func(t *testing.T) {
				p := p.In(t)
				p.DenseViewport(look.width, look.height, map[bool]float64{true: 3, false: 1}[look.width == browser.Width])
				if look.forced {
					_, err := chromedp.Call(p.Chromium("forced colours"), emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
						Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: "active"}, {Name: "prefers-color-scheme", Value: "dark"}}})
					require.NoError(t, err)
				}
				p.Show(c.path)
				if c.dense {
					require.Equal(t, 2953, len(linkOf(p)), "all that a code holds")
				}
				showCode(p)
				assert.Equal(t, c.dense, has(p, "#code-picture.dense"))
				file := filepath.Join(t.TempDir(), "code.png")
				if look.forced { // which Screenshot would end
					p.Picture(file, false)
				} else {
					p.Screenshot(file, look.dark, false)
				}
				if dir := os.Getenv("PICTURES"); dir != "" {
					data, err := os.ReadFile(file)
					require.NoError(t, err)
					require.NoError(t, os.WriteFile(filepath.Join(dir, "code-"+c.name+"-"+look.name+".png"), data, 0o644))
				}
				assert.Equal(t, linkOf(p), readQR(t, file))
				p.NoSidewaysScrolling()
			})
		}
	}
}

// One character more does not fit, and it is said. A code goes when the entries
// change, and is not worked out before it is asked for.
func TestQRCodeLimits(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open(sheetOf(1500))
	p.Open(sheetOf(1500 + 2954 - len(linkOf(p))))
	showCode(p)
	assert.Equal(t, "This link is too long for a QR code (2954 characters, the limit is 2953). Copy the link or save a file.", p.Text("#code"))
	assert.False(t, has(p, "#code-picture"))

	p.Open("/measure/#" + heron)
	assert.False(t, has(p, "#code"))
	showCode(p)
	assert.True(t, has(p, "#code-picture"))
	assert.Equal(t, "true", browser.Eval[string](p, `document.getElementById("show-code").getAttribute("aria-expanded")`))
	p.Fill("asked", "81")
	assert.False(t, has(p, "#code"), "it was that of other entries")
	assert.Equal(t, "Show as QR code", p.Text("#show-code"))
	press(p, "#show-code")
	press(p, "#show-code")
	assert.False(t, has(p, "#code"), "hidden again")
}

// printed returns a page as it comes out on paper.
func printed(p *browser.Page) []byte {
	p.T().Helper()
	r, err := chromedp.Call(p.Chromium("a page as it is printed"), cdppage.PrintToPDF, cdppage.PrintToPDFParams{PaperWidth: 8.27, PaperHeight: 11.69})
	require.NoError(p.T(), err)
	return r.Data
}

// The printed sheet has the link in words and as a code, without being asked
// twice, and that of the entries as they are.
func TestPrintedSheetLeadsBack(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/#" + heron)
	assert.Empty(t, browser.Eval[*string](p, `document.getElementById("printed-path").getAttribute("d")`), "not before printing")
	p.Fill("asked", "81")
	pdf := printed(p)
	link := linkOf(p)
	assert.Contains(t, link, "asked=81")
	assert.NotEmpty(t, browser.Eval[*string](p, `document.getElementById("printed-path").getAttribute("d")`))
	if _, err := exec.LookPath("pdftotext"); err != nil {
		t.Skip("pdftotext and pdftoppm, of poppler, are not there to read the PDF")
	}
	dir := t.TempDir()
	file := filepath.Join(dir, "sheet.pdf")
	require.NoError(t, os.WriteFile(file, pdf, 0o644))
	text, err := exec.Command("pdftotext", "-raw", file, "-").Output()
	require.NoError(t, err)
	assert.Contains(t, strings.ReplaceAll(string(text), "\n", ""), link, "in words")
	if keep := os.Getenv("PICTURES"); keep != "" {
		require.NoError(t, os.WriteFile(filepath.Join(keep, "sheet.pdf"), pdf, 0o644))
	}
	needQRReader(t)
	require.NoError(t, exec.Command("pdftoppm", "-r", "150", "-png", file, filepath.Join(dir, "sheet")).Run())
	pages, err := filepath.Glob(filepath.Join(dir, "sheet-*.png"))
	require.NoError(t, err)
	found := false
	for _, page := range pages {
		says, err := tryQR(page)
		found = found || err == nil && says == link
	}
	assert.True(t, found, "as a code, on one of %d pages", len(pages))
}

// What a received sheet was before goes with every link to it: by the button, the code,
// and on paper.
func TestChangedSheetHasOneLink(t *testing.T) {
	browser.Alongside(t)
	needQRReader(t)
	p := browser.NewSite(t).NewPage(t)
	p.Open(askersLink)
	p.Fill("asked", "90")
	p.Wait(`document.getElementById("compared")`)
	link := linkOf(p)
	assert.Contains(t, link, "&was-asked=80")
	showCode(p)
	assert.True(t, has(p, "#code-picture"))
	file := filepath.Join(t.TempDir(), "code.png")
	p.Screenshot(file, false, false)
	assert.Equal(t, link, readQR(t, file))
	browser.Eval[bool](p, `(dispatchEvent(new Event("beforeprint")), true)`)
	assert.Contains(t, p.Text("#printed-link"), link)
	assert.Equal(t, browser.Eval[string](p, `document.querySelector("#code-picture path").getAttribute("d")`), browser.Eval[string](p, `document.getElementById("printed-path").getAttribute("d")`), "the same code on paper")
}
