package run_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
	"striderule/calc/form"
	"striderule/calc/run"
)

func testOf(fragment string) run.Test {
	page, _ := calc.PageOf("measure")
	return run.Test{Form: calc.Load(page, fragment)}
}

// lineup are the cards of a test from one on, by Next, until it would branch.
func lineup(t run.Test) string {
	var names []string
	for c := t.Start(); c.Step != run.After && c.Step != run.Save; c = t.Next(c) {
		names = append(names, c.String())
	}
	return strings.Join(names, " ")
}

func TestWhereATestBegins(t *testing.T) {
	const heron = "v=1&steps=538.0&asked=80&speed=60&mark=105&tool=caliper-0.05"
	for fragment, want := range map[string]string{
		"":                         "ask-axis",
		"v=1&steps=538.0":          "ask-asked",
		"v=1&as=turn":              "ask-turn",
		heron:                      "ready-1",
		heron + "&done=filament":   "care",
		heron + "&card=move-3":     "move-3",
		heron + "&rest=28.7":       "after-1",
		heron + "&rest=28.7,,28.9": "after-3",
		heron + "&rest=28.7,28.9,28.6&restagain=25": "check-after-1",
		heron + "&card=zero-1":                      "ready-1", // is of another axis
		heron + "&card=read-0":                      "ready-1",
		heron + "&card=read-51":                     "ready-1",
		heron + "&card=read":                        "read-1",
		heron + "&card=check-care":                  "ready-1",
		heron + "&card=nowhere-2":                   "ready-1",
		heron + "&card=%E2%80%AE":                   "ready-1",
		heron + "&trial=speeds&card=check-read-1":   "ready-1", // has no check runs
	} {
		assert.Equal(t, want, testOf(fragment).Start().String(), fragment)
	}
}

func TestCardsOfARun(t *testing.T) {
	for fragment, want := range map[string]string{
		"v=1&steps=538.0&asked=80&mark=105&card=mark-2":                             "mark-2 move-2 read-2",
		"v=1&axis=travel&steps=80&asked=100&card=zero-2":                            "zero-2 move-2 read-2 return-2",
		"v=1&axis=travel&steps=80&trip=lengths&want=20&card=choose-1":               "choose-1 zero-1 move-1 read-1 return-1",
		"v=1&axis=travel&steps=80&trip=sides&target=10&card=to-up-1":                "to-up-1 up-1 to-down-1 down-1",
		"v=1&steps=538.0&asked=80&mark=105&rest=28,28&card=check-mark-1":            "check-mark-1 check-move-1 check-read-1",
		"v=1&steps=538.0&trial=speeds&asked=80&mark=105&at=60,90,120&card=choose-3": "choose-3 mark-3 move-3 read-3",
	} {
		assert.Equal(t, want, lineup(testOf(fragment)), fragment)
	}
}

func TestLinesToSend(t *testing.T) {
	for fragment, want := range map[string]string{
		"v=1&asked=80&speed=60&card=slack":                                         "M83|G1 E5 F60",
		"v=1&asked=80&speed=60&card=move-1":                                        "M83|G1 E80 F60",
		"v=1&asked=80&card=move-1":                                                 "M83|G1 E80",
		"v=1&asked=80&trial=speeds&at=60,120&card=move-2":                          "M83|G1 E80 F120",
		"v=1&axis=travel&asked=100&speed=600&card=zero-1":                          "G91|G1 X5 F600|G90",
		"v=1&axis=travel&asked=100&speed=600&card=return-1":                        "G91|G1 X-105 F600|G90",
		"v=1&axis=travel&asked=100&axisname=Y&machine=Plover&card=move-1":          "G91|G1 Y100|G90",
		"v=1&axis=travel&asked=100&linetravel=M92%20Z%7Bvalue%7D&card=move-1":      "G91|G1 Z100|G90",
		"v=1&axis=travel&trip=sides&target=10,50&speed=600&card=to-down-2":         "G90|G1 X55 F600|G1 X50 F600",
		"v=1&axis=rotary&askeddeg=90&card=move-1":                                  "G91|G1 A90|G90",
		"v=1&asked=80&line=M302%20E%7Bvalue%7D&card=move-1":                        "M83|G1 E80",
		"v=1&axis=travel&asked=100&linetravel=M92%20%D0%A5%7Bvalue%7D&card=move-1": "G91|G1 X100|G90",
		"v=1&asked=80&card=mark-1":                                                 "",
	} {
		c := testOf(fragment)
		assert.Equal(t, want, strings.Join(c.Lines(c.Start()), "|"), fragment)
	}
	c := testOf("v=1&asked=80&speed=60&card=move-1")
	assert.InDelta(t, 80, c.Seconds(c.Start()), 1e-9)
	c = testOf("v=1&asked=80&card=move-1")
	assert.Zero(t, c.Seconds(c.Start()), "without a speed nobody knows")
}

