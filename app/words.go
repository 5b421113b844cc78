package main

import "striderule/calc/sheet"

// The pages, in the menu and for search engines; the calculators say theirs themselves.
const (
	startMenu = "Start"
	siteTitle = "Striderule: calibrate steps/mm after a hardware change"
	logMenu   = "Log"
	logName   = "Machine log"
)

// The start page.
const (
	whatChanged  = "What changed, or what is off?"
	startIntro   = "Put steps per mm right after a hardware change. Everything is worked out on your device, even offline."
	yourMachines = "Your machines"
	allMachines  = "All machines"
	testGoesOn   = "Go on with your test"
	gotALink     = "Somebody sent me a link"
	pasteALink   = "Just open it. Or paste it here, or the plain text of a post: several lines are fine, and links from any copy of this site work."
	openPasted   = "Open"
	notALink     = "That's neither a link to one of these pages nor the plain text of a post. A link looks like …/measure/#v=1&…"
	gotAFile     = "Got a file instead? Drop it here, or choose it:"
)

// occasions head the situations of the start page, by sheet.Occasion.
var occasions = [...]string{sheet.Changed: "I changed a part", sheet.Off: "Something is off", sheet.SettingUp: "I'm setting up or checking"}
