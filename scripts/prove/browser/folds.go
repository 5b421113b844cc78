package browser

import (
	"fmt"
	"strconv"

	"github.com/stretchr/testify/require"
)

// What is folded is not on the page until it is opened. Fields and figures that a test asks for
// are opened here by script, so that a test can be about something else:
// TestFieldsInFoldsAreReached shows the way that a person goes.

// Folds, as selectors: those with fields, and all but the menu.
const (
	fieldFolds = "details.set-up, details#more, details.row-fold"
	allFolds   = "details:not(#menu)"
)

// Unfold opens all folds of the page, and waits until what they hold is there.
func (p *Page) Unfold() {
	p.t.Helper()
	p.OpenFolds(allFolds)
}

// OpenFolds opens the folds of a selector, and those within them that it names too, and waits until
// what they hold is there. It does nothing where there are none.
func (p *Page) OpenFolds(selector string) {
	p.t.Helper()
	empty := Eval[[]string](p, `(async () => {
		const shown = () => new Promise((r) => requestAnimationFrame(() => requestAnimationFrame(r)));
		const end = performance.now() + 10000;
		for (;;) {
			const folds = [...document.querySelectorAll(`+strconv.Quote(selector)+`)];
			const left = folds.filter((f) => !f.open || f.childElementCount < 2);
			for (const f of left) f.open = true;
			if (!left.length || performance.now() > end) return left.map((f) => f.id);
			await shown();
		}
	})()`)
	require.Empty(p.t, empty, "folds that hold nothing")
	p.Settle()
}

// unfoldFor opens folds of the selector if what the expression finds is not on the page, or in a
// closed fold.
func (p *Page) unfoldFor(selector, element string) {
	p.t.Helper()
	if !Eval[bool](p, isUnfolded(element)) {
		p.OpenFolds(selector)
	}
}

// isUnfolded is a script: whether what an expression finds is there, and in no closed fold.
func isUnfolded(element string) string {
	return `(() => {
		const e = ` + element + `, fold = e && e.closest("details:not([open])");
		return Boolean(e && (!fold || fold === e || fold.firstElementChild.contains(e)));
	})()`
}

// fieldNamed is the nth field of a name, or the one of an id, as a script. Rows that are folded
// count: so the nth is looked for by its row first.
func fieldNamed(name string, n int) string {
	return fmt.Sprintf(`(document.getElementById("f-" + %[1]q + "-%[3]d") || document.getElementsByName(%[1]q)[%[2]d] || document.getElementById(%[1]q))`, name, n, n+1)
}
