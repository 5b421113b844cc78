// Package language makes the site in another language: a copy of the module in which each text
// stands in that language. The site itself knows one language, and weighs no more for another.
package language

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/tools/go/packages"
)

// A Text is what a person reads, as it stands in a file of the module.
type Text struct {
	File     string // from the module's root, with slashes
	Name     string // what the code calls it: of a constant, a field, a part of a call
	Says     string
	from, to int // where its literal stands in the file, in bytes
}

// Room is the folder that a text is of: where two rooms say the same in English, another language
// may need two sentences.
func (t Text) Room() string { return filepath.ToSlash(filepath.Dir(t.File)) }

// A source is a file of the module with the texts in it, in order.
type source struct {
	file    string
	content []byte
	texts   []Text
}

// folders are those whose files hold what the site says.
var folders = []string{"app", "calc", "web"}

// no are names of what stands in words files beside the texts: keys of links, IDs, units, numbers,
// and titles that older versions stored.
var no = []string{"ID", "Key", "Word", "Fragment", "units", "usual", "verdictsOnce", "Language"}

// isUnit reports whether a text is a unit, or several, and no word.
func isUnit(t Text) bool { return t.Name == "Unit" && !twoWords.MatchString(t.Says) }

var twoWords = regexp.MustCompile(`[a-z] [a-z]`)

// same is what every language writes alike: what has no letters, millimetres, the site's name, G-code,
// names of files, clauses.
var same = regexp.MustCompile(`^\P{L}*$|^ ?mm(/s)?$|^Striderule$|^[GM]\d+\b|^[\w-]+\.\w+$|^(ISO|JCGM|IEC) [\d.,\- H]+$`)

// textsOf is what files say, in their order.
func textsOf(sources []source) (all []Text) {
	for _, s := range sources {
		all = append(all, s.texts...)
	}
	return all
}

// read reads the files of the module at root that hold what the site says, with their texts.
func read(root string) (sources []source, err error) {
	byWords, err := ofWords(root)
	if err != nil {
		return nil, err
	}
	for _, folder := range folders {
		err := filepath.WalkDir(filepath.Join(root, folder), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			content, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			file, err := filepath.Rel(root, path)
			s := source{file: filepath.ToSlash(file), content: content}
			switch filepath.Ext(path) {
			case ".go":
				s.texts = slices.DeleteFunc(slices.Clone(byWords), func(t Text) bool { return t.File != s.file })
			case ".js":
				s.texts = ofScript(s.file, string(content))
			case ".webmanifest":
				s.texts = ofManifest(s.file, content)
			}
			sources = append(sources, s)
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return sources, nil
}

// ofScript finds the words of a script.
func ofScript(file, script string) (all []Text) {
	texts := textsOfScript(script)
	from, to := wordsOfScript(script, texts)
	for _, t := range texts {
		if from < t.at && t.at < to {
			all = append(all, Text{File: file, Name: keyBefore(script[:t.at]), Says: t.text, from: t.at + 1, to: t.at + 1 + len(t.text)})
		}
	}
	return all
}

var lastKey = regexp.MustCompile(`(\w+):[^:]*$`)

// keyBefore is the last key of an object that stands before something.
func keyBefore(script string) string {
	if m := lastKey.FindStringSubmatch(script); m != nil {
		return m[1]
	}
	return ""
}

var described = regexp.MustCompile(`"description": "([^"]*)"`)

// ofManifest finds the description of the site.
func ofManifest(file string, manifest []byte) (all []Text) {
	for _, at := range described.FindAllSubmatchIndex(manifest, -1) {
		all = append(all, Text{File: file, Name: "description", Says: string(manifest[at[2]:at[3]]), from: at[2], to: at[3]})
	}
	return all
}

// ofWords finds the texts of all words files of the module at root.
func ofWords(root string) ([]Text, error) {
	loaded, err := packages.Load(&packages.Config{
		Dir:  root,
		Mode: packages.NeedName | packages.NeedFiles | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports | packages.NeedExportFile,
	}, "./app/...", "./calc/...")
	if err != nil {
		return nil, err
	}
	var all []Text
	for _, p := range loaded {
		if len(p.Errors) > 0 {
			return nil, p.Errors[0]
		}
		for _, file := range p.Syntax {
			path := p.Fset.Position(file.Pos()).Filename
			if !strings.HasPrefix(filepath.Base(path), "words") {
				continue
			}
			rel, err := filepath.Rel(root, path)
			if err != nil {
				return nil, err
			}
			w := walk{info: p.TypesInfo}
			ast.PreorderStack(file, nil, func(n ast.Node, stack []ast.Node) bool {
				l, ok := n.(*ast.BasicLit)
				if !ok || l.Kind != token.STRING {
					_, isImport := n.(*ast.ImportSpec)
					return !isImport
				}
				says, _ := strconv.Unquote(l.Value)
				all = append(all, Text{File: filepath.ToSlash(rel), Name: w.name(l, stack), Says: says, from: p.Fset.Position(l.Pos()).Offset, to: p.Fset.Position(l.End()).Offset})
				return true
			})
		}
	}
	return slices.DeleteFunc(all, func(t Text) bool {
		return slices.Contains(no, t.Name) || isUnit(t) || same.MatchString(t.Says) && t.Name != "decimalMark"
	}), nil
}

// A walk knows the types of what it goes through.
type walk struct{ info *types.Info }

// name is what the code calls a piece of itself, by what stands around it, innermost last.
func (w walk) name(n ast.Node, stack []ast.Node) string {
	if len(stack) == 0 {
		return ""
	}
	around, outer := stack[len(stack)-1], stack[:len(stack)-1]
	switch a := around.(type) {
	case *ast.ValueSpec:
		return a.Names[max(0, slices.Index(a.Values, n.(ast.Expr)))].Name
	case *ast.KeyValueExpr:
		lit, _ := outer[len(outer)-1].(*ast.CompositeLit)
		switch w.info.TypeOf(lit).Underlying().(type) {
		case *types.Struct:
			return a.Key.(*ast.Ident).Name
		case *types.Map:
			if a.Key == n {
				return "Key"
			}
		}
		return w.name(lit, outer[:len(outer)-1])
	case *ast.CompositeLit:
		at := slices.Index(a.Elts, n.(ast.Expr))
		switch of := w.info.TypeOf(a).Underlying().(type) {
		case *types.Struct:
			return of.Field(at).Name()
		case *types.Array:
			if table, ok := outer[len(outer)-1].(*ast.CompositeLit); ok && at == 0 && strings.HasSuffix(w.info.TypeOf(table).String(), "word.Table") {
				return "Key"
			}
		}
		return w.name(a, outer)
	case *ast.CallExpr:
		if of, ok := w.info.TypeOf(a.Fun).(*types.Signature); ok {
			if at := slices.Index(a.Args, n.(ast.Expr)); at >= 0 {
				return of.Params().At(min(at, of.Params().Len()-1)).Name()
			}
		}
		return w.name(a, outer)
	case ast.Expr:
		return w.name(a, outer)
	}
	return fmt.Sprintf("%T", around)
}
