package trim

import "strings"

// importEdits stand in for packages of the standard library of which go-app needs
// little, and that come with much: fmt formats anything by reflection, net/url
// knows hosts as net/netip has them, os and what is below it open files.
var importEdits = []edit{
	// Errors are a sentence, tags and a cause, as one line of text. There is neither
	// line of the code nor JSON.
	drop{"pkg/errors/errors.go"},
	// What is logged is an error that a person can't help.
	drop{"pkg/app/log.go"},

	// A browser has no environment; what stands for it is asked of the page.
	replace{"pkg/app/app.go", "return os.Getenv(k)", "return \"\""},
	replace{"pkg/app/app.go", "\t\"os\"\n", ""},

	instead("pkg/app/app.go", "fmt", "nofmt"),
	instead("pkg/app/strings.go", "fmt", "nofmt"),
	instead("pkg/app/text.go", "fmt", "nofmt"),
	instead("pkg/app/context.go", "net/url", "nourl"),
	instead("pkg/app/engine.go", "net/url", "nourl"),
	instead("pkg/app/js.go", "net/url", "nourl"),
	instead("pkg/app/js_wasm.go", "net/url", "nourl"),
	instead("pkg/app/js_nowasm.go", "net/url", "nourl"),
	instead("pkg/app/testing.go", "net/url", "nourl"),

	replace{"pkg/app/node.go", "\t\"html\"\n", ""},
	replace{"pkg/app/node.go", "html.EscapeString(v.value)", "escapeHTML(v.value)"},

	// Sorting by keys is for ranges over a map, of which there are none.
	replace{"pkg/app/range.go", "\t\"sort\"\n", "\t\"slices\"\n"},
	replace{"pkg/app/range.go", "sort.Strings(keys)", "slices.Sort(keys)"},

	// An exported field of a component is text, numbers, slices and structs of them:
	// reflect.DeepEqual does much more.
	cut{"pkg/app/node.go", []string{"canUpdateValue"}},
}

// instead imports a package of ours by the name of the one that it stands in for.
func instead(file, imported, ours string) edit {
	name := imported[strings.LastIndex(imported, "/")+1:]
	return replace{file, "\t\"" + imported + "\"\n", "\t" + name + " \"" + goAppPath + "/pkg/" + ours + "\"\n"}
}
