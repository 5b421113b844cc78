package calculator

import (
	"striderule/app/browser"
	"striderule/calc/form"
	"striderule/calc/report"
)

// When each part of a page follows the last edit, in ms. The answer, and what hands it on,
// show at once: see editByKey.
const (
	reportAfter  = 120  // the rest of the report, and the form
	addressAfter = 300  // the address
	restAfter    = 1000 // what screen readers are told, and the comparison
	pauseAfter   = 1500 // what is wrong with a field that somebody is still in
	longestWait  = 1000 // since the first of several: the address, of a page that may be ended
)

// A settling is a calculator between an edit and a page that is wholly about it. Of a
// phone's time for a key, what nobody reads while typing would take the most: so its parts
// follow one by one, each only if no other edit has come by then.
type settling struct {
	edits int // counts them

	report   report.Report // what stands below the answer shows it
	reported int           // the edit that it is about

	comparison *form.Comparison // with the sheet as it was received; nil if nothing differs
	compared   int              // the edit that it is about

	unwritten bool   // the address is behind
	behind    int    // counts how often it has been
	said      string // what screen readers were told last

	later func(milliseconds int, do func()) // browser.After, but in tests
	now   func(do func())                   // do changes the page
}

// edited begins anew: the address is behind from here on, and the page knows. It is written
// in time even where typing does not pause.
func (s *settling) edited(write func()) {
	s.edits++
	if s.unwritten {
		return
	}
	s.unwritten = true
	browser.AddressWaits()
	s.behind++
	behind := s.behind
	s.later(longestWait, func() {
		if s.unwritten && behind == s.behind {
			s.now(write)
		}
	})
}

// after does something some milliseconds after the last edit, unless another one followed.
// It asks that before it disturbs the page: each change costs a rendering.
func (s *settling) after(milliseconds int, do func()) {
	edit := s.edits
	s.later(milliseconds, func() {
		if edit == s.edits {
			s.now(func() {
				if edit == s.edits {
					do()
				}
			})
		}
	})
}

// show makes what stands below the answer be about this report, of the entries as they are.
func (s *settling) show(r report.Report) { s.report, s.reported = r, s.edits }

// isBehind reports whether all but the answer is about entries before.
func (s *settling) isBehind() bool { return s.reported != s.edits }

// compare takes a comparison of the entries as they are.
func (s *settling) compare(c *form.Comparison) { s.comparison, s.compared = c, s.edits }

// isCompared reports whether the comparison is about the entries as they are.
func (s *settling) isCompared() bool { return s.compared == s.edits }
