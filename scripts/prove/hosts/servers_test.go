package hosts

import (
	"compress/gzip"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// deflate is how Debian has Apache compress what it sends.
const deflate = "Include /etc/apache2/mods-available/deflate.conf"

// host is a web server that can be started on dir, for a site that lies in its
// folder ("", "tools/cal/").
type host struct {
	program string // that must be installed; "" if it is one of our own
	start   func(t *testing.T, dir, folder string) (root string, stop func())
}

// begin lays the site into its folder and starts the host on it, or skips the test
// where that is not installed. It returns the site's address.
func (h host) begin(t *testing.T, folder string, lay func(site string)) (address string, stop func()) {
	t.Helper()
	if h.program != "" {
		if _, err := exec.LookPath(h.program); err != nil {
			t.Skipf("%s is not installed (Debian: apt-get install %[1]s)", h.program)
		}
	}
	dir := readable(t)
	lay(filepath.Join(dir, filepath.FromSlash(folder)))
	root, stop := h.start(t, dir, folder)
	return root + (&url.URL{Path: folder}).EscapedPath(), stop
}

// command is a host that is a program of its own.
func command(program string, args func(t *testing.T, dir, folder string, port int) []string) host {
	return host{program, func(t *testing.T, dir, folder string) (string, func()) {
		t.Helper()
		port := freePort(t)
		stop := run(t, exec.Command(program, args(t, dir, folder, port)...), port)
		return fmt.Sprintf("http://localhost:%d/", port), stop
	}}
}

var python = command("python3", func(_ *testing.T, dir, _ string, port int) []string {
	return []string{"-m", "http.server", "--bind", "localhost", "--directory", dir, fmt.Sprint(port)}
})

var busybox = command("busybox", func(_ *testing.T, dir, _ string, port int) []string {
	return []string{"httpd", "-f", "-p", fmt.Sprintf("127.0.0.1:%d", port), "-h", dir}
})

// apache is set up as Debian does, content negotiation included, with more lines at
// the end. FOLDER in them is the site's, as it stands in addresses.
func apache(more string) host {
	return command("apache2", func(t *testing.T, dir, folder string, port int) []string {
		own := t.TempDir()
		var config strings.Builder
		fmt.Fprintf(&config, "ServerName localhost\nListen localhost:%d\nPidFile %[2]s/pid\nErrorLog %[2]s/error.log\nUser www-data\nGroup www-data\n", port, own)
		for _, module := range []string{"mpm_event", "authz_core", "dir", "mime", "negotiation", "filter", "deflate", "headers", "rewrite"} {
			fmt.Fprintf(&config, "LoadModule %s_module /usr/lib/apache2/modules/mod_%[1]s.so\n", module)
		}
		for _, module := range []string{"mime", "negotiation", "dir"} {
			fmt.Fprintf(&config, "Include /etc/apache2/mods-available/%s.conf\n", module)
		}
		fmt.Fprintf(&config, "DocumentRoot %s\n<Directory %[1]s>\nOptions Indexes FollowSymLinks MultiViews\nAllowOverride FileInfo\nRequire all granted\n</Directory>\n", dir)
		config.WriteString(strings.ReplaceAll(more, "FOLDER", (&url.URL{Path: folder}).EscapedPath()) + "\n")
		file := filepath.Join(own, "apache.conf")
		require.NoError(t, os.WriteFile(file, []byte(config.String()), 0o644))
		showLog(t, filepath.Join(own, "error.log"))
		return []string{"-d", own, "-f", file, "-D", "FOREGROUND"}
	})
}

// nginx is set up as Debian does, with more lines for its http part and for the
// site's location, in which FOLDER is the site's. Debian has gzip on, which means
// HTML alone.
func nginx(http, location string) host {
	return command("nginx", func(t *testing.T, dir, folder string, port int) []string {
		own := t.TempDir()
		config := fmt.Sprintf(`
daemon off;
master_process off;
pid %[1]s/pid;
error_log %[1]s/error.log;
include /etc/nginx/modules-enabled/*.conf;
events {}
http {
	include /etc/nginx/mime.types;
	default_type application/octet-stream;
	gzip on;
	access_log off;
	client_body_temp_path %[1]s; proxy_temp_path %[1]s; fastcgi_temp_path %[1]s; uwsgi_temp_path %[1]s; scgi_temp_path %[1]s;
	%[4]s
	server {
		listen 127.0.0.1:%[3]d;
		root %[2]s;
		location "/%[5]s" {
			%[6]s
		}
	}
}
`, own, dir, port, http, folder, strings.ReplaceAll(location, "FOLDER", folder))
		file := filepath.Join(own, "nginx.conf")
		require.NoError(t, os.WriteFile(file, []byte(config), 0o644))
		showLog(t, filepath.Join(own, "error.log"))
		return []string{"-c", file, "-e", filepath.Join(own, "error.log")}
	})
}

// pagesLike is a host of static pages: it sends 404.html for what is not there, has
// everything kept for ten minutes, and may compress on the way.
func pagesLike(compress bool) host {
	return host{start: func(t *testing.T, dir, folder string) (string, func()) {
		t.Helper()
		files := http.FileServer(http.Dir(dir))
		server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			w.Header().Set("Cache-Control", "max-age=600")
			if compress && strings.Contains(r.Header.Get("Accept-Encoding"), "gzip") && path.Ext(r.URL.Path) != ".gz" {
				w.Header().Set("Content-Encoding", "gzip")
				w.Header().Set("Vary", "Accept-Encoding")
				z := gzip.NewWriter(w)
				defer z.Close()
				w = zipped{w, z}
			}
			if _, err := os.Stat(filepath.Join(dir, filepath.FromSlash(path.Clean("/"+r.URL.Path)))); err != nil {
				sendLost(w, filepath.Join(dir, filepath.FromSlash(folder)))
				return
			}
			files.ServeHTTP(w, r)
		}))
		stop := sync.OnceFunc(func() {
			server.CloseClientConnections()
			server.Close()
		})
		t.Cleanup(stop)
		return server.URL + "/", stop
	}}
}

func sendLost(w http.ResponseWriter, site string) {
	page, err := os.ReadFile(filepath.Join(site, "404.html"))
	if err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
		return
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(http.StatusNotFound)
	_, _ = w.Write(page)
}

// zipped compresses what is written, whose length is then another.
type zipped struct {
	http.ResponseWriter
	to io.Writer
}

func (z zipped) Write(b []byte) (int, error) { return z.to.Write(b) }

func (z zipped) WriteHeader(status int) {
	z.Header().Del("Content-Length")
	z.ResponseWriter.WriteHeader(status)
}

// showLog shows a server's log when the test has failed.
func showLog(t *testing.T, file string) {
	t.Cleanup(func() {
		if t.Failed() {
			log, _ := os.ReadFile(file)
			t.Logf("the server says: %s", log)
		}
	})
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

func freePort(t *testing.T) int {
	t.Helper()
	l, err := net.Listen("tcp", "localhost:0")
	require.NoError(t, err)
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port
}

// run runs a server until it answers; stop ends it for good.
func run(t *testing.T, server *exec.Cmd, port int) (stop func()) {
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
