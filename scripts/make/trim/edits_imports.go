package trim

import "strings"

// importEdits stand in for packages of the standard library of which go-app needs
// little, and that come with much: fmt formats anything by reflection, net/url
// knows hosts as net/netip has them, os and what is below it open files.
var importEdits = []edit{
	// Errors are a sentence and a cause, as one line of text. There is neither
	// line of the code nor JSON.
	drop{"pkg/errors/errors.go"},
	untagged{"pkg/app/node.go"},
	untagged{"pkg/app/engine.go"},
	untagged{"pkg/app/context.go"},
	// What is logged is an error that a person can't help.
	drop{"pkg/app/log.go"},

	// A browser has no environment; what stands for it is asked of the page.
	replace{"pkg/app/app.go", "return os.Getenv(k)", "return \"\""},
	replace{"pkg/app/app.go", "\t\"os\"\n", ""},

	instead("pkg/app/app.go", "fmt", "nofmt"),
	instead("pkg/app/context.go", "net/url", "nourl"),
	instead("pkg/app/engine.go", "net/url", "nourl"),
	instead("pkg/app/testing.go", "net/url", "nourl"),

	replace{"pkg/app/node.go", "\t\"html\"\n", ""},
	replace{"pkg/app/node.go", "html.EscapeString(v.value)", "escapeHTML(v.value)"},

	// The engine runs as long as its page: nothing ends it, and a component's context
	// is no context.Context, with its times and texts.
	replace{"pkg/app/app.go", "newEngine(context.Background(),\n\t\t&routes,", "newEngine(&routes,"},
	replace{"pkg/app/app.go", "\t\"context\"\n", ""},
	replace{"pkg/app/testing.go", "newEngine(context.Background(),\n\t\t&routes,", "newEngine(&routes,"},
	replace{"pkg/app/testing.go", "\t\"context\"\n", ""},
	replace{"pkg/app/context.go", "\tcontext.Context\n\n", ""},
	replace{"pkg/app/context.go", "\t\"context\"\n", ""},
	replace{"pkg/app/engine.go", "newEngine(ctx context.Context, routes", "newEngine(routes"},
	replace{"pkg/app/engine.go", "\tctx context.Context\n\n", ""},
	replace{"pkg/app/engine.go", "\t\tctx:            ctx,\n", ""},
	replace{"pkg/app/engine.go", "\t\tContext:               e.ctx,\n", ""},
	replace{"pkg/app/engine.go", "\t\"context\"\n", ""},

	// Time is told by the browser's timers alone.
	cut{"pkg/app/engine.go", []string{"engineX.Start"}},
	cut{"pkg/app/context.go", []string{"Context.After"}},

	// Ranges over anything take reflection; our pages have loops.
	drop{"pkg/app/range.go"},
	replace{"pkg/app/node.go", "\n\t\tcase RangeLoop:\n\t\t\treplaceElemAt(i, elem.body()...)\n", ""},
	replace{"pkg/app/node.go", "\t\tif elem == nil {\n\t\t\tremoveELemAt(i)\n\t\t}\n", ""},
	replace{"pkg/app/node.go", "if elemValue := reflect.ValueOf(elem); elemValue.Kind() == reflect.Pointer && elemValue.IsNil() {", "if isNil(elem) {"},

	// An exported field of a component is text, numbers, slices and structs of them:
	// reflect.DeepEqual does much more.
	cut{"pkg/app/node.go", []string{"canUpdateValue"}},
	// So do setting a field, and asking for a value or for where a function begins.
	replace{"pkg/app/node.go", "if _, compoStruct := field.Interface().(Compo); compoStruct {", "if field.Type() == compoType {"},
	replace{"pkg/app/node.go", "field.Set(newField)", "setValue(field, newField)"},
	replace{"pkg/app/event.go", "reflect.ValueOf(h.goHandler).Pointer() == reflect.ValueOf(v.goHandler).Pointer()", "code(h.goHandler) == code(v.goHandler)"},
	replace{"pkg/app/event.go", "import \"reflect\"\n", ""},
}

// instead imports a package of ours by the name of the one that it stands in for.
func instead(file, imported, ours string) edit {
	name := imported[strings.LastIndex(imported, "/")+1:]
	return replace{file, "\t\"" + imported + "\"\n", "\t" + name + " \"" + goAppPath + "/pkg/" + ours + "\"\n"}
}
