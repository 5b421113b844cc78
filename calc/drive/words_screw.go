package drive

import "striderule/calc/word"

// Why a text designates no screw; see unit.Error.
const (
	notScrew     word.Template = "{field}: “{typed}” isn't a screw."
	likeScrew    word.Template = "Write it like Tr8x8(P2), M8x1.25, 8 mm (its lead), 2 mm x 4 (pitch x starts) or 20 tpi (threads per inch)."
	wholeStarts  word.Template = "The lead must be a whole number of pitches, as in Tr8x8(P2)."
	byThreads    word.Template = "Write an inch screw by its threads per inch: 20 tpi, or 20 tpi x 2 for two starts."
	threadsRange word.Template = "A screw has from {least} to {most} threads per inch."
)
