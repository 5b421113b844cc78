// Package view shows what calc says: blocks, tables, charts, drawings, QR codes, the pieces of a
// form. It is pure: what it is handed is all that it knows.
package view
