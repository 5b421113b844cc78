// Package frame is what all pages have: head, menu and foot, how a page is arrived at and built in
// slices, and buttons that do what they show.
package frame
