package language

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// root is that of the module.
const root = "../../../"

// goErrors are packages whose errors no person reads: who shows one has words of its own for
// it, by which error it is (errors.Is). What a typed text is refused with is a unit.Error,
// whose words are held like all others.
var goErrors = []string{"calc/distribution", "calc/drive", "calc/measure", "calc/simulation"}

// noWords are packages that say nothing to people.
var noWords = []string{
	"app/browser", // names of what is asked of the page
	"app/markup",  // HTML
	"calc/calctest",
	"calc/lists",
}

// samples are files whose texts are nobody's words.
var samples = []string{
	root + "app/calculator/look.go", root + "app/view/specimens.go", // a page for who works on the style sheet, no part of the site
}

// said are literals that people read: two words, a word with a space at its end, a word that
// begins large.
var said = regexp.MustCompile(`\pL[\pL’'-]*[,.:;)”}%]* [(“{±]?\pL|^ \pL|\pL[,.:;)]* $|^\p{Lu}\p{Ll}+[.:!?]?$`)

// markupTags are the tags of HTML, and what a template puts in.
var markupTags = regexp.MustCompile(`<[^<>]*>|{{[^{}]*}}`)

// isSaid reports whether people read a literal: one of HTML holds nothing but tags, one of
// classes nothing but what the style sheet has rules for.
func isSaid(text string) bool {
	if strings.Contains(text, "<") {
		text = markupTags.ReplaceAllString(text, "")
	}
	return said.MatchString(text) && !areClasses(text)
}

// unstyled are classes that scripts and tests ask for, and no rule.
var unstyled = []string{"counted", "found", "same", "trend"}

var styleClasses = sync.OnceValue(func() []string {
	sheet, err := os.ReadFile(root + "web/style.css")
	if err != nil {
		panic(err)
	}
	classes := slices.Clone(unstyled)
	for _, m := range regexp.MustCompile(`\.([a-z][a-z0-9-]*)`).FindAllStringSubmatch(string(sheet), -1) {
		classes = append(classes, m[1])
	}
	return classes
})

// areClasses reports whether a text is made of classes; the last may be the beginning of one.
func areClasses(text string) bool {
	for _, word := range strings.Fields(text) {
		if !slices.ContainsFunc(styleClasses(), func(class string) bool {
			return class == word || strings.HasSuffix(word, "-") && strings.HasPrefix(class, word)
		}) {
			return false
		}
	}
	return true
}

// TestWords holds that what the program says stands in the words files of its packages, each
// sentence whole: not put together by code, and with parts that are no sentences. It writes
// the list of all strings with their places to .build/words.txt.
//
//	go test ./scripts/make/language -run TestWords -v
func TestWords(t *testing.T) {
	var packages []wordPackage
	for _, dir := range packageDirs(t) {
		if !slices.Contains(noWords, dir) {
			packages = append(packages, readWords(t, dir))
		}
	}
	declared := map[string]string{} // the text of a name, with its package's before it
	n, list := 0, &strings.Builder{}
	for _, p := range packages {
		for name, text := range p.declared {
			declared[p.name+"."+name] = text
		}
		for _, l := range p.words {
			n++
			fmt.Fprintf(list, "%s\t%s\n", l.place, l.text)
		}
	}
	require.NoError(t, os.MkdirAll(root+".build", 0o755))
	require.NoError(t, os.WriteFile(root+".build/words.txt", []byte(list.String()), 0o644))
	t.Logf("%d texts in words files: .build/words.txt", n)
	for _, p := range packages {
		for _, f := range p.faults(declared) {
			t.Error(f)
		}
	}
}

func packageDirs(t *testing.T) []string {
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}}", "striderule/calc/...", "striderule/app/...").CombinedOutput()
	require.NoError(t, err, string(out))
	var dirs []string
	for _, path := range strings.Fields(string(out)) {
		dirs = append(dirs, strings.TrimPrefix(path, "striderule/"))
	}
	return dirs
}

type wordPackage struct {
	dir, name string
	fset      *token.FileSet
	files     map[string]*ast.File
	declared  map[string]string
	words     []literal // in its words files
}

