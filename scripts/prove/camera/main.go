// Command camera takes the pictures of README.md from the built site, each in
// light and in dark, and makes them small.
//
//	go run ./scripts/prove/camera [-out .pictures]
package main

import (
	"context"
	"flag"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"github.com/chromedp/cdproto/emulation"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"striderule/scripts/prove/browser"
)

func main() {
	out := flag.String("out", ".pictures", "`folder` to write into")
	flag.Parse()
	if err := run(*out); err != nil {
		fmt.Fprintln(os.Stderr, "pictures:", err)
		os.Exit(1)
	}
}

func run(out string) error {
	mod, err := exec.Command("go", "env", "GOMOD").Output()
	if err != nil {
		return err
	}
	dist := filepath.Join(filepath.Dir(strings.TrimSpace(string(mod))), "dist")
	if _, err := os.Stat(filepath.Join(dist, "index.html")); err != nil {
		return fmt.Errorf("there is no built site: run scripts/build first")
	}
	host := httptest.NewServer(http.FileServer(http.Dir(dist)))
	defer host.Close()
	chromium, end, err := browser.Launch(context.Background())
	if err != nil {
		return err
	}
	defer end()
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	total := 0
	for _, s := range shots {
		for _, scheme := range []string{"light", "dark"} {
			taken, err := s.take(chromium, host.URL, scheme)
			if err != nil {
				return fmt.Errorf("%s, %s: %w", s.name, scheme, err)
			}
			small, err := fewColours(taken)
			if err != nil {
				return err
			}
			file := filepath.Join(out, s.name+"-"+scheme+".png")
			if err := os.WriteFile(file, small, 0o644); err != nil {
				return err
			}
			fmt.Printf("%-36s %7d bytes\n", file, len(small))
			total += len(small)
		}
	}
	fmt.Printf("%-36s %7d bytes\n", "all", total)
	return nil
}

// take opens the page as a person who prefers the scheme, and returns what
// shows of it as a PNG.
func (s shot) take(chromium context.Context, url, scheme string) ([]byte, error) {
	ctx, end := chromedp.NewContext(chromium, chromedp.WithNewBrowserContext())
	defer end()
	// The tab belongs to the context that it is opened by.
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(360, 740, chromedp.EmulateMobile, chromedp.EmulateScale(2))); err != nil {
		return nil, err
	}
	ctx, cancel := context.WithTimeout(ctx, time.Minute)
	defer cancel()
	if _, err := chromedp.Call(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: "prefers-color-scheme", Value: scheme},
	}}); err != nil {
		return nil, err
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(url+s.path)); err != nil {
		return nil, err
	}
	// The place, once the program is there and has painted.
	const looks = `new Promise((r) => {
		const look = () => {
			const e = document.documentElement.dataset.app === "ready" && document.querySelector(%q);
			if (!e) return setTimeout(look, 20);
			scrollTo(0, 0);
			scrollTo(0, e.getBoundingClientRect().top - %v);
			setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(() => r(true))), 200);
		};
		look();
	})`
	if _, err := chromedp.Run(ctx, chromedp.Evaluate[bool](fmt.Sprintf(looks, s.at, s.gap), chromedp.EvalAwaitPromise)); err != nil {
		return nil, err
	}
	taken, err := chromedp.Call(ctx, cdppage.CaptureScreenshot, cdppage.CaptureScreenshotParams{})
	return taken.Data, err
}
