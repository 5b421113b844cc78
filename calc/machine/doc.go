// Package machine is the axes of machines: what is said of each once, and used on every page. It
// knows neither where they are stored nor how they are shown.
//
// An Axis is a sheet of Calibrate without readings, with whose it is. It is stored, and travels, as
// the link to that sheet:
//
//	v=1&steps=538.0&asked=80&mark=105&tool=caliper-0.05&angle=1.8&micro=16&machine=Heron&axisname=extruder&id=k3x9&set=2026-11-29
//
// Several travel in one link as parallel lists (Join, Split); a list within a list, as the teeth of
// several gear stages, has spaces in it:
//
//	v=1&axis=,travel&steps=538.0,88.9&driving=12,18%2020&machine=Heron,Plover&axisname=extruder,X&…
//
// Reading is total: what is no fact of an axis is left out, and what a fact may be says the form
// that it is filled into.
package machine
