package browser

import (
	"bytes"
	"io"
	"log"
	"net"
	"net/http"
	"net/http/httputil"
	"strconv"
	"strings"
	"sync"
)

// A proxy stands between a browser and the network: it tells the watch all that is
// asked for, lets nothing through but to the site's own host, and puts scripts into
// pages, before their policy and their own scripts.
type proxy struct {
	address string
	server  *http.Server
	forward *httputil.ReverseProxy

	watch   *watch
	mu      sync.Mutex
	scripts []string
}

func newProxy(w *watch) (*proxy, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	p := &proxy{address: l.Addr().String(), watch: w, scripts: []string{watchWithin}}
	p.forward = &httputil.ReverseProxy{
		Rewrite: func(r *httputil.ProxyRequest) {
			if isPage(r.In) { // which is to be read
				r.Out.Header.Del("Accept-Encoding")
			}
		},
		Transport:      &http.Transport{DisableCompression: true, DisableKeepAlives: true},
		FlushInterval:  -1,
		ModifyResponse: p.modify,
		// What fails beyond fails here: no answer.
		ErrorHandler: func(http.ResponseWriter, *http.Request, error) { panic(http.ErrAbortHandler) },
		ErrorLog:     silent,
	}
	p.server = &http.Server{Handler: p, ErrorLog: silent}
	go func() { _ = p.server.Serve(l) }()
	return p, nil
}

func (p *proxy) close() { _ = p.server.Close() }

func (p *proxy) before(script string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.scripts = append(p.scripts, script)
}

func (p *proxy) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	url := r.URL.String()
	if r.Method == http.MethodConnect {
		url = "https://" + r.Host
	}
	// A browser asks for this by itself, and not the page.
	if r.URL.Path != "/favicon.ico" {
		p.watch.requested(url)
	}
	if r.Method == http.MethodConnect || !strings.HasPrefix(p.watch.root, "http://"+r.URL.Host+"/") {
		http.Error(w, "only the site is served", http.StatusForbidden)
		return
	}
	p.forward.ServeHTTP(w, r)
}

// silent is for what tests do on purpose: connections that break off.
var silent = log.New(io.Discard, "", 0)

// leaveNoTrace takes the scripts that were put in out again: they have run.
const leaveNoTrace = `for (const script of [...document.scripts]) script.remove();`

// isPage tells requests for pages by their addresses.
func isPage(r *http.Request) bool {
	return strings.HasSuffix(r.URL.Path, "/") || strings.HasSuffix(r.URL.Path, ".html")
}

func (p *proxy) modify(r *http.Response) error {
	// Of what a worker asks for, pages know nothing; no browser tells it.
	if r.StatusCode >= 400 && !strings.HasSuffix(r.Request.Referer(), "/sw.js") {
		p.watch.note("browser error: answered %d: %s", r.StatusCode, r.Request.URL)
	}
	if !isPage(r.Request) || r.StatusCode != http.StatusOK {
		return nil
	}
	page, err := io.ReadAll(r.Body)
	if err != nil {
		return err
	}
	p.mu.Lock()
	scripts := "<head><script>" + strings.Join(p.scripts, "</script><script>") + "</script><script>" + leaveNoTrace + "</script>"
	p.mu.Unlock()
	page = bytes.Replace(page, []byte("<head>"), []byte(scripts), 1)
	r.Body = io.NopCloser(bytes.NewReader(page))
	r.Header.Set("Content-Length", strconv.Itoa(len(page)))
	return nil
}
