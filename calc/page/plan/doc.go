// Package plan is the page that plans a test: how long, how often, with which moves.
package plan
