package link

import (
	"strconv"
	"strings"
)

// A link says of its own entries how many characters they have and a check of them, so
// that a page can tell whether all of them came, and as they were sent. That makes certain
// what else would be a guess: whether a space was put in, or a decimal comma is one. The sum
// stands behind the sender's result, in front of the entries. An older copy of the site reads
// the result and passes over the sum; of `remark`, a line of text that goes with a reply, it
// says that it isn't a field, and keeps it.

// What parts a link's entries in the text that its sum is of. No entry holds such
// characters: it is one line.
const (
	nextPiece = "\x00"
	nextKey   = "\x01"
	nextCell  = "\x02"
)

// sumBits is how much of a sum is the check.
const sumBits = 28

// Sum is what a link says of its pieces: those of the version and of the result aside, their
// length and a check (FNV-1a, 32 bits, folded), in digits to the base of 36.
func Sum(pieces []Piece) string { return sumOf(flat(pieces)) }

func sumOf(text string) string {
	check := uint32(2166136261)
	for i := range len(text) {
		check = (check ^ uint32(text[i])) * 16777619
	}
	check = check>>sumBits ^ check&(1<<sumBits-1)
	return strconv.FormatUint(uint64(len(text))<<sumBits|uint64(check), 36)
}

// Missing returns how many characters fewer the pieces have than the sum says; below 0 if
// they have more. It is false for what is no sum.
func Missing(pieces []Piece, sum string) (n int, ok bool) {
	v, err := strconv.ParseUint(sum, 36, 60)
	text := flat(pieces)
	if endsInEscape(text) { // there it was cut
		text = text[:strings.LastIndexByte(text, '%')]
	}
	return int(v>>sumBits) - len(text), err == nil
}

// flat is the text of all pieces that a sum is of.
func flat(pieces []Piece) string {
	var b strings.Builder
	for _, p := range pieces {
		if isEntry(p) {
			b.WriteString(nextPiece + p.Key)
			mark := nextKey
			for _, c := range p.Cells {
				b.WriteString(mark + c)
				mark = nextCell
			}
		}
	}
	return b.String()
}

func isEntry(p Piece) bool { return p.Key != "v" && p.Key != ClaimKey }

// piecesOf takes a flat text apart.
func piecesOf(text string) []Piece {
	var pieces []Piece
	for _, piece := range strings.Split(text, nextPiece)[1:] {
		key, list, found := strings.Cut(piece, nextKey)
		p := Piece{Key: key}
		if found {
			p.Cells = strings.Split(list, nextCell)
		}
		pieces = append(pieces, p)
	}
	return pieces
}

// Resummed are pieces with the sum of what they are now, where they had that of what they were.
func Resummed(was, pieces []Piece) []Piece {
	summed := append([]Piece(nil), pieces...)
	for i, p := range summed {
		if sum := sumIn(p); sum != "" && sum == Sum(was) {
			parts := strings.Split(strings.Join(p.Cells, ","), ":")
			parts[4] = Sum(pieces)
			summed[i] = Piece{Key: p.Key, Cells: []string{strings.Join(parts, ":")}}
		}
	}
	return summed
}

// sumIn returns the sum that a link's result carries, empty if it has none.
func sumIn(claim Piece) string {
	parts := strings.Split(strings.Join(claim.Cells, ","), ":")
	if claim.Key != ClaimKey || len(parts) < 5 {
		return ""
	}
	return parts[4]
}
