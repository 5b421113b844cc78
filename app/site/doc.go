// Package site knows where the pages of the site lie, and what they are called.
package site
