package calculator

import (
	"striderule/app/view"
	"striderule/calc/report"
	"striderule/calc/sheet"
	"striderule/calc/word"
)

// A beside is what stands under a field about what is typed in it: what is wrong with it, or a
// question with its two answers, or a remark.
type beside struct {
	Problem, Asked string
	Rather, Read   string
	Remark         report.Remark
	Which          bool // the problem is which setting it was
	Past           bool // it no longer holds: its place is kept
}

// A typing is the field that a person is typing in, and what stood under it before.
type typing struct {
	id     string
	before beside
}

// besideOf is what stands under a field. While somebody types in it nothing comes there, and
// nothing goes: a number half typed is no mistake yet, and the next field must stay where it is.
func (c *calculator) besideOf(f sheet.Field, row int) beside {
	now := c.besideNow(f, row)
	if before := c.typing.before; c.typing.id == view.CellID(f, row) && before != now {
		before.Past = true
		return before
	}
	return now
}

func (c *calculator) besideNow(f sheet.Field, row int) beside {
	b := beside{Problem: c.form.ProblemAt(f.Key, row), Asked: c.form.AskedAt(f.Key, row), Remark: c.form.RemarkAt(f.Key, row)}
	if c.form.IsSettingAsked() {
		key, _ := c.form.Setting()
		b.Which = key == f.Key
	}
	if b.Asked != "" {
		b.Read, b.Rather = view.QuantityOf(f, row).Meanings()
	}
	return b
}

// startTyping notes what stands under a field before the first key.
func (c *calculator) startTyping(key string, row int) {
	f, _ := c.form.Field(key)
	if id := view.CellID(f, row); c.typing.id != id {
		c.typing = typing{id, c.besideNow(f, row)}
	}
}

// says is the sentence: a problem and a question are never both there.
func (b beside) says() string {
	if s := word.Together(b.Problem, b.Asked); s != "" {
		return s
	}
	return b.Remark.Says
}

// kind is the class of the sentence, and the end of its ID. A doubt stands out.
func (b beside) kind() (class, id string) {
	switch {
	case b.Problem+b.Asked != "":
		class, id = "problem", "-problem"
	case b.Remark.Doubt:
		class, id = "read doubted", "-read"
	default:
		class, id = "read", "-read"
	}
	if b.Past {
		class += " past"
	}
	return class, id
}
