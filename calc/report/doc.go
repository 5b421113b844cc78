// Package report is an answer as data: a headline, parts made of blocks, figures at full
// precision, charts and drawings without pixels, and the same as plain text. A view shows
// it; nothing is worked out there.
package report
