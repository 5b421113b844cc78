package machine

import "striderule/calc/word"

// title names an axis by its machine and its own name.
const title word.Template = "{machine} {axis}"

// since is a setting with its day.
const since word.Template = "{setting}, since {date}"

// factWords say a fact in a line of several, by its key. {text} is a number without its unit.
var factWords = word.Table{
	{"angle", "{text}° motor"}, {"micro", "{text} microsteps"}, {"driving", "{text} teeth on the motor"}, {"driven", "{text} driven"}, {"ratio", "ratio {text}"},
	{"asked", "{text} mm commanded"}, {"askeddeg", "{text}° commanded"}, {"mark", "mark at {text} mm"},
}

// units stand behind a setting, by its key.
var units = word.Table{
	{"steps", " steps/mm"}, {"turn", " mm/rev"}, {"output", " mm/rev"},
	{"stepsdeg", " steps/°"}, {"turndeg", " °/rev"}, {"outputdeg", " °/rev"},
}
