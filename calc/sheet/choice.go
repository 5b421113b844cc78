package sheet

import (
	"slices"
	"strings"

	"striderule/calc/unit"
)

// An Option is one of a Choice.
type Option struct {
	Word  string // in links
	Label string
	Hint  string
	Brief string // in the line that says what is assumed; the label where it is empty
}

// Said is the option in that line.
func (o Option) Said() string {
	if o.Brief != "" {
		return o.Brief
	}
	return o.Label
}

// A Choice is one of several options; the first is its default.
type Choice struct {
	Word    string
	options []Option
}

// Choose makes a choice of options.
func Choose(options ...Option) Choice { return Choice{options[0].Word, options} }

// Options returns what can be chosen.
func (c *Choice) Options() []Option { return c.options }

// Set takes an option's word, in any case.
func (c *Choice) Set(text string) error {
	c.Word = c.options[0].Word
	word := c.Plain(text)
	if word == "" {
		return nil
	}
	if !slices.ContainsFunc(c.options, func(o Option) bool { return o.Word == word }) {
		return &unit.Error{Text: text, Problem: noOption, Parts: []string{"options", c.About()}, Cause: errChoice}
	}
	c.Word = word
	return nil
}

// Chosen is the word of a choice that was made; the default goes without saying.
func (c *Choice) Chosen() string {
	if c.IsDefault() {
		return ""
	}
	return c.Word
}

// IsDefault reports whether the first option is chosen.
func (c *Choice) IsDefault() bool { return c.Word == c.options[0].Word }

// String returns the word that is chosen.
func (c *Choice) String() string { return c.Word }

// Plain returns the option's word; what is no option stays as it was typed.
func (c *Choice) Plain(text string) string {
	for _, o := range c.options {
		if strings.EqualFold(o.Word, strings.TrimSpace(text)) {
			return o.Word
		}
	}
	return strings.TrimSpace(text)
}

// About lists the words.
func (c *Choice) About() string { return words(c.options) }

func words(options []Option) string {
	var all []string
	for _, o := range options {
		if o.Word != "" { // that of nothing ticked
			all = append(all, o.Word)
		}
	}
	return strings.Join(all, ", ")
}

// Checks is a list of things that a person ticks off.
type Checks struct {
	ticked  []Choice
	options []Option
}

// NewChecks makes a list with nothing ticked.
func NewChecks(options []Option) Checks { return Checks{options: options} }

// Options returns what can be ticked.
func (c *Checks) Options() []Option { return c.options }

// Has reports whether an option is ticked.
func (c *Checks) Has(word string) bool {
	for i := range c.ticked {
		if c.ticked[i].Word == word {
			return true
		}
	}
	return false
}

// Len returns the number of ticks.
func (c *Checks) Len() int { return len(c.ticked) }

// Resize adds or takes away ticks.
func (c *Checks) Resize(n int) {
	for len(c.ticked) < n {
		none := append([]Option{{}}, c.options...) // an empty tick ticks nothing
		c.ticked = append(c.ticked, Choose(none...))
	}
	c.ticked = c.ticked[:n]
}

// At returns a tick.
func (c *Checks) At(i int) Value { return &c.ticked[i] }
