package axis

import "striderule/calc/word"

// Why a text is no list of teeth; see unit.Error.
const (
	notTeeth   word.Template = "{field}: “{typed}” isn't a list of teeth. Write it like 12, or 12 x 20 for two stages, in order from the motor."
	teethRange word.Template = "{field}: “{typed}” is out of range. Each number of teeth must be from {least} to {most}."
	manyStages word.Template = "{field}: “{typed}” has more than {n} stages. Write the product of some of them as one stage."
)

const aboutTeeth = "a number of teeth, 1 to 10000; 12 x 20 for two stages, in order from the motor"
