package machine

import (
	"strings"

	"striderule/calc/link"
)

// betweenStages stands in one cell between the teeth of several gear stages.
const betweenStages = " "

// Most is how many axes a link is read up to.
const Most = 50

// Join makes one link of axes, of at most so many characters: as many of them as fit, from the
// first on. It returns how many these are.
func Join(axes []Axis, most int) (fragment string, fit int) {
	for fit = min(len(axes), Most); fit > 0; fit-- {
		if fragment = joined(axes[:fit]); len(fragment) <= most {
			return fragment, fit
		}
	}
	return "", 0
}

func joined(axes []Axis) string {
	pieces := []link.Piece{{Key: "v", Cells: []string{link.Version}}}
	for _, key := range keys {
		var cells []string
		end := 0
		for i, a := range axes {
			cells = append(cells, strings.Join(link.CellsOf(a, key), betweenStages))
			if cells[i] != "" {
				end = i + 1
			}
		}
		if end > 0 {
			pieces = append(pieces, link.Piece{Key: key, Cells: cells[:end]})
		}
	}
	return link.Join(pieces)
}

// Split reads axes from a link of Join. It leaves out those without a machine's name or a setting, and
// what there is more than Most: left is how many.
func Split(fragment string) (axes []Axis, left int) {
	pieces := link.Split(fragment)
	names := len(link.CellsOf(pieces, "machine"))
	for i := range min(names, Most) {
		own := []link.Piece{{Key: "v", Cells: []string{link.TextOf(pieces, "v")}}}
		for _, p := range pieces {
			if i >= len(p.Cells) || p.Key == "v" {
				continue
			}
			cells := p.Cells[i : i+1]
			if p.Key == "driving" || p.Key == "driven" {
				cells = strings.Split(cells[0], betweenStages)
			}
			own = append(own, link.Piece{Key: p.Key, Cells: cells})
		}
		if a, ok := Read(link.Join(own)); ok {
			axes = append(axes, a)
		}
	}
	return axes, names - len(axes)
}
