//go:build !wasm

package markup

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Clean turns what go-app prints of a component into HTML that says the
// same as the live page. go-app's printer
//   - writes attribute values as Go strings, so quotes, backslashes and some
//     spaces come out broken,
//   - writes attributes in the random order of a map,
//   - drops an empty alt, which says that a picture is decoration,
//   - writes the text of a text area as an attribute, where it means nothing,
//   - drops the value "true", which aria attributes need, and writes
//     checked="false", which is checked,
//   - puts line breaks and indentation between all elements, which the live page
//     doesn't have: inline neighbours would move by a space at the start,
//   - writes addresses from the site's root; up ("./", "../") makes them relative.
//
// It fails on markup that a browser would read differently.
func Clean(printed, up string) (string, error) {
	c := cleaner{rest: printed, up: up}
	for c.rest != "" {
		var err error
		switch {
		case strings.HasPrefix(c.rest, "<!"):
			err = fmt.Errorf("comments and declarations don't belong in a component: %.40q", c.rest)
		case strings.HasPrefix(c.rest, "</"):
			err = c.closing()
		case strings.HasPrefix(c.rest, "<"):
			err = c.opening()
		default:
			c.text()
		}
		if err != nil {
			return "", err
		}
	}
	if len(c.open) > 0 {
		return "", fmt.Errorf("<%s> is not closed", c.open[len(c.open)-1])
	}
	return c.out.String(), nil
}

type cleaner struct {
	rest string   // still to read
	open []string // elements that are open
	out  strings.Builder
	up   string
}

