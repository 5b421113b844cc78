package logbook

import (
	"strings"
	"unicode/utf16"
	"unicode/utf8"
)

// A kind is that of a value in JSON.
type kind int

const (
	aString kind = iota
	aNumber
	aBool
	aNull
	anObject
	aList
)

// A value is one in JSON.
type value struct {
	kind    kind
	at      int
	text    string   // of a string, decoded; of a number or a word as written
	members []member // of a list without keys
}

type member struct {
	key   string
	value value
}

// A fault is where JSON ends to be JSON.
type fault struct {
	at   int
	says string
}

// A scanner reads JSON (RFC 8259) from a text.
type scanner struct {
	text string
	at   int
	// Lines are counted on from the last place that was asked for.
	line, counted int
}

const blanks = " \t\r\n"

// lineOf returns the line of a position, counted from 1.
func (s *scanner) lineOf(at int) int {
	if at < s.counted {
		s.line, s.counted = 0, 0
	}
	s.line += strings.Count(s.text[s.counted:at], "\n")
	s.counted = at
	return s.line + 1
}

func (s *scanner) space() {
	for s.at < len(s.text) && strings.IndexByte(blanks, s.text[s.at]) >= 0 {
		s.at++
	}
}

func (s *scanner) take(c byte) bool {
	if s.at < len(s.text) && s.text[s.at] == c {
		s.at++
		return true
	}
	return false
}

func (s *scanner) fault(says string) *fault {
	if s.at >= len(s.text) {
		says = cutOffWithin
	}
	return &fault{s.at, says}
}

// deepest is how deep lists and objects may nest.
const deepest = 20

func (s *scanner) value(depth int) (value, *fault) {
	s.space()
	v := value{at: s.at}
	if depth > deepest {
		return v, s.fault(tooDeep)
	}
	if s.at == len(s.text) {
		return v, s.fault("")
	}
	switch c := s.text[s.at]; {
	case c == '"':
		text, bad := s.string()
		v.text = text
		return v, bad
	case c == '{':
		v.kind = anObject
		bad := s.object(&v, depth)
		return v, bad
	case c == '[':
		v.kind = aList
		bad := s.list(&v, depth)
		return v, bad
	}
	for s.at < len(s.text) && strings.IndexByte("+-.0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ_", s.text[s.at]) >= 0 {
		s.at++
	}
	v.text = s.text[v.at:s.at]
	switch {
	case v.text == "true" || v.text == "false":
		v.kind = aBool
	case v.text == "null":
		v.kind = aNull
	case v.text != "" && strings.Trim(v.text, "+-.0123456789eE") == "" && strings.ContainsAny(v.text, "0123456789"):
		v.kind = aNumber
	default:
		s.at = v.at
		return v, s.fault(noValue)
	}
	return v, nil
}

func (s *scanner) list(v *value, depth int) *fault {
	s.at++
	if s.space(); s.take(']') {
		return nil
	}
	for {
		of, bad := s.value(depth + 1)
		if bad != nil {
			return bad
		}
		v.members = append(v.members, member{value: of})
		s.space()
		if s.take(']') {
			return nil
		}
		if !s.take(',') {
			return s.fault(listEndless)
		}
	}
}

func (s *scanner) object(v *value, depth int) *fault {
	s.at++
	if s.space(); s.take('}') {
		return nil
	}
	for {
		s.space()
		key, bad := s.string()
		if bad != nil {
			return bad
		}
		if s.space(); !s.take(':') {
			return s.fault(noColonAfter.Fill("key", quote(key)))
		}
		of, bad := s.value(depth + 1)
		if bad != nil {
			return bad
		}
		v.members = append(v.members, member{key, of})
		s.space()
		if s.take('}') {
			return nil
		}
		if !s.take(',') {
			return s.fault(objectEndless.Fill("key", quote(key)))
		}
	}
}

// string reads a text in quotes.
func (s *scanner) string() (string, *fault) {
	if !s.take('"') {
		return "", s.fault(noQuote)
	}
	start := s.at
	for s.at < len(s.text) { // most texts have nothing to decode
		switch c := s.text[s.at]; {
		case c == '"':
			s.at++
			return strings.ToValidUTF8(s.text[start:s.at-1], string(utf8.RuneError)), nil
		case c == '\\':
			return s.decoded(start)
		case c < ' ':
			return "", s.fault(textEndless)
		}
		s.at++
	}
	return "", s.fault("")
}

const escapes, escaped = `"\/bfnrt`, "\"\\/\b\f\n\r\t"

// decoded reads a text on from its first escape.
func (s *scanner) decoded(start int) (string, *fault) {
	var b strings.Builder
	b.WriteString(s.text[start:s.at])
	for s.at < len(s.text) {
		c := s.text[s.at]
		switch {
		case c == '"':
			s.at++
			return strings.ToValidUTF8(b.String(), string(utf8.RuneError)), nil
		case c < ' ':
			return "", s.fault(textEndless)
		case c != '\\':
			b.WriteByte(c)
			s.at++
			continue
		}
		s.at++
		if s.at == len(s.text) {
			break
		}
		if i := strings.IndexByte(escapes, s.text[s.at]); i >= 0 {
			b.WriteByte(escaped[i])
			s.at++
			continue
		}
		r, ok := s.unit()
		if !ok {
			return "", s.fault(badEscape)
		}
		if utf16.IsSurrogate(r) {
			r = s.pair(r)
		}
		b.WriteRune(r)
	}
	return "", s.fault("")
}

// unit reads the uXXXX of an escape.
func (s *scanner) unit() (rune, bool) {
	if s.at+5 > len(s.text) || s.text[s.at] != 'u' {
		return 0, false
	}
	var r rune
	for _, c := range []byte(strings.ToLower(s.text[s.at+1 : s.at+5])) {
		d := strings.IndexByte(hexDigits, c)
		if d < 0 {
			return 0, false
		}
		r = r<<4 | rune(d)
	}
	s.at += 5
	return r, true
}

// pair returns the character of a surrogate and the one behind it, U+FFFD if
// they make none.
func (s *scanner) pair(first rune) rune {
	if !strings.HasPrefix(s.text[s.at:], `\u`) {
		return utf8.RuneError
	}
	back := s.at
	s.at++
	second, ok := s.unit()
	if r := utf16.DecodeRune(first, second); ok && r != utf8.RuneError {
		return r
	}
	s.at = back // the second one stands for itself
	return utf8.RuneError
}
