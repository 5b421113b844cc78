package trim

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestOneElementFailsLoudly(t *testing.T) {
	const generated = `package app

import "strings"

type HTMLA interface {
	HTML
	Class(v ...string) HTMLA
}

func A() HTMLA {
	e := &htmlA{
		htmlElement: htmlElement{
			tag:           "a",
			isSelfClosing: false,
		},
	}

	return e
}

type htmlA struct {
	htmlElement
}

func (e *htmlA) Class(v ...string) HTMLA {
	e.setAttr("class", strings.Join(v, " "))
	return e
}
`
	second := strings.ReplaceAll(generated[strings.Index(generated, "type HTMLA"):], `"a"`, `"b"`)
	second = strings.NewReplacer("HTMLA", "HTMLB", "htmlA", "htmlB", "A()", "B()").Replace(second)
	two := generated + "\n" + second
	file := tree{"a.go": []byte(two)}
	require.NoError(t, oneElement{file: "a.go"}.apply(file))
	got := string(file["a.go"])
	assert.Contains(t, got, "HTMLB = *htmlElement\n")
	assert.Contains(t, got, "func B() HTMLB { return &htmlElement{tag: \"b\", isSelfClosing: false} }\n")
	assert.Equal(t, 1, strings.Count(got, ") Class("))

	for _, c := range []struct{ name, old, new, says string }{
		{"another body", `func (e *htmlB) Class(v ...string) HTMLB {`, `func (e *htmlB) Class(v ...string) HTMLB { e.setAttr("b", "")`, "Class of htmlB is not that of htmlA"},
		{"other values", `func (e *htmlB) Class(v ...string)`, `func (e *htmlB) Class(v string)`, "Class of htmlB is not that of htmlA"},
		{"a field of its own", "type htmlB struct {\n\thtmlElement\n}", "type htmlB struct {\n\thtmlElement\n\tb int\n}", "htmlB holds more than htmlElement"},
		{"made otherwise", "e := &htmlB{", "e := &htmlB{b: 1,", "func B makes its element in a new way"},
		{"set afterwards", "\te := &htmlB{", "\tprintln()\n\te := &htmlB{", "func B makes its element in a new way"},
		{"no constructor", "func B() HTMLB {", "func (e *htmlB) make() HTMLB {", "2 interfaces, 2 types and 1 constructors"},
		{"a variable", "type HTMLB interface", "var b int\n\ntype HTMLB interface", "is no element"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(two, c.old))
			err := oneElement{file: "a.go"}.apply(tree{"a.go": []byte(strings.Replace(two, c.old, c.new, 1))})
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
		})
	}
	err := oneElement{"a.go", "htmlB", []string{"Class", "Text"}}.apply(tree{"a.go": []byte(two)})
	require.Error(t, err)
	assert.Contains(t, err.Error(), "htmlB has 1 of the methods [Class Text]")
}

func TestCutTakesWhatItsImportsWereFor(t *testing.T) {
	src := "package a\n\nimport (\n\t\"io\"\n\t\"math/rand/v2\"\n\t\"strings\"\n)\n\n// gone goes.\ntype gone struct{ io.Reader }\n\n// Read too.\nfunc (g *gone) Read() int { return rand.Int() }\n\ntype kept struct{}\n\nfunc (kept) one() {}\n\n// two of it goes.\nfunc (k kept) two() {}\n\nfunc three() string { return strings.ToUpper(\"\") }\n"
	files := tree{"a.go": []byte(src)}
	require.NoError(t, cut{"a.go", []string{"gone", "kept.two"}}.apply(files))
	assert.Equal(t, "package a\n\nimport (\n\t\"strings\"\n)\n\ntype kept struct{}\n\nfunc (kept) one() {}\n\nfunc three() string { return strings.ToUpper(\"\") }\n", string(files["a.go"]))

	err := cut{"a.go", []string{"kept.three"}}.apply(files)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "a.go has no kept.three")
}

func TestUntaggedKeepsTheSentence(t *testing.T) {
	files := tree{"a.go": []byte("package a\n\nimport \"reflect\"\n\nvar e = New(\"a\").\n\tWithTag(\"b\", reflect.TypeOf(f(1))).\n\tWithTag(\"c\", 2).\n\tWrap(d)\n")}
	require.NoError(t, untagged{"a.go"}.apply(files))
	assert.Equal(t, "package a\n\nvar e = New(\"a\").\n\tWrap(d)\n", string(files["a.go"]))

	err := untagged{"a.go"}.apply(files)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "a.go has no tags")
}

func TestNarrowFailsLoudly(t *testing.T) {
	root := moduleRoot(t)
	dir, err := goApp.dir(root)
	require.NoError(t, err)
	plain, err := goApp.read(dir)
	require.NoError(t, err)
	const file = "pkg/app/html_gen.go"
	require.NoError(t, oneElement{file, "htmlTextarea", []string{"Text", "Textf"}}.apply(plain))
	whole := string(plain[file])
	for _, c := range []struct{ name, old, new, says string }{
		{"another list", "Attr(n string, v any)", "Attr(n string, w any)", "10 of 11 known lists"},
		{"one more", "func (e *htmlElement) Attr(", "func (e *htmlElement) More(a, b any) {\n}\n\nfunc (e *htmlElement) Attr(", "still has any: func (e *htmlElement) More(a, b any)"},
		{"another format", `e.setAttr("lang", FormatString(format, v...))`, `e.setAttr("lang", FormatString(format, v))`, "still has FormatString"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(whole, c.old))
			err := narrow{file}.apply(tree{file: []byte(strings.Replace(whole, c.old, c.new, 1))})
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.says)
		})
	}
}
