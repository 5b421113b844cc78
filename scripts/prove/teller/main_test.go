package main

import (
	"bytes"
	"encoding/json"
	"os/exec"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/calc"
)

const heron = "measure/#v=1&steps=538.0&asked=80&mark=105&rest=28.7,28.9,28.6"

// objects answers addresses as JSON, and returns the objects.
func objects(t *testing.T, in string, addresses ...string) (all []map[string]any, ok bool) {
	t.Helper()
	var out bytes.Buffer
	ok, err := answerAll(addresses, strings.NewReader(in), &out, asObject)
	require.NoError(t, err)
	for line := range strings.Lines(out.String()) {
		var o map[string]any
		require.NoError(t, json.Unmarshal([]byte(line), &o), line)
		all = append(all, o)
	}
	return all, ok
}

func TestAnswer(t *testing.T) {
	all, ok := objects(t, "", heron)
	assert.True(t, ok)
	require.Len(t, all, 1)
	o := all[0]
	assert.Equal(t, "measure", o["page"])
	answer := o["answer"].(map[string]any)
	assert.Equal(t, "steps", answer["id"])
	assert.InEpsilon(t, 564.3356643356643, answer["value"], 1e-15)
	assert.InEpsilon(t, 2.807804, answer["u"], 1e-6)
	assert.Equal(t, "steps/mm", answer["unit"])
	assert.Equal(t, "change", answer["verdict"])
	assert.Equal(t, "Change it", answer["title"])
	assert.Equal(t, "New steps per mm", answer["label"])
	assert.Contains(t, answer["says"], "too little")
	assert.Nil(t, answer["keep"])
	figures := o["figures"].(map[string]any)
	assert.InDelta(t, 76.3, figures["moved-1"].(map[string]any)["value"], 1e-9)
	assert.Equal(t, "mm", figures["expect"].(map[string]any)["unit"])
	assert.Empty(t, o["problems"])
	assert.NotEmpty(t, o["notes"])
	assert.Contains(t, o["text"], "Change it: It fed")
	for _, key := range []string{"page", "answer", "figures", "problems", "notes", "text"} {
		assert.Contains(t, o, key)
	}
}

func TestVerdictsAsWords(t *testing.T) {
	const feed = "measure/#v=1&steps=538&asked=80&mark=105&tool="
	for address, want := range map[string]string{
		feed + "caliper-0.05&rest=25,25.1,25,25.1":                                                                "leave",
		feed + "caliper-0.05&rest=25.2,25.9,25.4":                                                                 "more",
		feed + "rule&rest=25,25,25":                                                                               "hopeless",
		"measure/#v=1&steps=415&asked=70&read=fed&fed=35.1,35,35.1&tool=caliper-0.05":                             "mistake",
		"convert/#v=1&as=turn&turn=5.948&angle=1.8&micro=16":                                                      "",
		"measure/#v=1&steps=415&asked=100&read=fed&fed=99.5,99.501,99.499,99.5,99.501,99.499&tool=own&step=0.001": "either",
	} {
		all, ok := objects(t, "", address)
		require.True(t, ok)
		answer := all[0]["answer"].(map[string]any)
		assert.Equal(t, want, answer["verdict"], address)
		if want == "leave" {
			assert.InEpsilon(t, 538, answer["keep"], 1e-15)
		}
	}
}

func TestAddressesFromStandardInput(t *testing.T) {
	all, ok := objects(t, "https://club.example/deep/"+heron+"\n\nwhat is this\nlook: http://other.example/swap/index.html#v=1&steps=8O\r\n", "plan/", "-")
	assert.False(t, ok)
	require.Len(t, all, 4)
	assert.Equal(t, []any{"plan", "measure", "", "swap"}, []any{all[0]["page"], all[1]["page"], all[2]["page"], all[3]["page"]})
	assert.Nil(t, all[0]["answer"], "nothing is typed")
	assert.Contains(t, all[2]["problems"].([]any)[0], "isn't a link to one of the calculators")
	assert.Contains(t, all[3]["problems"].([]any)[0], "“O” in “8O” isn't a unit")
}

// All that a page shows as figures is there, and so is what its text says.
func TestFiguresOfEveryPage(t *testing.T) {
	for _, p := range calc.Pages {
		a := of(p.Slug + "/#" + p.Example)
		report := calc.Load(p, p.Example).Report()
		require.NotNil(t, a.Answer, p.Slug)
		assert.Equal(t, report.Answer.Value, a.Figures[a.Answer.ID].Value, p.Slug)
		assert.Len(t, a.Figures, len(report.Figures()), p.Slug)
		assert.Contains(t, a.Text, strings.TrimSpace(report.String()))
	}
}

func TestLinesOfALinkAreMarked(t *testing.T) {
	a := of(heron + "&line=M104%20S300%20E%7Bvalue%7D&saw=steps:564.3356643")
	assert.Contains(t, a.Text, "Came with the link, to be read before it is sent: Command for your controller: M104 S300 E{value}")
	assert.Contains(t, a.Text, "Same result as when this sheet was sent")
}

// The script itself: its exit status, and plain text.
func TestScript(t *testing.T) {
	run := func(addresses ...string) (string, int) {
		c := exec.Command("../../answer", addresses...)
		out, err := c.Output()
		if err != nil {
			require.ErrorAs(t, err, new(*exec.ExitError))
		}
		return string(out), c.ProcessState.ExitCode()
	}
	out, code := run(heron)
	assert.Zero(t, code)
	assert.Contains(t, out, "New steps per mm: 564.3 ± 2.8 steps/mm")
	out, code = run("-json", "method/", heron)
	assert.Equal(t, 2, code)
	assert.Len(t, strings.Split(strings.TrimSpace(out), "\n"), 2, "the others are answered")
	_, code = run()
	assert.Equal(t, 2, code)
}