// An unlikely reading is asked about by what was read before, else by what is expected.
func TestUnlikelyReadings(t *testing.T) {
	const mark, travel = "v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05", "v=1&axis=travel&steps=80&asked=100"
	for _, of := range []struct{ sheet, text, says, instead string }{
		{mark + "&card=read-1", "28.7", "", ""},
		{mark + "&card=read-1", "25", "", ""},
		{mark + "&card=read-1", "8", "", ""}, // some fifth too much
		{mark + "&card=read-1", "287", "287 mm? It would have moved -182 mm, of 80 mm commanded.", "28.7"},
		{mark + "&card=read-1", "2,87", "2.87 mm? It would have moved 102.13 mm, of 80 mm commanded.", "28.7"},
		{mark + "&card=read-1", "65", "65 mm? It would have moved 40 mm, of 80 mm commanded.", ""},
		{mark + "&rest=28.7,28.9&card=read-3", "28.1", "", ""},
		{mark + "&rest=28.7,28.9&card=read-3", "33", "33 mm? It would have moved 72 mm, of 80 mm commanded.", ""},
		{mark + "&rest=65,65.2&card=read-3", "65.1", "", ""}, // as before, whatever the plan
		{mark + "&rest=28.7,60&aside=,yes&card=read-3", "28.8", "", ""},
		{mark + "&rest=28.7,28.9,28.6&restagain=&card=check-read-1", "40", "40 mm? It would have moved 65 mm, of 80 mm commanded.", ""},
		{mark + "&card=read-1", "x", "", ""}, // what that is the form says
		{travel + "&card=read-1", "980", "980 mm? It would have moved 980 mm, of 100 mm commanded.", "98"},
		{"v=1&axis=travel&steps=80&trip=sides&target=100&card=up-1", "10.004", "10.004 mm? The target was 100 mm.", "100.04"},
	} {
		c := testOf(of.sheet)
		says, instead := c.Doubts(c.Start(), of.text)
		assert.Equal(t, of.says, says, "%s: %s", of.sheet, of.text)
		assert.Equal(t, of.instead, instead, "%s: %s", of.sheet, of.text)
	}
}

// Entries with which an axis would leave its range, or a mark go in, are asked about; those that
// cannot be read let nothing move, and nobody else's template names the axis.
func TestWhatCouldGoWrongIsAsked(t *testing.T) {
	sides := testOf("v=1&axis=travel&steps=400&trip=sides&speed=600&card=choose-1")
	for text, want := range map[string]string{"0": "-5 mm", "2": "-3 mm", "-20": "-25 mm", "5": "", "100": ""} {
		says, _ := sides.Doubts(sides.Start(), text)
		if want == "" {
			assert.Empty(t, says, text)
		} else {
			assert.Equal(t, "On the way it goes to "+want+". Is there room, with no endstop in between?", says)
		}
	}
	mark := testOf("v=1&steps=538.0&asked=80&card=ask-mark")
	says, _ := mark.Doubts(mark.Start(), "70")
	assert.Contains(t, says, "the mark would go in")
	for fragment, want := range map[string]string{
		"v=1&steps=538.0&asked=80in&mark=105&speed=60&tool=rule":                "ask-mark",
		"v=1&steps=538.0&asked=-80&mark=105&speed=60&card=move-1":               "ask-asked",
		"v=1&steps=538.0&asked=80&mark=105&speed=-60&card=move-1":               "ask-speed",
		"v=1&axis=travel&steps=80&trip=sides&speed=600&tool=rule&card=to-up-4":  "ready-1",
		"v=1&axis=travel&steps=80&trip=lengths&speed=600&tool=rule&card=move-7": "ready-1",
		"v=1&axis=travel&steps=80&trip=sides&target=1e9&speed=600&card=to-up-1": "ask-tool",
		"v=1&steps=538.0&asked=80&mark=105&rest=28.7&speed=60&card=set":         "after-1", // there is nothing to set yet
	} {
		assert.Equal(t, want, testOf(fragment).Start().String(), fragment)
	}
	theirs := testOf("v=1&axis=travel&steps=80&asked=100&speed=600&linetravel=G1%20Z%7Bvalue%7D&card=move-1")
	assert.Equal(t, []string{"G91", "G1 X100 F600", "G90"}, theirs.Lines(theirs.Start()))
	assert.Contains(t, testOf("v=1&axis=travel&steps=80&trip=lengths").Says(run.Card{Step: run.Care}), "as far as you choose")
}

