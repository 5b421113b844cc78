package pages

import (
	"os"
	"path/filepath"
	"testing"

	"striderule/calc"
	"striderule/scripts/prove/browser"
)

// TestPictures takes a picture of every page, filled in, on a phone and on a
// desk, light and dark, to be looked at:
//
//	PICTURES=/tmp/pictures go test -run TestPictures ./scripts/prove/pages
func TestPictures(t *testing.T) {
	browser.Alongside(t)
	dir := os.Getenv("PICTURES")
	if dir == "" {
		t.Skip("PICTURES names no folder for them")
	}
	paths := map[string]string{"start": "/", "method": "/method/"}
	for _, page := range calc.Pages {
		paths[page.Slug+"-empty"] = "/" + page.Slug + "/"
		paths[page.Slug] = "/" + page.Slug + "/#" + page.Example
	}
	paths["measure-wrong"] = "/measure/#v=1&steps=538.0&asked=8Omm&mark=105&rest=28.7,120&nozzle=4"
	site := browser.NewSite(t)
	for name, path := range paths {
		for _, screen := range []struct {
			name          string
			width, height int64
			dark          bool
		}{{"phone", browser.Width, browser.Height, false}, {"phone-dark", browser.Width, browser.Height, true}, {"desk", 1280, 900, false}} {
			t.Run(name+"-"+screen.name, func(t *testing.T) {
				p := site.NewPage(t)
				p.Viewport(screen.width, screen.height)
				p.Open(path)
				p.Screenshot(filepath.Join(dir, name+"-"+screen.name+".png"), screen.dark, true)
			})
		}
	}
}
