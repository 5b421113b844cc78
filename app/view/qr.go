package view

import (
	"math"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"rsc.io/qr/coding"
)

// A Code is a link as a QR code.
type Code struct {
	URL   string
	Path  string  // of the dark squares, each 1 x 1; empty if the link is too long
	wide  int     // squares on a side, with the light ones around
	width float64 // on the screen
}

const (
	// quiet is how many light squares must stand around a code.
	quiet = 4
	// mostSpare is the largest version of a code that can lose 15 % of its squares
	// (level M). A longer link gets one that can lose 7 % (level L): the squares
	// become larger, which helps a camera more.
	mostSpare = coding.Version(15)
	// dense is from how many squares on a side a code is shown as large as can be.
	dense = 80
)

// CodeOf works a link's code out: some milliseconds for a long one.
func CodeOf(url string) Code {
	q := Code{URL: url}
	text := coding.String(url)
	level := coding.M
	for v := coding.Version(coding.MinVersion); v <= coding.MaxVersion; v++ {
		if v > mostSpare && level == coding.M {
			v, level = coding.MinVersion, coding.L
		}
		if text.Bits(v) > v.DataBytes(level)*8 {
			continue
		}
		plan, err := coding.NewPlan(v, level, 0)
		if err != nil {
			break
		}
		code, err := plan.Encode(text)
		if err != nil {
			break
		}
		q.wide = code.Size + 2*quiet
		q.Path = squares(code)
		break
	}
	return q
}

// squares outlines what is dark, a stretch of a line at a time.
func squares(code *coding.Code) string {
	var d strings.Builder
	for y := range code.Size {
		for x := 0; x < code.Size; x++ {
			from := x
			for code.Black(x, y) {
				x++
			}
			if n := strconv.Itoa(x - from); x > from {
				d.WriteString("M" + strconv.Itoa(from+quiet) + " " + strconv.Itoa(y+quiet) + "h" + n + "v1h-" + n + "z")
			}
		}
	}
	return d.String()
}

// ViewBox is the room that the squares take.
func (q *Code) ViewBox() string {
	n := strconv.Itoa(q.wide)
	return "0 0 " + n + " " + n
}

// Class says how large the code is shown.
func (q *Code) Class() string {
	switch {
	case q.Path == "":
		return "code-none"
	case q.wide >= dense:
		return "code-picture dense"
	}
	return "code-picture"
}

// Fit sizes the picture for a place on the screen: whole pixels for each square,
// or cameras count them wrong. The room is in CSS
// pixels, density how many pixels of the screen one is.
func (q *Code) Fit(room, density float64) {
	most := 256.0
	if q.wide >= dense {
		most = 600
	}
	q.width = min(room, most)
	if n := math.Floor(q.width * density / float64(q.wide)); n > 0 {
		q.width = n * float64(q.wide) / density
	}
}

// View shows it, dark on light whatever the page's colours are.
func (q *Code) View() app.UI {
	if q.Path == "" {
		return app.P().Class("note doubt").ID("code").Text(codeTooLong.Fill("n", strconv.Itoa(len(q.URL))))
	}
	says := scanCode
	if q.wide >= dense {
		says = scanDense
	}
	return app.Figure().Class("code-figure").ID("code").Body(
		SVG("svg", "id", "code-picture", "class", q.Class(), "viewBox", q.ViewBox(), "width", strconv.FormatFloat(q.width, 'f', -1, 64), "role", "img", "aria-label", codeName).Body(SVG("path", "d", q.Path)),
		app.FigCaption().Class("hint").Text(says),
	)
}
