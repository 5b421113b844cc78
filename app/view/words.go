package view

import "striderule/calc/word"

const (
	allRows     word.Template = "{table}: all {n}"
	copyText                  = "Copy"
	copyLine    word.Template = "Copy {label}: {text}"
	lineCopied  word.Template = "Copied {text}"
	copyLines   word.Template = "Copy {label}"
	linesCopied word.Template = "Copied: {label}"
	saveAs      word.Template = "Save as {file}"
	cameWith    word.Template = "{label} (came with the link or file)"
	tapAPoint                 = "Tap a point for its value."
	showValues                = "Show values"
)

// QR codes.
const (
	scanCode                  = "Scan it with a phone camera to open this sheet."
	codeTooLong word.Template = "This link is too long for a QR code ({n} characters, the limit is 2953). Copy the link or save a file."
	scanDense                 = "Scan it with a phone camera to open this sheet. It's a long link: hold the camera close, or zoom in."
	codeName                  = "QR code of the link to this sheet, the same that “Copy link” copies."
)

// units are the units that stand behind a space, or what they begin with.
const units = " % mm cm m in µm mm³ mm² cm³ g mg N mN V A mA H mH Ω mΩ tpi DP s ms min h Hz kHz rev steps pulses "
