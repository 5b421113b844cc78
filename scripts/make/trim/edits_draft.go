package trim

// draftEdits let the page be changed in one call: see added/go-app/pkg/app/draft.go.txt.
var draftEdits = []edit{
	replace{"pkg/app/attribute.go", "\t\tjsElement.Set(name, value)\n", "\t\tjsElement.set(name, value)\n"},
	replace{"pkg/app/attribute.go", "jsElement.Set(\"contentEditable\", value)", "jsElement.set(\"contentEditable\", value)"},
	replace{"pkg/app/attribute.go", "jsElement.Set(\"isMap\", toBool(value))", "jsElement.turn(\"isMap\", toBool(value))"},
	replace{"pkg/app/attribute.go", "jsElement.Set(\"readOnly\", toBool(value))", "jsElement.turn(\"readOnly\", toBool(value))"},
	replace{"pkg/app/attribute.go", "jsElement.Set(name, toBool(value))", "jsElement.turn(name, toBool(value))"},
	replace{"pkg/app/attribute.go", "jsElement.Call(\"setAttribute\", name, value)", "jsElement.setAttribute(name, value)"},
	replace{"pkg/app/attribute.go", "jsElement.Call(\"removeAttribute\", name)", "jsElement.removeAttribute(name)"},
	// All that the engine asks the page for.
	replace{"pkg/app/engine.go", "\tbody, err := e.nodes.Update(e.baseContext(), e.body, Body().privateBody(v))\n\tif err != nil {\n",
		"\tvar body UI\n\terr := drawn(func() (err error) {\n\t\tbody, err = e.nodes.Update(e.baseContext(), e.body, Body().privateBody(v))\n\t\treturn err\n\t})\n\tif err != nil {\n"},
	replace{"pkg/app/engine.go", "\t\tif _, err := e.nodes.UpdateComponentRoot(e.baseContext(), c); err != nil {\n",
		"\t\tif err := drawn(func() error { _, err := e.nodes.UpdateComponentRoot(e.baseContext(), c); return err }); err != nil {\n"},
	// Our pages have no markup that go-app does not make.
	replace{"pkg/app/node.go", `	wrapper, _ := Window().createElement("div", "")
	wrapper.setInnerHTML(v.value)
	v.jsElement = wrapper.firstChild()
	wrapper.removeChild(v.jsElement)
	return v, nil
`, "\treturn nil, errors.New(\"raw HTML is not made by drafts\")\n"},
}
