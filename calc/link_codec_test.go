package calc_test

import (
	"encoding/json"
	"html"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/link"
	"striderule/calc/unit"
)

// A codecCase is a link with the pieces that it is made of, or a value and its uncertainty
// as they are shown.
type codecCase struct {
	Fragment string          `json:"fragment"`
	Pieces   [][2]any        `json:"pieces"`
	Value, U json.RawMessage `json:",omitempty"`
	Says     string          `json:"says"`
}

// The page reads and writes links while the program is not there, by a codec of its own:
// both say the same of every link that was ever shared, and of a thousand sheets, of a hundred
// in the short tests.
func TestLinkCodec(t *testing.T) {
	var fragments []string
	for line := range strings.Lines(linkFile) {
		if words := strings.Fields(line); len(words) >= 2 && words[0] != "#" {
			fragments = append(fragments, words[1])
		}
	}
	known := len(fragments)
	require.Greater(t, known, 70)
	sheets := rapid.Custom(func(t *rapid.T) *form.Form { return drawForm(t, rapid.SampledFrom(calc.Pages).Draw(t, "page")) })
	many := 1000
	if testing.Short() {
		many = 100
	}
	for i := 0; len(fragments) < known+many; i++ {
		if fragment := sheets.Example(i).ShareFragment(); fragment != "" && len(fragment) <= link.MostLink {
			fragments = append(fragments, fragment)
		}
	}
	var cases []codecCase
	for _, fragment := range fragments {
		c := codecCase{Fragment: link.Join(link.Split(fragment))}
		for _, p := range link.Split(fragment) {
			c.Pieces = append(c.Pieces, [2]any{p.Key, p.Cells})
		}
		cases = append(cases, c)
	}
	draws := rand.New(rand.NewPCG(18, 2026))
	for range many {
		c := codecCase{}
		v, u := 1000*draws.Float64(), 10*draws.Float64()*draws.Float64()
		value, uncertainty := unit.Measured(v, u)
		c.Value, c.U, c.Says = json.RawMessage(unit.Full(v)), json.RawMessage(unit.Full(u)), value+" ± "+uncertainty
		cases = append(cases, c)
	}
	data, err := json.Marshal(cases)
	require.NoError(t, err)
	codec, err := os.ReadFile(filepath.Join("..", "web", "link.js"))
	require.NoError(t, err)
	said := runScript(t, string(codec)+`
		const cases = `+string(data)+`;
		const wrong = cases.filter((c) => c.pieces
			? striderule.link.join(c.pieces) !== c.fragment || JSON.stringify(striderule.link.split(c.fragment)) !== JSON.stringify(c.pieces)
			: striderule.link.measured(c.Value, c.U) !== c.says)
			.map((c) => c.pieces ? [c.fragment, striderule.link.join(c.pieces), striderule.link.split(c.fragment)] : [c, striderule.link.measured(c.Value, c.U)]);
		if (striderule.link.measured(1, 1e-102) !== "1.000000000000 ± 0.000000000000") wrong.push("an uncertainty of next to nothing");
		const said = "looked at " + cases.length + ", wrong: " + JSON.stringify(wrong.slice(0, 5));`)
	require.Equal(t, "looked at "+unit.Full(float64(len(cases)))+", wrong: []", said)
}

// runScript returns what a script leaves in said: by node, or else by a browser.
func runScript(t *testing.T, script string) string {
	t.Helper()
	dir := t.TempDir()
	if _, err := exec.LookPath("node"); err == nil {
		file := filepath.Join(dir, "script.js")
		require.NoError(t, os.WriteFile(file, []byte("globalThis.window = globalThis;\n"+script+"\nprocess.stdout.write(said);"), 0o644))
		out, err := exec.Command("node", file).CombinedOutput()
		require.NoError(t, err, string(out))
		return string(out)
	}
	for _, name := range []string{os.Getenv("CHROME"), "chromium", "chromium-browser", "google-chrome"} {
		chrome, err := exec.LookPath(name)
		if err != nil {
			continue
		}
		file := filepath.Join(dir, "script.html")
		page := "<!doctype html><meta charset=utf-8><pre></pre><script>" + script + "\ndocument.querySelector('pre').textContent = said;</script>"
		require.NoError(t, os.WriteFile(file, []byte(page), 0o644))
		out, err := exec.Command(chrome, "--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir="+dir, "--dump-dom", "file://"+file).Output()
		require.NoError(t, err)
		shown := regexp.MustCompile(`(?s)<pre>(.*?)</pre>`).FindSubmatch(out)
		require.NotNil(t, shown, string(out))
		return html.UnescapeString(string(shown[1]))
	}
	require.Fail(t, "there is neither node nor Chromium to run web/link.js: install one of them (Debian: apt-get install nodejs)")
	return ""
}