// Where two reasons to go on meet, the test's own runs come first; without room for more it ends.
func TestWhatIsNextAfterARun(t *testing.T) {
	for fragment, want := range map[string]string{
		"v=1&steps=538.0&asked=80&mark=105&rest=28.7&card=after-1":                                                                 "mark-2 result",
		"v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6&card=after-3":                                     "result mark-4",
		"v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6&planned=5&card=after-3":                           "mark-4 result",
		"v=1&steps=420&trial=speeds&read=fed&asked=50&tool=caliper-0.05&at=60,120,180,60,120,180&fed=47.5,47.55,47.5&card=after-3": "mark-4 result",
		"v=1&steps=538.0&asked=80&mark=105&rest=28" + strings.Repeat(",20,30", 24) + ",25&card=after-50":                           "result mark-50",
		"v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&rest=28.7,28.9,28.6&restagain=25,25.05,25&card=check-after-3":         "save check-mark-4",
	} {
		c := testOf(fragment)
		s := c.State(c.Start())
		assert.Equal(t, want, s.Next.String()+" "+s.Other.String(), fragment)
		assert.NotEmpty(t, s.Title)
		assert.NotEmpty(t, s.Says.String())
	}
}

// The card stands in addresses alone: not in a link that is shared, and not in what a sheet is.
func TestCardIsInNoLink(t *testing.T) {
	c := testOf("v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6&card=read-2")
	assert.Equal(t, "read-2", c.Form.Card())
	assert.Contains(t, c.Form.AddressFragment(), "card=read-2")
	shared, ok := c.Form.LinkFragment()
	require.True(t, ok)
	for _, fragment := range []string{shared, c.Form.Fragment(), c.Form.ShareFragment(), c.Form.ReplyFragment()} {
		assert.NotContains(t, fragment, form.CardKey+"=")
	}
	assert.Empty(t, c.Form.Problems())
}

// Whatever stands in an address, each card can be shown, and leads on.
func FuzzCards(f *testing.F) {
	for _, sheet := range sorts {
		for _, card := range []string{"ask-axis", "ready-1", "care", "slack", "choose-1", "mark-1", "zero-1", "move-1", "read-1", "return-1", "to-up-1", "down-1", "after-1", "still-1", "gone-1", "result", "set", "save", "check-read-1", "read-99", "-1", "check-"} {
			f.Add(sheet, card)
		}
	}
	f.Add("v=1&asked=1e308&speed=1e-9&mark=-5", "move-1")
	f.Add("v=1&axis=travel&trip=lengths&want=0,-5,1e9,x", "zero-2")
	f.Fuzz(func(t *testing.T, sheet, card string) {
		c := testOf(sheet)
		c.Form.SetCard(card)
		at := c.Start()
		for range 30 {
			require.NotContains(t, c.Says(at)+c.Hint(at)+c.Head(at), "{wanted")
			_, _, _, _, _ = c.Lines(at), c.Seconds(at), c.Cautions(at), c.Usual(at), c.Troubles(at)
			_, _ = c.Doubts(at, "28.7")
			for _, line := range c.Lines(at) {
				for _, r := range line {
					require.True(t, r >= ' ' && r <= '~', "%q is no line for a machine", line)
				}
				require.NotRegexp(t, `NaN|Inf|e[+-]?\d`, line)
			}
			if at.Step == run.After {
				require.NotEmpty(t, c.State(at).Title)
			}
			if at.Step == run.Ready {
				require.NotEmpty(t, c.Points(at))
			}
			again := at
			c.Form.SetCard(at.String())
			require.Equal(t, again, c.Start(), "an address leads back to its card")
			at = c.Next(at)
		}
	})
}
