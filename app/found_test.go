//go:build !wasm

package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"striderule/app/pages"
)

// searches are phrases that people type, and the page that answers.
var searches = []struct{ phrase, page string }{
	{"calibrate steps per mm after a new extruder", "/"},
	{"extruder steps per mm wrong after new motor", "/swap/"},
	{"steps per mm with a 0.9 degree motor instead of 1.8", "/swap/"},
	{"change microsteps, new steps per mm", "/swap/"},
	{"convert travel per turn to steps per mm", "/convert/"},
	{"mm per revolution to steps per mm", "/convert/"},
	{"steps per degree of a rotary axis", "/convert/"},
	{"steps per mm from belt pulley", "/parts/"},
	{"calculate steps per mm for a lead screw", "/parts/"},
	{"extruder gear ratio steps per mm", "/swap/"},
	{"printer extrudes too little", "/measure/"},
	{"linear axis moves the wrong distance", "/measure/"},
	{"measure backlash of an axis", "/measure/"},
	{"extruder slip at high speed", "/measure/"},
	{"calibrate extruder step by step on the phone", "/run/"},
	{"calibrate flow from wall thickness", "/flow/"},
	{"flow by weight of a print", "/flow/"},
	{"motor loses steps at high speed step rate", "/rate/"},
	{"max pulses per second of a controller", "/rate/"},
	{"how many runs for a calibration test", "/plan/"},
	{"G-code for an extruder calibration test", "/plan/"},
	{"QR code label for machine settings", "/machines/"},
	{"printer calibration log", "/log/"},
	{"how accurate is a steps per mm calibration", "/method/"},
}

// small are words that no search goes by, and what people type for a sign, or for any of our pages.
const small = " a an after at by for from how is many of on per the to too with degree change max wrong printer "

// Each phrase has its main words in what a search goes by: the title of the page that answers, its
// description, and the question below its heading.
func TestFoundBySearch(t *testing.T) {
	texts := map[string]string{}
	for _, p := range sitePages() {
		page, err := pages.HTML(p, "")
		require.NoError(t, err)
		_, question, _ := strings.Cut(page, `class="question"`)
		question, _, _ = strings.Cut(question, "</p>")
		texts[p.Path] = strings.ToLower(p.Title + " " + p.Description + " " + question)
	}
	for _, s := range searches {
		for _, word := range strings.Fields(strings.ToLower(strings.ReplaceAll(s.phrase, ",", ""))) {
			if strings.Contains(small, " "+word+" ") {
				continue
			}
			for _, ending := range []string{"ion", "e", "es", "s"} {
				word = strings.TrimSuffix(word, ending)
			}
			assert.Contains(t, texts[s.page], word, "%s: %s", s.page, s.phrase)
		}
	}
	assert.Len(t, texts, len(sitePages()))
}
