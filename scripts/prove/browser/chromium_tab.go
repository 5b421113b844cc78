package browser

import (
	"context"
	"strings"
	"sync/atomic"
	"time"

	cdpbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	cdppage "github.com/chromedp/cdproto/page"
	cdpstorage "github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
)

// chromium is driven by its own protocol.
type chromium struct {
	ctx  context.Context
	stop func()
	idle []*chromiumTab // that were closed, as good as new but for what they have seen
}

func newChromium() (engine, error) {
	// All pages are our own: none needs a process apart from others, which takes long.
	ctx, stop, err := Launch(context.Background(), chromedp.Flag("disable-site-isolation-trials", true))
	if err != nil {
		return nil, err
	}
	return &chromium{ctx: ctx, stop: stop}, nil
}

func (c *chromium) end() { c.stop() }

// open makes a window of a person of its own, which costs as much as the start of a page:
// for a site that nobody has seen, one that was used for others will do.
func (c *chromium) open(w *watch, unseen bool) (tab, error) {
	if n := len(c.idle); n > 0 && unseen {
		t := c.idle[n-1]
		c.idle = c.idle[:n-1]
		t.log.Store(w)
		return t, nil
	}
	t := &chromiumTab{of: c}
	t.log.Store(w)
	ctx, end := chromedp.NewContext(c.ctx, chromedp.WithNewBrowserContext(), chromedp.WithListener(t.see))
	if err := chromedp.Do(ctx); err != nil {
		end()
		return nil, err
	}
	t.ctx, t.end = ctx, end
	return t, nil
}

type chromiumTab struct {
	of      *chromium
	ctx     context.Context
	end     func()
	log     atomic.Pointer[watch]
	scripts []cdppage.ScriptIdentifier // that run in each document
	strange bool                       // set up in a way that others must not find it
}

func (c *chromiumTab) see(event any) {
	if w := c.log.Load(); w != nil {
		w.see(event)
	}
}

func (c *chromiumTab) collect() {} // events come by themselves

func (c *chromiumTab) close() {
	if c.of == nil || c.strange || c.forget() != nil {
		c.end()
		return
	}
	c.of.idle = append(c.of.idle, c)
}

// forget makes the tab as good as new, but for what the browser remembers of the sites that
// it has seen. They are gone, and what they have kept goes too.
func (c *chromiumTab) forget() error {
	c.log.Store(nil)
	origin, err := c.eval(`location.origin`)
	if err != nil {
		return err
	}
	if err := c.navigate("about:blank"); err != nil {
		return err
	}
	for _, id := range c.scripts {
		if _, err := chromedp.Call(c.ctx, cdppage.RemoveScriptToEvaluateOnNewDocument, cdppage.RemoveScriptToEvaluateOnNewDocumentParams{Identifier: id}); err != nil {
			return err
		}
	}
	c.scripts = nil
	if err := c.prefer("", ""); err != nil {
		return err
	}
	_, err = chromedp.Call(c.ctx, cdpstorage.ClearDataForOrigin, cdpstorage.ClearDataForOriginParams{Origin: strings.Trim(string(origin), `"`), StorageTypes: "all"})
	return err
}

// A window, because tabs that are not in front don't paint.
func (c *chromiumTab) beside() (tab, error) {
	t := &chromiumTab{}
	t.log.Store(c.log.Load())
	ctx, end := chromedp.NewContext(c.ctx, chromedp.WithNewWindow(true), chromedp.WithListener(t.see))
	if err := chromedp.Do(ctx); err != nil {
		end()
		return nil, err
	}
	t.ctx, t.end = ctx, end
	return t, nil
}

func (c *chromiumTab) do(action chromedp.Action[chromedp.Void]) error {
	ctx, cancel := context.WithTimeout(c.ctx, Patience)
	defer cancel()
	return chromedp.Do(ctx, action)
}

func (c *chromiumTab) viewport(width, height int64, scale float64) error {
	return c.do(chromedp.EmulateViewport(width, height, chromedp.EmulateMobile, chromedp.EmulateScale(scale)))
}

func (c *chromiumTab) before(script string) error {
	added, err := chromedp.Call(c.ctx, cdppage.AddScriptToEvaluateOnNewDocument, cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
	if err == nil {
		c.scripts = append(c.scripts, added.Identifier)
	}
	return err
}

func (c *chromiumTab) navigate(url string) error { return c.do(chromedp.Navigate(url)) }
func (c *chromiumTab) reload() error             { return c.do(chromedp.Reload()) }

func (c *chromiumTab) eval(expression string) ([]byte, error) {
	ctx, cancel := context.WithTimeout(c.ctx, commandLimit)
	defer cancel()
	return chromedp.Run(ctx, chromedp.Evaluate[[]byte](expression, chromedp.EvalAwaitPromise))
}

func (c *chromiumTab) keys(keys string) error { return c.do(chromedp.KeyEvent(keys)) }

func (c *chromiumTab) chord(key string) error {
	does := map[string]string{"c": "copy", "v": "paste"}[key]
	for _, kind := range []input.DispatchKeyEventType{input.DispatchKeyEventTypeRawKeyDown, input.DispatchKeyEventTypeKeyUp} {
		_, err := chromedp.Call(c.ctx, input.DispatchKeyEvent, input.DispatchKeyEventParams{
			Type: kind, Key: key, Code: "Key" + strings.ToUpper(key), WindowsVirtualKeyCode: int64(strings.ToUpper(key)[0]), Modifiers: 2, Commands: []string{does}})
		if err != nil {
			return err
		}
	}
	return nil
}

func (c *chromiumTab) click(selector string, held time.Duration) error {
	if held == 0 {
		return c.do(chromedp.Click(chromedp.CSS(selector)))
	}
	place, err := c.eval(middle(selector))
	if err != nil {
		return err
	}
	at, err := placeOf(place)
	if err != nil {
		return err
	}
	for _, kind := range []input.DispatchMouseEventType{input.DispatchMouseEventTypeMousePressed, input.DispatchMouseEventTypeMouseReleased} {
		if err := c.do(chromedp.MouseEvent(kind, at[0], at[1], chromedp.ButtonLeft, chromedp.ClickCount(1))); err != nil {
			return err
		}
		time.Sleep(held)
	}
	return nil
}

func (c *chromiumTab) prefer(feature, value string) error {
	var features []*emulation.MediaFeature
	if feature != "" {
		features = append(features, &emulation.MediaFeature{Name: feature, Value: value})
	}
	_, err := chromedp.Call(c.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: features})
	return err
}

func (c *chromiumTab) screenshot(full bool) ([]byte, error) {
	if full {
		return chromedp.Run(c.ctx, chromedp.FullScreenshot(100))
	}
	return chromedp.Run(c.ctx, chromedp.CaptureScreenshot())
}

func (c *chromiumTab) saveTo(dir string) (string, error) {
	c.strange = true
	_, err := chromedp.CallBrowser(c.ctx, cdpbrowser.SetDownloadBehavior, cdpbrowser.SetDownloadBehaviorParams{
		Behavior:         cdpbrowser.SetDownloadBehaviorBehaviorAllow,
		BrowserContextID: chromedp.FromContext(c.ctx).BrowserContextID,
		DownloadPath:     dir,
	})
	return dir, err
}
