package pages

import (
	"net/http"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/scripts/prove/browser"
)

// sendsOnce has files damaged the first time that they are sent, and kept by browsers for a
// year, as hosts are told to (serving.Handler does so). It returns how often one was asked for.
func sendsOnce(t *testing.T, s *browser.Site, is func(path string) bool, damaged []byte) (times func() int) {
	t.Helper()
	var mu sync.Mutex
	asked := map[string]int{}
	s.Intercept(func(w http.ResponseWriter, r *http.Request) bool {
		if !is(r.URL.Path) {
			return false
		}
		mu.Lock()
		defer mu.Unlock()
		asked[r.URL.Path]++
		if asked[r.URL.Path] > 1 {
			return false
		}
		w.Header().Set("Cache-Control", "max-age=31536000, immutable")
		w.Header().Set("Content-Type", "text/html")
		w.Header().Set("Content-Length", strconv.Itoa(len(damaged)))
		_, err := w.Write(damaged)
		assert.NoError(t, err)
		return true
	})
	return func() (n int) {
		mu.Lock()
		defer mu.Unlock()
		for _, times := range asked {
			n += times
		}
		return n
	}
}

// What a browser keeps may be half of an upload, or the page of a portal, for a year. The
// page asks for it anew by itself, once.
func TestDamageThatTheBrowserKept(t *testing.T) {
	browser.Alongside(t)
	needCache(t)
	portal := []byte("<!DOCTYPE html><title>Please log in</title>")
	half := func(t *testing.T) []byte { c := program(t, ".gz"); return c[:len(c)/2] }
	for name, c := range map[string]struct {
		is      func(path string) bool
		damaged func(t *testing.T) []byte
	}{
		"half a program":                       {isZipped, half},
		"a portal's page for the program":      {isProgram, func(*testing.T) []byte { return portal }},
		"a portal's page for the start script": {isScript("start"), func(*testing.T) []byte { return portal }},
		"half a start script":                  {isScript("start"), func(*testing.T) []byte { return []byte(`"use strict"; (() => { if (`) }},
		"a program that is damaged in the midst": {isZipped, func(t *testing.T) []byte {
			c := program(t, "")
			c[len(c)/2] ^= 0xff
			return append(c[:20:20], c[40:]...)
		}},
	} {
		for _, without := range []string{"", refusals["there are no workers"]} { // as on plain http
			t.Run(name+map[bool]string{true: ", no worker"}[without != ""], func(t *testing.T) {
				s := browser.NewSite(t)
				times := sendsOnce(t, s, c.is, c.damaged(t))
				p := s.NewPage(t)
				p.Allow("") // the browser's own words about it
				p.Before(without)
				p.Open("/measure/#" + heron)
				assert.NotEmpty(t, answerOf(p))
				asked := times()
				p.Reload()
				if without != "" {
					assert.Equal(t, asked, times(), "it is kept whole now")
				}
			})
		}
	}
}

// So may be what the site's worker has kept.
func TestDamageThatTheWorkerKept(t *testing.T) {
	browser.Alongside(t)
	for _, ending := range []string{".wasm", ".js"} {
		t.Run(ending, func(t *testing.T) {
			p := browser.NewSite(t).NewPage(t)
			p.Allow("")
			p.Open("/measure/#" + heron)
			p.WaitOffline()
			damaged := browser.Eval[int](p, `caches.keys().then((names) => caches.open(names[0])).then(async (cache) => {
				const all = (await cache.keys()).filter((r) => /(app|start)\.[^/]*$/.test(r.url) && r.url.endsWith("`+ending+`"));
				for (const r of all) {
					const kept = await cache.match(r), body = await kept.arrayBuffer();
					await cache.put(r, new Response(body.slice(0, body.byteLength / 2), { headers: kept.headers }));
				}
				return all.length;
			})`)
			require.Equal(t, 1, damaged)
			p.Reload()
			assert.NotEmpty(t, answerOf(p))
		})
	}
}

// Where it stays damaged, the host is asked twice, not for ever.
func TestDamageThatStays(t *testing.T) {
	browser.Alongside(t)
	for name, is := range map[string]func(path string) bool{"program": isProgram, "start script": isScript("start")} {
		t.Run(name, func(t *testing.T) {
			s := browser.NewSite(t)
			var asked atomic.Int32
			s.Intercept(answer(is, func(w http.ResponseWriter, r *http.Request) {
				asked.Add(1)
				_, err := w.Write([]byte("<!DOCTYPE html>"))
				assert.NoError(t, err)
			}))
			p := s.NewPage(t)
			p.Allow("")
			p.Load("/measure/")
			p.WaitFailed()
			p.Settle()
			assert.LessOrEqual(t, asked.Load(), int32(4), "in both its forms")
		})
	}
}
