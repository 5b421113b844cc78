package trial

import (
	"math"

	"striderule/calc/unit"
	"striderule/calc/word"
)

// A Misreading is another way to take readings that are far off as they stand: that way they
// come near what was commanded.
type Misreading struct {
	Asks         word.Template // whether they are to be taken so
	Asked, Moved float64       // what they are then, in mm or °; Moved is 0 where that cannot be told
}

// An axis may well be off by as much as nearRead, and by no more than nearUnit where a unit was
// another one, whose factor a common mistake may come near as well.
const (
	nearRead = 0.15
	nearUnit = 0.08
	nearTurn = 0.03 // of a dial that starts anew with each turn any reading is near some turn
)

// What remains of a mark some 20 mm behind the commanded length is this share of it, most likely.
const leastLeft, mostLeft = 0.05, 0.4

// means are the means of what remained to the mark, 0 where the length itself was read, and of
// what moved.
func means(runs []Run) (rest, moved float64) {
	runs = Counted(runs)
	for _, r := range runs {
		rest += r.Rest / float64(len(runs))
		moved += r.Moved / float64(len(runs))
	}
	return rest, moved
}

// OddFrom is the error from which on readings may be meant otherwise.
const OddFrom = 0.1

// Misreadings returns the ways in which readings of one length or angle may be meant otherwise:
// such as leave less than half of the error.
func Misreadings(sort string, asked float64, runs []Run) (all []Misreading) {
	rest, moved := means(runs)
	off := math.Abs(moved/asked - 1)
	try := func(asks word.Template, asked, moved, near float64) {
		if now := math.Abs(moved/asked - 1); now <= near && now < off/2 {
			all = append(all, Misreading{asks, asked, moved})
		}
	}
	if sort == "rotary" {
		try(turnsRead, asked, moved*unit.Turn, nearUnit)
		try(turnsAsked, asked*unit.Turn, moved, nearUnit)
		if n := math.Round((asked - moved) / unit.Turn); n >= 1 && moved <= unit.Turn && len(all) == 0 {
			try(turnsLost, asked, moved+n*unit.Turn, nearTurn)
		}
		return all
	}
	if rest > 0 {
		try(fedAsRest, asked, rest, nearRead)
		try(inchesRead, asked, moved+rest-rest*unit.Inch, nearUnit)
	} else {
		if sort == "feed" && moved >= leastLeft*asked && moved <= mostLeft*asked {
			all = append(all, Misreading{Asks: restAsFed, Asked: asked})
		}
		try(inchesRead, asked, moved*unit.Inch, nearUnit)
	}
	try(inchesAsked, asked*unit.Inch, moved, nearUnit)
	return all
}

// AlikeFromBothEnds reports whether what remained may as well be what was fed: the mark was at
// about twice the length.
func AlikeFromBothEnds(asked float64, runs []Run) bool {
	rest, _ := means(runs)
	return rest > 0 && math.Abs(rest/asked-1) <= nearRead
}