// void are the elements that have no closing tag.
var void = []string{"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "param", "source", "track", "wbr"}

// verbatim are the elements whose text keeps its line breaks. go-app doesn't
// indent a text that is an element's only child.
var verbatim = []string{"pre", "textarea"}

// text copies a text less the line breaks and indentation that go-app adds:
// a line break and two spaces for each open element before a child, and a line
// break after it.
func (c *cleaner) text() {
	end := strings.IndexByte(c.rest, '<')
	if end < 0 {
		end = len(c.rest)
	}
	text := c.rest[:end]
	c.rest = c.rest[end:]
	if n := len(c.open); n > 0 && slices.Contains(verbatim, c.open[n-1]) {
		if strings.TrimSpace(text) != "" { // else it stands around an element
			c.out.WriteString(text)
		}
		return
	}
	if indented, ok := strings.CutPrefix(text, "\n"); ok {
		indent := strings.Repeat("  ", len(c.open))
		text = strings.TrimPrefix(indented, indent)
		if last := strings.LastIndexByte(text, '\n'); last >= 0 && strings.Trim(text[last:], "\n ") == "" {
			text = text[:last]
		} else if strings.Trim(text, " ") == "" {
			text = "" // the indentation of a closing tag
		}
		text = strings.ReplaceAll(text, "\n"+indent, "")
	}
	c.out.WriteString(text)
}

func (c *cleaner) closing() error {
	end := strings.IndexByte(c.rest, '>')
	if end < 0 {
		return fmt.Errorf("unfinished tag %.40q", c.rest)
	}
	name := c.rest[2:end]
	if n := len(c.open); n == 0 || c.open[n-1] != name {
		return fmt.Errorf("</%s> closes nothing: open are %v", name, c.open)
	}
	c.open = c.open[:len(c.open)-1]
	c.out.WriteString(c.rest[:end+1])
	c.rest = c.rest[end+1:]
	return nil
}

var tagName = regexp.MustCompile(`^<([a-zA-Z][a-zA-Z0-9-]*)`)

func (c *cleaner) opening() error {
	m := tagName.FindStringSubmatch(c.rest)
	if m == nil {
		return fmt.Errorf("not a tag: %.40q", c.rest)
	}
	name := m[1]
	c.rest = c.rest[len(m[0]):]
	var attrs []string
	var text string // of a text area
	for {
		c.rest = strings.TrimLeft(c.rest, " \n")
		switch {
		case strings.HasPrefix(c.rest, ">"), strings.HasPrefix(c.rest, "/>"):
			if name == "img" && !slices.ContainsFunc(attrs, isAlt) {
				attrs = append(attrs, `alt=""`)
			}
			slices.Sort(attrs)
			c.out.WriteString("<" + strings.Join(append([]string{name}, attrs...), " "))
			selfClosed := c.rest[0] == '/'
			if selfClosed {
				c.out.WriteString("/")
			} else if !slices.Contains(void, name) {
				c.open = append(c.open, name)
			}
			c.out.WriteString(">" + text)
			c.rest = strings.TrimPrefix(strings.TrimPrefix(c.rest, "/"), ">")
			return nil
		default:
			attr, err := c.attribute()
			if err != nil {
				return fmt.Errorf("<%s>: %w", name, err)
			}
			if value, ok := strings.CutPrefix(attr, `value="`); ok && name == "textarea" {
				text = strings.TrimSuffix(value, `"`)
			} else if attr != "" {
				attrs = append(attrs, attr)
			}
		}
	}
}

func isAlt(attr string) bool { return strings.HasPrefix(attr, "alt=") }

var attrName = regexp.MustCompile(`^[a-zA-Z_:][a-zA-Z0-9_:.-]*`)

// booleans are the attributes whose mere presence means yes.
var booleans = []string{"async", "autofocus", "autoplay", "checked", "controls", "default", "defer", "disabled", "hidden",
	"ismap", "loop", "multiple", "muted", "novalidate", "open", "readonly", "required", "reversed", "selected"}

// wordTrue are the attributes, besides aria-*, whose yes is the word true.
var wordTrue = []string{"contenteditable", "draggable", "spellcheck"}

// urls are the attributes that hold an address.
var urls = []string{"action", "cite", "data", "formaction", "href", "poster", "src"}

// attribute reads one attribute and returns it as HTML, or "" for one to leave out.
func (c *cleaner) attribute() (string, error) {
	name := attrName.FindString(c.rest)
	if name == "" {
		return "", fmt.Errorf("not an attribute: %.40q", c.rest)
	}
	c.rest = c.rest[len(name):]
	quoted, hasValue := strings.CutPrefix(c.rest, "=")
	if !hasValue {
		if strings.HasPrefix(name, "aria-") || slices.Contains(wordTrue, name) {
			return name + `="true"`, nil
		}
		return name, nil
	}
	literal, err := strconv.QuotedPrefix(quoted)
	if err != nil || literal[0] != '"' {
		return "", fmt.Errorf("the value of %s is not in double quotes: %.40q", name, quoted)
	}
	c.rest = quoted[len(literal):]
	value, err := strconv.Unquote(literal)
	if err != nil {
		return "", fmt.Errorf("the value of %s: %w", name, err)
	}
	if value == "false" && slices.Contains(booleans, name) {
		return "", nil
	}
	if name == "style" {
		return "", fmt.Errorf("a style attribute is refused by the page's own policy: use a class")
	}
	if strings.HasPrefix(name, "on") {
		return "", fmt.Errorf("%s in the markup is refused by the page's own policy: use a handler", name)
	}
	if slices.Contains(urls, name) && strings.HasPrefix(value, "/") && !strings.HasPrefix(value, "//") {
		value = c.up + value[1:]
	}
	return name + `="` + escapeValue(value) + `"`, nil
}

var (
	reference = regexp.MustCompile(`^&(?:[a-zA-Z][a-zA-Z0-9]*|#[0-9]+|#[xX][0-9a-fA-F]+);`)
	special   = strings.NewReplacer(`"`, "&#34;", "<", "&lt;", ">", "&gt;")
)

// escapeValue escapes a value for double quotes. A character reference stays one:
// it comes from raw markup, which is HTML already.
func escapeValue(s string) string {
	var b strings.Builder
	for i, part := range strings.Split(s, "&") {
		if i > 0 {
			if reference.MatchString("&" + part) {
				b.WriteString("&")
			} else {
				b.WriteString("&amp;")
			}
		}
		b.WriteString(special.Replace(part))
	}
	return b.String()
}
