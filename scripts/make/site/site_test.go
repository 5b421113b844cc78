package main

import (
	"archive/zip"
	"bytes"
	"compress/gzip"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/make/built"
	"striderule/scripts/make/program"
)

// build runs a build of the module at root into out, in a process of its own, as
// scripts/build does.
func build(t *testing.T, root, out string) {
	t.Helper()
	b := exec.Command("go", "run", "./scripts/make/site", "-out", out)
	b.Dir = root
	log, err := b.CombinedOutput()
	require.NoError(t, err, string(log))
}

// copyModule copies what a build reads, as a clone in another folder would have it.
func copyModule(t *testing.T, root, to string) {
	t.Helper()
	for _, part := range []string{"app", "calc", "web", "scripts"} {
		require.NoError(t, os.CopyFS(filepath.Join(to, part), os.DirFS(filepath.Join(root, part))))
	}
	for _, f := range []string{"go.mod", "go.sum"} {
		require.NoError(t, copyFile(filepath.Join(root, f), filepath.Join(to, f)))
	}
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

func read(t *testing.T, path ...string) []byte {
	t.Helper()
	content, err := os.ReadFile(filepath.Join(path...))
	require.NoError(t, err)
	return content
}

// TestBuild builds the site in two folders and looks at what came out.
func TestBuild(t *testing.T) {
	root, err := moduleRoot()
	require.NoError(t, err)
	one := filepath.Join(t.TempDir(), "one")
	copyModule(t, root, one)
	// What an earlier build has compressed is used by the one, and not by the other.
	if squeezed := filepath.Join(".build", "squeezed"); exists(filepath.Join(root, squeezed)) {
		require.NoError(t, os.CopyFS(filepath.Join(one, squeezed), os.DirFS(filepath.Join(root, squeezed))))
	}
	dist, folder := filepath.Join(one, "dist"), one
	if before := os.Getenv("STRIDERULE_BUILT"); before != "" { // scripts/test has built this very source
		require.NoError(t, os.CopyFS(dist, os.DirFS(before)))
		folder = root
	} else {
		build(t, one, dist)
	}
	two := buildAsStranger(t, root)
	files, err := siteFiles(dist)
	require.NoError(t, err)

	t.Run("is the same elsewhere and by somebody else", func(t *testing.T) {
		others, err := siteFiles(filepath.Join(two, "dist"))
		require.NoError(t, err)
		require.Equal(t, files, others)
		for _, f := range files {
			assert.True(t, bytes.Equal(read(t, dist, f), read(t, two, "dist", f)), "%s differs", f)
		}
	})
	t.Run("names no folder of the machine", func(t *testing.T) {
		home, err := os.UserHomeDir()
		require.NoError(t, err)
		for _, f := range files {
			content := read(t, dist, f)
			assert.False(t, bytes.Contains(content, []byte(folder)), "%s names the folder of the build", f)
			assert.False(t, bytes.Contains(content, []byte(home+"/")), "%s names the home folder", f)
		}
	})
	t.Run("can be read by every host", func(t *testing.T) {
		require.NoError(t, filepath.WalkDir(filepath.Join(two, "dist"), func(path string, d fs.DirEntry, err error) error {
			require.NoError(t, err)
			info, err := d.Info()
			require.NoError(t, err)
			want := fs.FileMode(0o644)
			if d.IsDir() {
				want = 0o755
			}
			assert.Equal(t, want, info.Mode().Perm(), path)
			return nil
		}))
	})
	t.Run("sums are those of all files", func(t *testing.T) {
		sums := map[string]string{}
		for _, file := range []string{sumsName, zipSumName} {
			for line := range strings.Lines(string(read(t, dist, file))) {
				sum, name, found := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
				require.True(t, found, line)
				sums[name] = sum
			}
		}
		for _, f := range files {
			if f != sumsName && f != zipSumName {
				assert.Equal(t, digest(read(t, dist, f)), sums[f], f)
				delete(sums, f)
			}
		}
		assert.Empty(t, sums, "sums of what is not there")
	})
	t.Run("says by which Go it was built", func(t *testing.T) {
		version, err := program.GoEnv(root, "GOVERSION")
		require.NoError(t, err)
		assert.Equal(t, "Built with "+version+"\n", string(read(t, dist, built.Name)))
	})
	t.Run("zip holds the site", func(t *testing.T) {
		z, err := zip.OpenReader(filepath.Join(dist, zipName))
		require.NoError(t, err)
		defer z.Close()
		var names []string
		for _, entry := range z.File {
			names = append(names, entry.Name)
			r, err := entry.Open()
			require.NoError(t, err)
			content, err := io.ReadAll(r)
			require.NoError(t, err)
			assert.True(t, bytes.Equal(read(t, dist, entry.Name), content), entry.Name)
		}
		slices.Sort(names)
		assert.Equal(t, files, insert(insert(names, zipName), zipSumName))
	})
	t.Run("compressed files are the files", func(t *testing.T) {
		count := 0
		for _, f := range files {
			var r io.Reader
			switch filepath.Ext(f) {
			case ".gz":
				r, err = gzip.NewReader(bytes.NewReader(read(t, dist, f)))
				require.NoError(t, err)
			case ".br":
				r = brotli.NewReader(bytes.NewReader(read(t, dist, f)))
			default:
				continue
			}
			content, err := io.ReadAll(r)
			require.NoError(t, err)
			assert.True(t, bytes.Equal(read(t, dist, strings.TrimSuffix(f, filepath.Ext(f))), content), f)
			count++
		}
		for _, f := range files {
			if slices.Contains([]string{".html", ".css", ".wasm"}, filepath.Ext(f)) || f == "sw.js" {
				assert.Contains(t, files, f+".gz")
				assert.Contains(t, files, f+".br")
			}
		}
		assert.Greater(t, count, 20)
	})
	t.Run("what pages name is unpacked before them", func(t *testing.T) {
		z, err := zip.OpenReader(filepath.Join(dist, zipName))
		require.NoError(t, err)
		defer z.Close()
		last := 0
		for _, entry := range z.File {
			assert.GreaterOrEqual(t, turn(entry.Name), last, entry.Name)
			last = turn(entry.Name)
		}
		assert.Equal(t, 2, last)
	})
	t.Run("names follow the content", func(t *testing.T) {
		fixed := regexp.MustCompile(`^web/[a-z]+\.([0-9a-f]{10})\.(js|css|wasm)$`)
		count := 0
		for _, f := range files {
			m := fixed.FindStringSubmatch(f)
			if m == nil {
				continue
			}
			count++
			assert.True(t, strings.HasPrefix(digest(read(t, dist, f)), m[1]), f)
			for _, page := range files {
				if strings.HasSuffix(page, "index.html") || page == lostPage && m[2] == "css" {
					assert.Contains(t, string(read(t, dist, page)), f+`"`, page)
				}
			}
		}
		assert.Equal(t, 5, count, "program, style, two scripts, and one for old browsers")
	})
	t.Run("worker knows every file", func(t *testing.T) {
		forNoPage := []string{"sw.js", lostPage, built.Name, sumsName, zipName, zipSumName}
		worker := string(read(t, dist, "sw.js"))
		for _, f := range files {
			compressed := filepath.Ext(f) == ".br" || filepath.Ext(f) == ".gz" && !strings.HasSuffix(f, ".wasm.gz")
			if strings.HasPrefix(f, "preview/") || compressed || slices.Contains(forNoPage, f) {
				assert.NotContains(t, worker, `"`+f+`"`, "no page asks for it")
				continue
			}
			assert.Contains(t, worker, `"`+strings.TrimSuffix(f, "index.html")+`": [`)
		}
		version := regexp.MustCompile(`version = "([0-9a-f]{12})"`).FindStringSubmatch(worker)
		require.NotNil(t, version)
		for _, f := range files {
			switch filepath.Ext(f) {
			case ".html":
				assert.Equal(t, f != lostPage, strings.Contains(string(read(t, dist, f)), `data-version="`+version[1]+`"`), f)
				assert.NotContains(t, string(read(t, dist, f)), sizeMark, f)
				fallthrough
			case ".js", ".css":
				assert.NotContains(t, string(read(t, dist, f)), versionMark, f)
			}
		}
	})
	t.Run("version follows the content", func(t *testing.T) {
		before := read(t, dist, "sw.js")
		style := filepath.Join(one, "web", "style.css")
		require.NoError(t, os.WriteFile(style, append(read(t, style), '\n'), 0o644))
		build(t, one, dist)
		line := func(worker []byte) string {
			return regexp.MustCompile(`version = "[0-9a-f]{12}"`).FindString(string(worker))
		}
		assert.NotEqual(t, line(before), line(read(t, dist, "sw.js")))
	})
	t.Run("a build that fails leaves the site as it was", func(t *testing.T) {
		require.NoError(t, os.WriteFile(filepath.Join(one, "app", "broken.go"), []byte("package main\n\nvar x int = \"\"\n"), 0o644))
		before, err := siteFiles(dist)
		require.NoError(t, err)
		b := exec.Command("go", "run", "./scripts/make/site")
		b.Dir = one
		log, err := b.CombinedOutput()
		require.Error(t, err, string(log))
		after, err := siteFiles(dist)
		require.NoError(t, err)
		assert.Equal(t, before, after)
		left, err := filepath.Glob(filepath.Join(one, ".dist-*"))
		require.NoError(t, err)
		assert.Empty(t, left, "nothing half made is left about")
	})
}

// insert puts a name into its place in an ordered list.
func insert(names []string, name string) []string {
	for i, n := range names {
		if n > name {
			return append(names[:i:i], append([]string{name}, names[i:]...)...)
		}
	}
	return append(names, name)
}
