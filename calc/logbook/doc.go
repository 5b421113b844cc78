// Package logbook is the machine log: sheets that a person saved, by machine and
// axis, with what came out of them. It knows neither where they are stored nor
// how they are shown.
//
// An Entry is kept as one line of text (Entry.Text, Read), in the form of a
// link's fragment:
//
//	log=1&id=1k2m&date=2026-11-25T10:03&machine=Heron&axis=feed&page=measure&sheet=v%3D1%26steps%3D538.0…
//
// A Book holds entries, and goes out as one file of JSON with an entry a line
// (WriteFile, ReadFile), or as a table for spreadsheets (CSV):
//
//	{"log":"striderule","version":1,"entries":[
//	{"id":"1k2m","date":"2026-11-25T10:03","machine":"Heron","axis":"feed","page":"measure","sheet":"v=1&steps=538.0…"},
//	{"id":"9z3c","date":"2026-11-26","machine":"Heron",…}
//	]}
//
// Both have the same keys: those of Fields. A sheet alone goes out as a file of
// its own, which opens again on its page (WriteSheet, ReadSheet; SheetFields), and
// the rows of a form as a table (RowsCSV). Reading is total: whatever is
// damaged is reported, and the rest is read. What a newer version has added to an
// entry is kept with it.
//
// An entry holds keys and no words: axis=feed, output=steps and verdict=change are put into
// words when they are shown (names.go). Until December 2026 it held labels: axis=Feed,
// verdict=Change%20it, label=New%20setting… Such entries stay as they are, and are shown by
// the same names as new ones (testdata/before has some of all kinds).
//
// A copy of the site of before that reads entries of now whole, writes them again letter by
// letter, and shows their keys as if they were words: “feed”, “change”, and no name of the
// result. It lists the axis feed beside its own Feed, each with a trend of its own, where
// here they are one.
package logbook
