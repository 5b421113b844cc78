package machine

import "striderule/calc/word"

// title names an axis by its machine and its own name.
const title word.Template = "{machine} {axis}"

// units stand behind a setting, by its key.
var units = word.Table{
	{"steps", " steps/mm"}, {"turn", " mm/rev"}, {"output", " mm/rev"},
	{"stepsdeg", " steps/°"}, {"turndeg", " °/rev"}, {"outputdeg", " °/rev"},
}
