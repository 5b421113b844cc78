package pages

import (
	"encoding/json"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc/logbook"
	"striderule/scripts/prove/browser"
)

// watchMemory keeps the program's memory in window.memory.
const watchMemory = `for (const name of ["instantiate", "instantiateStreaming"]) {
	const its = WebAssembly[name];
	WebAssembly[name] = async (...args) => {
		const result = await its.apply(WebAssembly, args);
		window.memory = (result.instance || result).exports.mem;
		return result;
	};
}`

// A log of 30,000 entries is more than a browser keeps: what fits is imported, the page
// lives, and its memory is a small part of what a program may have.
func TestImportOfMoreThanIsKept(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Before(watchMemory)
	p.Open("/log/")
	const n = 30000
	file, err := json.Marshal(logbook.WriteFile(logbook.Example()))
	require.NoError(t, err)
	// Made in the page: handing it over takes longer than all else.
	browser.Eval[bool](p, `((file) => {
		const from = file.indexOf("{", file.indexOf("entries")), to = file.lastIndexOf("}", file.lastIndexOf("]")) + 1;
		const some = file.slice(from, to).split(/,\n(?={)/);
		const all = Array.from({ length: `+strconv.Itoa(n)+` }, (_, i) => some[i % some.length].replace(/"id":"[^"]*"/, '"id":"e' + i + '"'));
		window.file = file.slice(0, from) + all.join(",\n") + file.slice(to);
		window.began = performance.now();
		return striderule.takeFile("log.json", window.file, "");
	})(`+string(file)+`)`)
	p.Wait(`document.getElementById("import-report")`)
	t.Logf("%d entries in %.1f MB: %.1f s, %.0f MB of memory", n, browser.Eval[float64](p, `file.length / 1e6`), browser.Eval[float64](p, `(performance.now() - began) / 1000`), browser.Eval[float64](p, `memory.buffer.byteLength / 1e6`))
	report := p.Text("#import-report")
	assert.Contains(t, report, "entries weren't saved. The browser's storage for this site is full.")
	kept := len(inStorage(p))
	assert.Greater(t, kept, 1000)
	assert.Contains(t, report, strconv.Itoa(kept)+" entries were imported")
	assert.Contains(t, report, strconv.Itoa(n-kept)+" entries weren't saved")
	assert.Less(t, browser.Eval[float64](p, `memory.buffer.byteLength`), 350e6)
	assert.Equal(t, 50, listed(p))
}

// Nor does a file of nothing but damages take the memory of all of them.
func TestImportOfDamages(t *testing.T) {
	browser.Alongside(t)
	p := browser.NewSite(t).NewPage(t)
	p.Before(watchMemory)
	p.Open("/log/")
	browser.Eval[bool](p, `((file) => (striderule.takeFile("log.json", file, ""), true))('{"log":"striderule","entries":[' + '{"'.repeat(5e6))`)
	p.Wait(`document.getElementById("import-report")`)
	p.Settle()
	assert.Contains(t, p.Text("#import-report"), "1000 places or more")
	assert.Less(t, browser.Eval[float64](p, `memory.buffer.byteLength`), 300e6)

	press(p, "#import-end")
	browser.Eval[bool](p, `((keys) => (striderule.takeFile("log.json", '{"log":"striderule","version":1,"entries":[{' + keys + "}]}", ""), true))(
		Array.from({ length: 4e5 }, (_, i) => '"k' + i + '":""').join())`)
	p.Wait(`document.getElementById("import-report")`)
	p.Settle()
	assert.Contains(t, p.Text("#import-report"), "The file is damaged in 1 place", "one entry of 400,000 keys")
}
