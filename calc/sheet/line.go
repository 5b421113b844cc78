package sheet

import (
	"slices"
	"strings"

	"striderule/calc/word"
)

// What is wrong with a line for a controller. What came with a link may hold little, so
// that who reads it sees what it does: letters, digits and few signs, one command, each place once. Of what is
// typed here, only what would read as something else is doubted.

const (
	plainSigns = " .,:=+-_$\"'" // that a line from a link may hold beside letters and digits
	axisWords  = "XYZABCUVWE"
	numberEnds = "0123456789.-+"
)

// Doubts returns what may be wrong with the line, in sentences. It may name the axes of
// these letters, or any if there are none. If it came with a link, it may be refused.
func (t *Template) Doubts(axes string, fromLink bool) (says []string, refused bool) {
	active, _, _ := strings.Cut(t.Value, ";")
	say := func(what word.Template, parts ...string) {
		says = append(says, what.Fill(append(parts, "line", t.Value)...))
	}
	if fromLink {
		rest := t.Value
		for _, place := range t.places {
			if strings.Count(rest, place) > 1 {
				say(placeTwice, "place", place)
			}
			rest = strings.ReplaceAll(rest, place, "")
		}
		if at := strings.IndexFunc(rest, func(r rune) bool { return !isASCII(r) && !strings.ContainsRune(plainSigns, r) }); at >= 0 {
			say(oddSign, "sign", rest[at:at+1])
		}
	}
	if commands := commandsOf(active); len(commands) > 1 {
		say(manyCommands, "commands", strings.Join(commands, ", "))
	}
	for _, place := range t.places {
		if place != AxisPlace && t.besideNumber(active, place) {
			say(besideOther, "place", place)
		}
	}
	refused = fromLink && len(says) > 0
	if len(t.places) > 0 && strings.Contains(t.Value, t.places[0]) && !strings.Contains(active, t.places[0]) {
		say(onlyRemark, "place", t.places[0])
	}
	if slices.Contains(t.places, SpeedPlace) && !strings.Contains(active, SpeedPlace) {
		say(noSpeed, "place", SpeedPlace)
	}
	if letter := otherAxis(active, axes); letter != "" {
		say(namesAxis, "letter", letter)
	}
	return says, refused
}

// Several reports whether the line holds more than one command.
func (t *Template) Several() bool {
	active, _, _ := strings.Cut(t.Value, ";")
	return len(commandsOf(active)) > 1
}

// commandsOf finds the words that are commands whatever stands before them: G or M with a
// number, $ with anything, T at the beginning. Controllers ignore blanks within.
func commandsOf(line string) (found []string) {
	for i := range len(line) {
		end, from := i+1, skipBlanks(line, i+1)
		for at := from; at < len(line) && isDigit(line[at]); at++ {
			end = at + 1
		}
		switch line[i] {
		case 'G', 'M', 'g', 'm':
		case 'T', 't':
			if strings.TrimSpace(line[:i]) != "" {
				continue
			}
		case '$':
			end = max(end, min(i+2, len(line)))
			found = append(found, line[i:end])
			continue
		default:
			continue
		}
		if end > i+1 || from < len(line) && line[from] == '{' {
			found = append(found, line[i:end])
		}
	}
	return found
}

// besideNumber reports whether the number at a place would read as another one for what
// stands beside it.
func (t *Template) besideNumber(line, place string) bool {
	for from := 0; ; {
		at := strings.Index(line[from:], place)
		if at < 0 {
			return false
		}
		before, after := strings.TrimRight(line[:from+at], " "), line[from+at+len(place):]
		next := strings.TrimLeft(after, " ")
		if before != "" && strings.IndexByte(numberEnds, before[len(before)-1]) >= 0 ||
			next != "" && strings.IndexByte(numberEnds+"{*/", next[0]) >= 0 || after != "" && after[0]|0x20 == 'e' {
			return true
		}
		from += at + len(place)
	}
}

// otherAxis returns the first axis that a line gives a number to and that is none of axes.
func otherAxis(line, axes string) string {
	for i := range len(line) {
		letter := line[i] &^ 0x20
		if axes == "" || strings.IndexByte(axisWords, letter) < 0 || strings.IndexByte(axes, letter) >= 0 || i > 0 && (isASCII(rune(line[i-1])) && !isDigit(line[i-1]) || line[i-1] == '{') {
			continue
		}
		if at := skipBlanks(line, i+1); at < len(line) && strings.IndexByte(numberEnds+"{", line[at]) >= 0 {
			return string(rune(letter))
		}
	}
	return ""
}

func skipBlanks(line string, at int) int {
	for at < len(line) && line[at] == ' ' {
		at++
	}
	return at
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// isASCII reports whether a sign is a letter or a digit of ASCII.
func isASCII(r rune) bool {
	return 'a' <= r|0x20 && r|0x20 <= 'z' || '0' <= r && r <= '9'
}
