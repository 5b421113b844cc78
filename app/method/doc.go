// Package method is the page that says where the numbers come from: formulas, a worked example, the
// formats of links and files, cautions and a glossary.
package method