type literal struct{ place, text string }

func isWordsFile(path string) bool {
	return strings.HasPrefix(filepath.Base(path), "words")
}

func readWords(t *testing.T, dir string) wordPackage {
	p := wordPackage{dir: dir, fset: token.NewFileSet(), files: map[string]*ast.File{}, declared: map[string]string{}}
	paths, err := filepath.Glob(filepath.Join(root, dir, "*.go"))
	require.NoError(t, err)
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(p.fset, path, nil, parser.SkipObjectResolution)
		require.NoError(t, err)
		p.files[path], p.name = file, file.Name.Name
		if !isWordsFile(path) {
			continue
		}
		for _, d := range file.Decls {
			gen, ok := d.(*ast.GenDecl)
			if !ok {
				continue
			}
			for _, s := range gen.Specs {
				if value, ok := s.(*ast.ValueSpec); ok {
					for i, name := range value.Names {
						p.declared[name.Name] = ""
						if i < len(value.Values) {
							if l, ok := value.Values[i].(*ast.BasicLit); ok {
								p.declared[name.Name] = text(l)
							}
						}
					}
				}
			}
		}
		for _, l := range literals(file) {
			if said.MatchString(text(l)) || strings.ContainsAny(text(l), "{ ") {
				p.words = append(p.words, literal{p.place(l), text(l)})
			}
		}
	}
	return p
}

func (p wordPackage) place(n ast.Node) string {
	at := p.fset.Position(n.Pos())
	return strings.TrimPrefix(filepath.ToSlash(at.Filename), root) + ":" + strconv.Itoa(at.Line)
}

func text(l *ast.BasicLit) string {
	s, err := strconv.Unquote(l.Value)
	if err != nil {
		return l.Value
	}
	return s
}

// literals are the strings of a file, without imports, tags and what a bug says.
func literals(file *ast.File) (all []*ast.BasicLit) {
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			ast.Inspect(n.Type, func(ast.Node) bool { return true })
			return n.Tag == nil
		case *ast.CallExpr:
			if called(n) == "panic" {
				return false
			}
		case *ast.BasicLit:
			if n.Kind == token.STRING {
				all = append(all, n)
			}
		}
		return true
	})
	return all
}

// ofError reports whether a literal is what errors.New makes an error of.
func ofError(file *ast.File, l *ast.BasicLit) (found bool) {
	ast.Inspect(file, func(n ast.Node) bool {
		if c, ok := n.(*ast.CallExpr); ok && called(c) == "New" && len(c.Args) == 1 && c.Args[0] == ast.Expr(l) {
			found = true
		}
		return !found
	})
	return found
}

