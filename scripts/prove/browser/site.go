package browser

import (
	"io/fs"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"striderule/scripts/make/built"
	"striderule/scripts/make/serving"
)

// Mount is the folder that sites are served in: two deep, as clubs do.
const Mount = "/tools/cal/"

// Dist returns the folder of the built site, or fails with what to do.
func Dist(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	require.NoError(t, err)
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			break
		}
		up := filepath.Dir(dir)
		require.NotEqual(t, dir, up, "no go.mod above the test")
		dir = up
	}
	dist := filepath.Join(dir, "dist")
	_, err = os.Stat(filepath.Join(dist, "index.html"))
	require.NoError(t, err, "there is no built site to test: run scripts/build first")
	return dist
}

// Site is a served folder with its own origin.
type Site struct {
	URL string // with the mount, ending in a slash

	server *httptest.Server
	mu     sync.Mutex
	dir    string
	send   []string
	before func(http.ResponseWriter, *http.Request) bool
	asked  []string
	seen   bool // somebody has opened it
}

// NewSite serves dist/ at Mount until the test ends.
func NewSite(t testing.TB) *Site {
	t.Helper()
	return NewSiteAt(t, Dist(t), Mount)
}

// NewSiteAt serves a folder at a mount of choice, which begins and ends in a slash.
func NewSiteAt(t testing.TB, dir, mount string) *Site {
	t.Helper()
	s := &Site{dir: dir}
	s.server = httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		inside, ok := strings.CutPrefix(r.URL.Path, mount)
		s.mu.Lock()
		dir, before, send := s.dir, s.before, s.send
		s.asked = append(s.asked, inside)
		s.mu.Unlock()
		if !ok {
			http.NotFound(w, r)
			return
		}
		if before != nil && before(w, r) {
			return
		}
		http.StripPrefix(strings.TrimSuffix(mount, "/"), serving.Handler(dir, send...)).ServeHTTP(w, r)
	}))
	t.Cleanup(s.Stop)
	s.URL = s.server.URL + (&url.URL{Path: mount}).EscapedPath()
	return s
}

// Origin is the server's address, without the mount.
func (s *Site) Origin() string { return s.server.URL }

// Intercept has f answer first; it says whether it did. The path that f sees
// includes the mount.
func (s *Site) Intercept(f func(http.ResponseWriter, *http.Request) bool) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.before = f
}

// Trimmed skips a test of what the trimmed go-app does better, where the site was built with
// the untouched one.
func (s *Site) Trimmed(t testing.TB, better string) {
	t.Helper()
	file, err := os.ReadFile(filepath.Join(s.dir, built.Name))
	require.NoError(t, err)
	if strings.Contains(string(file), built.Without("trim")) {
		t.Skip("skipped with the untouched go-app, which " + better)
	}
}

// Send has the site sent by these encodings, "br" or "gzip", to browsers that take
// them.
func (s *Site) Send(encodings ...string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.send = encodings
}

// Replace serves another folder from now on, at the same address.
func (s *Site) Replace(dir string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.dir = dir
}

// Asked returns the paths that were asked for, without the mount.
func (s *Site) Asked() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]string(nil), s.asked...)
}

// Stop ends the server for good: whoever has the page is offline.
func (s *Site) Stop() {
	s.server.CloseClientConnections()
	s.server.Close()
}

// NewPage opens an empty tab of a browser that has never seen the site.
func (s *Site) NewPage(t testing.TB) *Page {
	t.Helper()
	s.mu.Lock()
	seen := s.seen
	s.seen = true
	s.mu.Unlock()
	return newPage(t, s.URL, !seen)
}

// Pages returns the paths of all pages of a built site, "/" first.
func Pages(t testing.TB, dist string) []string {
	t.Helper()
	var pages []string
	err := filepath.WalkDir(dist, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.Name() != "index.html" {
			return err
		}
		rel, err := filepath.Rel(dist, filepath.Dir(path))
		pages = append(pages, strings.TrimSuffix("/"+filepath.ToSlash(rel), "/.")+"/")
		return err
	})
	require.NoError(t, err)
	slices.Sort(pages)
	for i := range pages {
		pages[i] = strings.ReplaceAll(pages[i], "//", "/")
	}
	return pages
}
