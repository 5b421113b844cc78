package kept

import "striderule/calc/word"

// refusals say why a browser does not save something.
var refusals = word.Table{
	{string(Full), "The browser's storage for this site is full."},
	{string(NoRoom), "This browser won't let the site store anything (some private windows don't)."},
	{string(Blocked), "This browser doesn't let the site store anything: site data is turned off, or this window forgets everything when it's closed."},
	{string(Overtaken), "Another tab has changed or deleted this meanwhile: nothing was changed here. Reload the page to see it."},
}

// otherID is what is wrong with an entry under another one's key.
const otherID = "its ID doesn't match"
