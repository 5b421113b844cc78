package browser

import (
	"context"
	"errors"
	"os"
	"os/exec"

	"github.com/chromedp/chromedp"
)

// Find returns the browser to test with: the one that the environment variable
// CHROME names, or the first of the usual names on the path.
func Find() (string, error) {
	if chrome := os.Getenv("CHROME"); chrome != "" {
		return exec.LookPath(chrome)
	}
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable"} {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", errors.New("no Chromium found: install it (Debian: apt-get install chromium), or name a browser of its family in CHROME")
}

// Launch starts a browser with a profile of its own and nothing in it, set up as the
// options say besides. Contexts made from the returned one by chromedp.NewContext are its tabs.
func Launch(parent context.Context, more ...chromedp.ExecAllocatorOption) (ctx context.Context, end func(), err error) {
	path, err := Find()
	if err != nil {
		return nil, nil, err
	}
	profile, err := os.MkdirTemp("", "striderule-browser-")
	if err != nil {
		return nil, nil, err
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path),
		chromedp.UserDataDir(profile),
		// The sandbox needs rights that containers don't have; only our own pages are opened.
		chromedp.NoSandbox,
		// Nothing of the browser's own may use the network meanwhile.
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
	)
	allocator, endAllocator := chromedp.NewExecAllocator(parent, append(options, more...)...)
	ctx, endBrowser := chromedp.NewContext(allocator)
	end = func() {
		_ = chromedp.Cancel(ctx) // waits until it has ended, so that the profile can go
		endBrowser()
		endAllocator()
		_ = os.RemoveAll(profile)
	}
	if err := chromedp.Do(ctx); err != nil {
		end()
		return nil, nil, err
	}
	return ctx, end, nil
}
