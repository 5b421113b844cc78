package pages

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// Each page is there by its own address; by the others that somebody may have of it, each on
// two pages or more, and on all of them in scripts/test full.
func TestOfflineAfterFirstVisit(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/")
	p.WaitOffline()
	pages, headings := browser.Pages(t, browser.Dist(t)), map[string]string{}
	for _, path := range pages {
		p.Show(path)
		headings[path] = p.Text("h1")
	}
	s.Stop()
	for i, path := range pages {
		others := []string{path + "#v=1", path + "?from=somewhere", path + "index.html", strings.TrimSuffix(path, "/")}
		if path == "/" {
			others = others[:3]
		}
		if !full() && path != "/" {
			others = others[i%4 : i%4+1]
		}
		for _, variant := range append([]string{path}, others...) {
			p.Open(variant)
			assert.Equal(t, headings[path], p.Text("h1"), variant)
			assert.True(t, strings.HasPrefix(p.Address(), s.URL), p.Address())
		}
		if full() || i < 2 {
			p.Reload()
			assert.Equal(t, headings[path], p.Text("h1"), "%s after a reload", path)
		}
	}
}

// full reports whether all is to be tried of what takes long, and not a share.
func full() bool { return os.Getenv("STRIDERULE_FULL") != "" }

func TestOfflineWhereTheHostRefusesCompressedFiles(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	s.Intercept(answer(isZipped, notFound))
	p := s.NewPage(t)
	p.Allow("404")
	p.Open("/measure/")
	p.WaitOffline()
	s.Stop()
	p.Reload()
}

// Browsers clear what sites keep, and a person may in part.
func TestProgramIsFetchedAgainWhereTheWorkerHasLostIt(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/")
	p.WaitOffline()
	lost := browser.Eval[[]bool](p, `caches.keys().then((names) => Promise.all(names.map(async (name) => {
		const cache = await caches.open(name);
		const program = (await cache.keys()).filter((r) => r.url.endsWith(".wasm"));
		return program.length === 1 && cache.delete(program[0]);
	})))`)
	require.Equal(t, []bool{true}, lost, "one cache, with the program in it")
	p.Reload() // from the host, or what the browser itself kept of it
}

func TestCachesOfOthersAreLeftAlone(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Load("/method/")
	browser.Eval[bool](p, `caches.open("another tool's").then((c) => c.put("/x", new Response("x"))).then(() => true)`)
	browser.Eval[bool](p, `caches.open("striderule /tools/ 0123").then(() => true)`)
	p.WaitReady()
	p.WaitOffline()
	names := browser.Eval[[]string](p, `caches.keys()`)
	assert.Contains(t, names, "another tool's")
	assert.Contains(t, names, "striderule /tools/ 0123", "the cache of a copy in another folder")
	assert.Len(t, names, 3)
}

// release copies the site as a release of another version, whose pages show it
// in their titles.
func release(t testing.TB, dist, version string) string {
	t.Helper()
	worker, err := os.ReadFile(filepath.Join(dist, "sw.js"))
	require.NoError(t, err)
	m := regexp.MustCompile(`const version = "([0-9a-f]{12})"`).FindSubmatch(worker)
	require.NotNil(t, m, "no version in sw.js")
	dir := t.TempDir()
	err = filepath.WalkDir(dist, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) == ".zip" {
			return err
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if name := d.Name(); name == "sw.js" || name == "index.html" {
			text := strings.ReplaceAll(string(content), string(m[1]), version)
			content = []byte(strings.Replace(text, "<title>", "<title>"+version+" ", 1))
		}
		rel, err := filepath.Rel(dist, path)
		if err != nil {
			return err
		}
		to := filepath.Join(dir, rel)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		return os.WriteFile(to, content, 0o644)
	})
	require.NoError(t, err)
	return dir
}

const update = `navigator.serviceWorker.getRegistration().then((r) => r.update()).then(() => true)`

func TestUpdateLeavesAnOpenPageAlone(t *testing.T) {
	browser.Alongside(t)
	s := browser.NewSite(t)
	p := s.NewPage(t)
	p.Open("/measure/")
	p.WaitOffline()
	name := browser.Eval[[]string](p, textFields)[0]
	p.Fill(name, "80,5")
	browser.Eval[bool](p, `(window.sameDocument = true)`)

	for _, version := range []string{"aaaaaaaaaaaa", "bbbbbbbbbbbb"} {
		s.Replace(release(t, browser.Dist(t), version))
		browser.Eval[bool](p, update)
		p.Wait(`caches.keys().then((names) => names.some((n) => n.endsWith("` + version + `")))`)
		p.Wait(`navigator.serviceWorker.getRegistration().then((r) => !r.installing && !r.waiting && r.active.state === "activated")`)
		assert.Equal(t, "80,5", p.Field(name))
		assert.True(t, browser.Eval[bool](p, `window.sameDocument === true`), "the page was loaded anew under the person's hands")
		p.Press("1")
		assert.Equal(t, "80,51", p.Field(name)[:5])
		p.Focus(name, 0)
		p.Press("80,5")
	}
	assert.Len(t, browser.Eval[[]string](p, `caches.keys()`), 2, "this version and the one before")

	s.Stop()
	p.Reload()
	assert.Contains(t, browser.Eval[string](p, `document.documentElement.innerHTML`), `data-version="bbbbbbbbbbbb"`, "a reload brings the new version")
}

// While an upload is under way, the new worker finds pages or files of the old
// version, or files that are not there yet.
func TestHalfUploadedReleaseIsNotKept(t *testing.T) {
	browser.Alongside(t)
	for _, missing := range []string{"index.html", "web/icon-192.png", "web/style"} {
		t.Run(missing, func(t *testing.T) {
			s := browser.NewSite(t)
			p := s.NewPage(t)
			p.Open("/measure/")
			p.WaitOffline()
			before := browser.Eval[[]string](p, `caches.keys()`)

			next := release(t, browser.Dist(t), "cccccccccccc")
			if missing == "web/style" {
				renameStyle(t, next)
			} else {
				old, err := os.ReadFile(filepath.Join(browser.Dist(t), missing))
				require.NoError(t, err)
				if missing != "index.html" {
					old = append(old, ' ') // the digests are those of this version
				}
				require.NoError(t, os.WriteFile(filepath.Join(next, missing), old, 0o644))
			}
			s.Replace(next)
			browser.Eval[bool](p, `navigator.serviceWorker.getRegistration().then((r) => new Promise((done) => {
				r.addEventListener("updatefound", () => {
					const worker = r.installing;
					worker.addEventListener("statechange", () => worker.state === "redundant" && done(true));
				});
				r.update();
			}))`)
			assert.Equal(t, before, browser.Eval[[]string](p, `caches.keys()`))
			s.Stop()
			p.Reload()
			assert.NotContains(t, browser.Eval[string](p, `document.title`), "cccccccccccc")
		})
	}
}

// renameStyle has the worker of a release ask for a style sheet that is not there.
func renameStyle(t *testing.T, release string) {
	t.Helper()
	file := filepath.Join(release, "sw.js")
	worker, err := os.ReadFile(file)
	require.NoError(t, err)
	other := regexp.MustCompile(`web/style\.[0-9a-f]{10}\.css`).ReplaceAll(worker, []byte("web/style.0123456789.css"))
	require.NotEqual(t, worker, other)
	require.NoError(t, os.WriteFile(file, other, 0o644))
}
