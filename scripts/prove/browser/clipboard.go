package browser

import "strconv"

// A page may not read the clipboard, and write to it only while a person presses
// something: so both are done by keys, in a field of the tests' own.

const (
	openDesk  = `window.usedBefore = document.activeElement; const desk = document.body.appendChild(document.createElement("textarea")); desk.id = "desk";`
	closeDesk = `document.getElementById("desk").remove(); usedBefore.focus({preventScroll: true});`
)

// Copy puts a text on the clipboard, to the letter.
func (p *Page) Copy(text string) {
	p.t.Helper()
	Eval[bool](p, `(() => {`+openDesk+`
		desk.value = "something to copy";
		desk.select();
		desk.addEventListener("copy", (e) => { e.preventDefault(); e.clipboardData.setData("text/plain", `+strconv.Quote(text)+`); });
		return true;
	})()`)
	p.Must(p.tab.chord("c"))
	Eval[bool](p, `(() => {`+closeDesk+` return true; })()`)
}

// Clipboard returns the text on the clipboard.
func (p *Page) Clipboard() string {
	p.t.Helper()
	Eval[bool](p, `(() => {`+openDesk+` desk.focus(); return true; })()`)
	p.Must(p.tab.chord("v"))
	return Eval[string](p, `(() => { const text = document.getElementById("desk").value; `+closeDesk+` return text; })()`)
}
