//go:build !wasm

package markup

import (
	"testing"

	"github.com/maxence-charriere/go-app/v10/pkg/app"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCleanMarkup(t *testing.T) {
	for _, c := range []struct {
		name string
		ui   app.UI
		want string
	}{
		{"quotes and backslashes", app.P().Title(`2" \ 3' <4>`), `<p title="2&#34; \ 3' &lt;4&gt;"></p>`},
		{"spaces of other kinds", app.P().Title("80\u00a0mm"), "<p title=\"80\u00a0mm\"></p>"},
		{"ampersands", app.A().Href("?a=1&b=2").Text("x & y"), `<a href="?a=1&amp;b=2">x &amp; y</a>`},
		{"order of attributes", app.Input().Type("text").Name("n").ID("i").Class("c"), `<input class="c" id="i" name="n" type="text">`},
		{"addresses", app.Div().Body(app.A().Href("/"), app.A().Href("/measure/#k"), app.Img().Src("/web/x.svg").Alt("X"), app.A().Href("#main"), app.A().Href("https://example.org/")),
			`<div><a href="../"></a><a href="../measure/#k"></a><img alt="X" src="../web/x.svg"><a href="#main"></a><a href="https://example.org/"></a></div>`},
		{"words for yes", app.P().Aria("hidden", true).Aria("expanded", false), `<p aria-expanded="false" aria-hidden="true"></p>`},
		{"decoration", app.Img().Src("/a.png").Alt(""), `<img alt="" src="../a.png">`},
		{"yes and no", app.Div().Body(app.Input().Checked(false).Disabled(true), app.Input().Checked(true)), `<div><input disabled><input checked></div>`},
		{"inline neighbours", app.P().Body(app.Text("a "), app.B().Text("b"), app.Text(" c"), app.I().Text(" d ")), `<p>a <b>b</b> c<i> d </i></p>`},
		{"nested", app.Ul().Body(app.Li().Body(app.A().Text("x"), app.Text("y"))), `<ul><li><a>x</a>y</li></ul>`},
		{"lines of a text area", app.P().Body(app.Textarea().Text("M92 E{value}\n  M500\n")), "<p><textarea>M92 E{value}\n  M500\n</textarea></p>"},
		{"lines of a sample", app.Div().Body(app.Pre().Body(app.Code().Text("{\n  \"a\": 1\n}"))), "<div><pre><code>{\n  &#34;a&#34;: 1\n}</code></pre></div>"},
		{"raw", app.Div().Body(app.Raw(`<svg viewBox="0 0 1 1"><title>a &amp; b</title><path d="M0 0" aria-label="x &lt; y"/></svg>`)),
			`<div><svg viewBox="0 0 1 1"><title>a &amp; b</title><path aria-label="x &lt; y" d="M0 0"/></svg></div>`},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := Clean(app.HTMLString(c.ui), "../")
			require.NoError(t, err)
			assert.Equal(t, c.want, got)
		})
	}
}

func TestCleanMarkupRefuses(t *testing.T) {
	for _, c := range []struct {
		name string
		ui   app.UI
		says string
	}{
		{"style", app.P().Style("color", "red"), "use a class"},
		{"script in an attribute", app.P().Attr("onclick", "x()"), "use a handler"},
		{"single quotes", app.Raw(`<p title='x'></p>`), "double quotes"},
		{"left open", app.Raw(`<div><b>x</div>`), "closes nothing"},
		{"void in name only", app.Div().Body(app.ElemSelfClosing("path")), "closes nothing"},
		{"comment", app.Raw(`<p><!-- x --></p>`), "comments"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Clean(app.HTMLString(c.ui), "../")
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
		})
	}
}