// called is the name of what is called, without its package or receiver.
func called(c *ast.CallExpr) string {
	switch f := c.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

// fills are the calls that put parts into a template.
var fills = []string{"Fill", "Say", "ParaOf", "TipNote", "DoubtNote", "CautionNote"}

func (p wordPackage) faults(declared map[string]string) (faults []string) {
	say := func(n ast.Node, format string, args ...any) {
		faults = append(faults, p.place(n)+": "+fmt.Sprintf(format, args...))
	}
	// word is the text of a name of a words file, here or elsewhere.
	word := func(e ast.Expr) (string, bool) {
		switch e := e.(type) {
		case *ast.Ident:
			text, ok := p.declared[e.Name]
			return text, ok
		case *ast.SelectorExpr:
			if of, ok := e.X.(*ast.Ident); ok {
				text, ok := declared[of.Name+"."+e.Sel.Name]
				return text, ok
			}
		case *ast.CallExpr:
			return "", slices.Contains(fills, called(e))
		}
		return "", false
	}
	for path, file := range p.files {
		if slices.Contains(samples, filepath.ToSlash(path)) {
			continue
		}
		if !isWordsFile(path) {
			for _, l := range literals(file) {
				if isSaid(text(l)) && !(slices.Contains(goErrors, p.dir) && ofError(file, l)) {
					say(l, "%q is said outside of the words file", text(l))
				}
			}
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				if n.Op != token.ADD {
					return true
				}
				for _, side := range []ast.Expr{n.X, n.Y} {
					if _, ok := word(side); ok {
						say(n, "a text is glued to another")
					} else if l, ok := side.(*ast.BasicLit); ok && l.Kind == token.STRING && isSaid(text(l)) {
						say(n, "%q is glued to another text", text(l))
					}
				}
			case *ast.CallExpr:
				if called(n) == "panic" { // what a bug says
					return false
				}
				if strings.HasPrefix(called(n), "Sprint") && !isWordsFile(path) {
					say(n, "a text is printed together")
				}
				if !slices.Contains(fills, called(n)) {
					return true
				}
				template, parts := filledBy(n)
				if whole, ok := word(template); ok && strings.Contains(whole, "{") {
					for _, f := range amiss(whole, parts) {
						say(n, "%q: %s", whole, f)
					}
				}
				for _, part := range n.Args[min(1, len(n.Args)):] {
					if l, ok := part.(*ast.BasicLit); ok && said.MatchString(text(l)) {
						say(l, "the part %q is not a name, a number or a unit", text(l))
					}
					if text, ok := word(part); ok && (strings.HasSuffix(text, ".") || strings.Contains(text, "{") && !isCode(text)) {
						say(part, "the part %q is a sentence", text)
					}
				}
			}
			return true
		})
	}
	slices.Sort(faults)
	return faults
}

// isCode reports whether a text is a line for a machine, whose places look like parts: it
// begins with a word of G-code.
func isCode(text string) bool { return gcode.MatchString(text) }

var gcode = regexp.MustCompile(`^[GM]\d+ `)

// filledBy is the template that a call fills, and the names and parts that it is given; no
// parts where some come from elsewhere.
func filledBy(c *ast.CallExpr) (template ast.Expr, parts []ast.Expr) {
	parts = c.Args
	if f, ok := c.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "Fill" {
		template = f.X
	} else if len(parts) > 0 {
		template, parts = parts[0], parts[1:]
	}
	if c.Ellipsis.IsValid() {
		return nil, nil
	}
	return template, parts
}

var partName = regexp.MustCompile(`\{(\w+)\}`)

// amiss says which parts a template is not given. More may be given than one of several
// templates has.
func amiss(template string, parts []ast.Expr) (faults []string) {
	var given []string
	for i := 0; i < len(parts); i += 2 {
		if l, ok := parts[i].(*ast.BasicLit); ok {
			given = append(given, text(l))
		}
	}
	for _, m := range partName.FindAllStringSubmatch(template, -1) {
		if !slices.Contains(given, m[1]) {
			faults = append(faults, "{"+m[1]+"} is not given")
		}
	}
	return faults
}

func TestWordsFaults(t *testing.T) {
	dir := t.TempDir()
	for name, source := range map[string]string{
		"words.go": `package x
const long = "It is {n} long."
const glued = "It is " + long`,
		"code.go": `package x
func f() {
	a := "so it is"
	b := long + "."
	c := Say(long, "n", "a long way")
	d := DoubtNote(long, "n", long)
	e := long.Fill("m", "3")
	panic("this is a bug")
}`,
	} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(source), 0o644))
	}
	here, err := os.Getwd()
	require.NoError(t, err)
	rel, err := filepath.Rel(filepath.Join(here, root), dir)
	require.NoError(t, err)
	p := readWords(t, rel)
	var without []string
	for _, f := range p.faults(nil) {
		_, rest, _ := strings.Cut(f, ".go:")
		without = append(without, rest)
	}
	assert.Equal(t, []string{
		`3: "so it is" is said outside of the words file`,
		`4: a text is glued to another`,
		`5: "a long way" is said outside of the words file`,
		`5: the part "a long way" is not a name, a number or a unit`,
		`6: the part "It is {n} long." is a sentence`,
		`7: "It is {n} long.": {n} is not given`,
		`3: "It is " is glued to another text`,
		`3: a text is glued to another`,
	}, without)
}
