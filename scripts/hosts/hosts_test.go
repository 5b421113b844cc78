// Package hosts tries the zip that people unpack on web hosts of their own, under
// real web servers: at the root and two folders deep. It takes a minute and wants
// those servers installed, so it runs in scripts/test full alone.
package hosts

import (
	"archive/zip"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/browser"
)

func TestMain(m *testing.M) { browser.Main(m) }

func TestHosts(t *testing.T) {
	if os.Getenv("STRIDERULE_FULL") == "" {
		t.Skip("web servers are tried by scripts/test full")
	}
	for _, host := range []struct {
		name, program string
		command       func(t *testing.T, program, dir string, port int) *exec.Cmd
	}{
		{"python http.server", "python3", python},
		{"apache", "apache2", apache},
	} {
		t.Run(host.name, func(t *testing.T) {
			program, err := exec.LookPath(host.program)
			if err != nil {
				t.Skipf("%s is not installed (Debian: apt-get install %[1]s)", host.program)
			}
			for _, folder := range []string{"", "tools/cal/"} {
				t.Run("/"+folder, func(t *testing.T) {
					served := readable(t)
					unpack(t, filepath.Join(browser.Dist(t), "striderule.zip"), filepath.Join(served, folder))
					port := freePort(t)
					stop := start(t, host.command(t, program, served, port), port)
					walk(t, fmt.Sprintf("http://localhost:%d/%s", port, folder), stop)
				})
			}
		})
	}
}

// walk does what a visitor does, and goes on after the server has stopped.
func walk(t *testing.T, root string, stop func()) {
	p := browser.NewPage(t, root)
	pages := browser.Pages(t, browser.Dist(t))
	headings := map[string]string{}
	for _, path := range pages {
		p.Open(path + "#v=1")
		headings[path] = p.Text("h1")
		require.NotEmpty(t, headings[path])
		p.Reload()
		assert.Equal(t, headings[path], p.Text("h1"), "%s after a reload", path)
		if path != "/" {
			p.Open(strings.TrimSuffix(path, "/"))
			assert.Equal(t, headings[path], p.Text("h1"), "%s without its last slash", path)
		}
	}
	p.Open("/")
	for _, target := range browser.Eval[[]string](p, `[...document.querySelectorAll("nav a[href]")].map((a) => a.href)`) {
		path, inside := strings.CutPrefix(target, root)
		require.True(t, inside, "%s is outside %s", target, root)
		browser.Eval[bool](p, `([...document.querySelectorAll("nav a[href]")].find((a) => a.href === "`+target+`").click(), true)`)
		p.Wait(`location.href.split("#")[0] === "` + target + `"`)
		p.Settle()
		assert.Equal(t, headings["/"+path], p.Text("h1"), target)
	}
	p.WaitOffline()
	stop()
	for _, path := range pages {
		p.Open(path + "#v=1")
		assert.Equal(t, headings[path], p.Text("h1"), "%s offline", path)
		p.Reload()
		assert.Equal(t, headings[path], p.Text("h1"), "%s offline after a reload", path)
	}
}

func python(_ *testing.T, program, dir string, port int) *exec.Cmd {
	return exec.Command(program, "-m", "http.server", "--bind", "localhost", "--directory", dir, fmt.Sprint(port))
}

// apache as distributions set it up, with what is known to bite: content
// negotiation, and compressed files declared as an encoding.
func apache(t *testing.T, program, dir string, port int) *exec.Cmd {
	const modules = "/usr/lib/apache2/modules/mod_"
	own := t.TempDir()
	config := fmt.Sprintf(`
ServerName localhost
Listen localhost:%d
PidFile %[2]s/pid
ErrorLog %[2]s/error.log
LoadModule mpm_event_module %[3]smpm_event.so
LoadModule authz_core_module %[3]sauthz_core.so
LoadModule dir_module %[3]sdir.so
LoadModule mime_module %[3]smime.so
LoadModule negotiation_module %[3]snegotiation.so
User www-data
Group www-data
TypesConfig /etc/mime.types
AddEncoding x-gzip .gz
DocumentRoot %[4]s
DirectoryIndex index.html
<Directory %[4]s>
	Options Indexes FollowSymLinks MultiViews
	Require all granted
</Directory>
`, port, own, modules, dir)
	file := filepath.Join(own, "apache.conf")
	require.NoError(t, os.WriteFile(file, []byte(config), 0o644))
	t.Cleanup(func() {
		if t.Failed() {
			log, _ := os.ReadFile(filepath.Join(own, "error.log"))
			t.Logf("apache says: %s", log)
		}
	})
	return exec.Command(program, "-d", own, "-f", file, "-D", "FOREGROUND")
}

// readable returns a folder that servers may read which give up root's rights.
func readable(t *testing.T) string {
	t.Helper()
	dir, err := os.MkdirTemp("", "striderule-host-")
	require.NoError(t, err)
	t.Cleanup(func() { _ = os.RemoveAll(dir) })
	require.NoError(t, os.Chmod(dir, 0o755))
	return dir
}

func unpack(t *testing.T, file, to string) {
	t.Helper()
	z, err := zip.OpenReader(file)
	require.NoError(t, err)
	defer z.Close()
	for _, entry := range z.File {
		r, err := entry.Open()
		require.NoError(t, err)
		content, err := io.ReadAll(r)
		require.NoError(t, err)
		path := filepath.Join(to, filepath.FromSlash(entry.Name))
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, content, 0o644))
	}
}

func freePort(t *testing.T) int {
	t.Helper()
	l, err := net.Listen("tcp", "localhost:0")
	require.NoError(t, err)
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port
}

// start runs a server until it answers; stop ends it for good.
func start(t *testing.T, server *exec.Cmd, port int) (stop func()) {
	t.Helper()
	require.NoError(t, server.Start())
	ended := make(chan error, 1)
	go func() { ended <- server.Wait() }()
	stop = sync.OnceFunc(func() {
		_ = server.Process.Signal(os.Interrupt)
		select {
		case <-ended:
		case <-time.After(5 * time.Second):
			_ = server.Process.Kill()
		}
	})
	t.Cleanup(stop)
	for range 100 {
		r, err := http.Get(fmt.Sprintf("http://localhost:%d/", port))
		if err == nil {
			_ = r.Body.Close()
			return stop
		}
		time.Sleep(50 * time.Millisecond)
	}
	require.FailNow(t, "the server does not answer", "%s", server)
	return nil
}
