package main

import (
	"striderule/calc"
	"striderule/calc/sheet"
)

// A shot is one picture: a page, on a small phone, from an element on.
type shot struct {
	name string
	path string
	at   string  // selector of what stands at its top
	gap  float64 // what is left above it, in CSS pixels
}

func page(slug string) sheet.Page {
	for _, p := range calc.Pages {
		if p.Slug == slug {
			return p
		}
	}
	panic("camera: no page " + slug)
}

// example is a calculator's address with its example.
func example(slug string) string { return "/" + slug + "/#" + page(slug).Example }

var shots = []shot{
	{name: "measure-phone", path: example("measure"), at: ".answer", gap: 16},
	{name: "run-phone", path: "/run/#" + calc.Run.Example + "&card=read-3", at: "body"},
}
