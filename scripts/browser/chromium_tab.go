package browser

import (
	"context"
	"strings"

	cdpbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// chromium is driven by its own protocol.
type chromium struct {
	ctx  context.Context
	stop func()
}

func newChromium() (engine, error) {
	ctx, stop, err := Launch(context.Background())
	if err != nil {
		return nil, err
	}
	return &chromium{ctx, stop}, nil
}

func (c *chromium) end() { c.stop() }

func (c *chromium) open(w *watch) (tab, error) {
	ctx, end := chromedp.NewContext(c.ctx, chromedp.WithNewBrowserContext(), chromedp.WithListener(w.see))
	if err := chromedp.Do(ctx); err != nil {
		end()
		return nil, err
	}
	return &chromiumTab{ctx, end, w}, nil
}

type chromiumTab struct {
	ctx context.Context
	end func()
	log *watch
}

func (c *chromiumTab) close()   { c.end() }
func (c *chromiumTab) collect() {} // events come by themselves

// A window, because tabs that are not in front don't paint.
func (c *chromiumTab) beside() (tab, error) {
	ctx, end := chromedp.NewContext(c.ctx, chromedp.WithNewWindow(true), chromedp.WithListener(c.log.see))
	if err := chromedp.Do(ctx); err != nil {
		end()
		return nil, err
	}
	return &chromiumTab{ctx, end, c.log}, nil
}

func (c *chromiumTab) do(action chromedp.Action[chromedp.Void]) error {
	ctx, cancel := context.WithTimeout(c.ctx, patience)
	defer cancel()
	return chromedp.Do(ctx, action)
}

func (c *chromiumTab) viewport(width, height int64, scale float64) error {
	return c.do(chromedp.EmulateViewport(width, height, chromedp.EmulateMobile, chromedp.EmulateScale(scale)))
}

func (c *chromiumTab) before(script string) error {
	_, err := chromedp.Call(c.ctx, cdppage.AddScriptToEvaluateOnNewDocument, cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: script})
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

func (c *chromiumTab) click(selector string) error {
	return c.do(chromedp.Click(chromedp.CSS(selector)))
}

func (c *chromiumTab) prefer(feature, value string) error {
	_, err := chromedp.Call(c.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: feature, Value: value}},
	})
	return err
}

func (c *chromiumTab) screenshot(full bool) ([]byte, error) {
	if full {
		return chromedp.Run(c.ctx, chromedp.FullScreenshot(100))
	}
	return chromedp.Run(c.ctx, chromedp.CaptureScreenshot())
}

func (c *chromiumTab) saveTo(dir string) (string, error) {
	_, err := chromedp.CallBrowser(c.ctx, cdpbrowser.SetDownloadBehavior, cdpbrowser.SetDownloadBehaviorParams{
		Behavior:         cdpbrowser.SetDownloadBehaviorBehaviorAllow,
		BrowserContextID: chromedp.FromContext(c.ctx).BrowserContextID,
		DownloadPath:     dir,
	})
	return dir, err
}
