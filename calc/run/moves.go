package run

import (
	"math"
	"strings"

	"striderule/calc/page/trial"
	"striderule/calc/unit"
)

// UsualLine sets what was found, where the sheet has no line of the person's own; empty where the
// setting is none that a line takes.
func (t Test) UsualLine() string {
	r := t.Form.Report()
	if !strings.HasPrefix(r.SetKey, "steps") {
		return ""
	}
	return usualSetting.Fill("axis", t.letter(), "value", r.Set)
}

// slack is how far an axis goes before a run to take up its slack, in mm or °.
const slack = 5

// Settle is how long to wait when a move should be over, in s.
const Settle = 3

// Lines are what to send at a card; none where nothing moves.
func (t Test) Lines(c Card) []string {
	switch c.Step {
	case Slack:
		return []string{relativeFeed, t.line(slack, c)}
	case Zero:
		return []string{relative, t.line(slack, c), absolute}
	case Return:
		return []string{relative, t.line(-t.Wanted(c)-slack, c), absolute}
	case Move:
		if t.isFeed() {
			return []string{relativeFeed, t.line(t.Wanted(c), c)}
		}
		return []string{relative, t.line(t.Wanted(c), c), absolute}
	case ToUp:
		return []string{absolute, t.line(t.Wanted(c)-slack, c), t.line(t.Wanted(c), c)}
	case ToDown:
		return []string{absolute, t.line(t.Wanted(c)+slack, c), t.line(t.Wanted(c), c)}
	}
	return nil
}

func (t Test) line(length float64, c Card) string {
	says, speed := moveLine, t.speed(c)
	if speed > 0 {
		says = moveLineSpeed
	}
	return says.Fill("axis", t.letter(), "length", trial.Decimal(length), "speed", trial.Decimal(speed*unit.Minute))
}

// number is an entry as a number; 0 if it is none, or there is no such entry.
func (t Test) number(key string, row int) float64 {
	v, _ := t.Form.NumberOf(key, t.Form.Text(key, row))
	return v
}

// Wanted is what is commanded in the run of a card, in mm or °; of positions the target.
func (t Test) Wanted(c Card) float64 {
	if key := t.rowKey(); key != "" && key != "at" {
		return t.number(key, c.N)
	}
	return t.number(t.firstShown("asked,askeddeg", ""), 0)
}

// speed is that of the moves, in mm/s; 0 if it is not said.
func (t Test) speed(c Card) float64 {
	if t.rowKey() == "at" {
		if v := t.number("at", c.N); v > 0 {
			return v
		}
		return t.number("at", 0)
	}
	return t.number(t.firstShown("speed", ""), 0)
}

// mark is how far the mark is from the inlet, in mm.
func (t Test) mark(c Card) float64 {
	if key := t.Key(Card{Step: Mark, Check: c.Check}); key != "" {
		return t.number(key, c.N)
	}
	return t.number("mark", 0)
}

// Seconds is how long the lines of a card move; 0 if that is not known.
func (t Test) Seconds(c Card) float64 {
	speed := t.speed(c)
	if speed == 0 {
		return 0
	}
	way := 0.0
	switch c.Step {
	case Slack, Zero:
		way = slack
	case Move:
		way = math.Abs(t.Wanted(c))
	case Return:
		way = t.Wanted(c) + slack
	case ToUp:
		from := 0.0
		if c.N > 0 {
			from = t.Wanted(Card{Step: ToUp, N: c.N - 1})
		}
		way = math.Abs(t.Wanted(c)-slack-from) + slack
	case ToDown:
		way = 2 * slack
	}
	return way / speed
}
