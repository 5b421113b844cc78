package calc

// A Formula is one line of the model with where it comes from.
type Formula struct {
	Name, Text, Source string
}

// A Term is a word of the glossary.
type Term struct {
	Name, Meaning string
}
