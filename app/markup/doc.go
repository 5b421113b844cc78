// Package markup mends the HTML that go-app prints, when the site is built.
package markup
