package main

import (
	"striderule/calc"
	"striderule/calc/sheet"
)

// A shot is one picture: a page, on a screen, from an element on, or only that
// element.
type shot struct {
	name          string
	path          string
	width, height int64 // of the screen, in CSS pixels
	scale         float64
	at            string  // selector of what stands at its top
	gap           float64 // what is left around it, in CSS pixels
	whole         bool    // only the element, all of it
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

// slips is a feed test at three speeds, where it feeds less the faster it is asked to.
const slips = "/measure/#v=1&trial=speeds&steps=538.0&asked=80&mark=105&at=60,60,60,120,120,120,240,240,240&rest=28.7,28.9,28.6,29.2,29.5,29.3,30.7,30.9,30.6&tool=caliper-0.05"

var shots = []shot{
	{name: "start-phone", path: "/", width: phone, height: 740, scale: 2, at: "body"},
	{name: "measure-phone", path: example("measure"), width: phone, height: 740, scale: 2, at: ".answer", gap: 16},
	{name: "run-phone", path: "/run/#" + calc.Run.Example + "&card=read-3", width: phone, height: 740, scale: 2, at: "body"},
	{name: "measure-desk", path: example("measure"), width: 1200, height: 760, scale: 1, at: "body"},
	{name: "chart", path: slips, width: phone, height: 740, scale: 2, at: "#chart-speeds", gap: 12, whole: true},
	{name: "drawing", path: example("parts"), width: phone, height: 740, scale: 2, at: ".drawing", gap: 12, whole: true},
}

// phone is how wide a small phone is.
const phone = 360
