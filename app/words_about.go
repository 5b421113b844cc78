//go:build !wasm

package main

import "striderule/calc/word"

// about is what search engines and link previews say of each page, by its folder: in the words
// that people type who look for it (TestFoundBySearch).
var about = word.Table{
	{"", "Free calculators for 3D printers and small CNC machines: calibrate steps per mm after a new motor, extruder, pulley, belt or lead screw, convert it to travel per motor turn, and see what else changes."},
	{"measure", "It extrudes too little, or a linear axis moves the wrong distance? Measure, and get the new steps per mm or travel per motor turn; tells extruder slip at high speed and backlash from a wrong setting."},
	{"run", "Calibrate the extruder or an axis with your phone at the machine, one step at a time: mark, send, wait, read. It counts down each move, keeps the screen awake, and says when it's enough."},
	{"convert", "Steps per mm, or per degree of a rotary axis, to travel per motor turn (mm per revolution) or per output turn, and back, for one axis or a whole table of them."},
	{"swap", "A new motor (0.9° instead of 1.8°), other microsteps, a new gear ratio, pulley, belt or screw, on an extruder or any axis: which settings change, which stay, and the new steps per mm."},
	{"parts", "Calculate steps per mm and travel per motor turn from motor, microsteps, gear ratio and belt pulley, lead screw, rack, drive gear or rotary table; and back, from a setting to the part."},
	{"plan", "How long, how slow and how many runs a calibration test of an extruder or axis needs to be as certain as you want, with the moves as G-code and a checklist."},
	{"rate", "Does a motor stutter or lose steps at high speed? The step rate (pulses per second) that your speeds and microsteps need, and the top speed at the controller's limit."},
	{"flow", "Calibrate the flow when steps per mm is right: from the wall thickness of a print, its weight or the filament diameter, with its ±."},
	{"machines", "The settings of your printers and other machines, axis by axis: typed once, used on every page, with a label with a QR code for each."},
	{"log", "The calibrations of your printer or machine that you saved, on this device only, and how each result drifts over time."},
	{"method", "How a calibration test gives the new steps per mm, how accurate it is and why you can trust it; formulas with sources, a worked example, cautions and a glossary."},
}
