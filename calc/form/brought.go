package form

import (
	"slices"
	"strings"

	"striderule/calc/report"
	"striderule/calc/sheet"
)

// A link may come from anybody, and a line for a machine can heat it or switch a guard
// off. So a template that came with a link is shown as what it is, and nothing made of it
// is offered to copy or save until somebody here has accepted that very text. What the page
// itself suggests needs that not. One that could hide what it does is not made use of at all;
// who means it types it here, where the same is doubted.

// template returns a field's template as it stands in the form, trimmed; empty if it is no
// such field. Also of one that is hidden, which a choice may bring back.
func (f *Form) template(field sheet.Field) string {
	if _, ok := field.Template(); !ok {
		return ""
	}
	return strings.TrimSpace(f.Text(field.Key, 0))
}

// noteBrought notes the templates of a link that has just been read.
func (f *Form) noteBrought() {
	f.brought, f.theirs, f.accepted = map[string]bool{}, map[string]string{}, map[string]string{}
	for _, field := range f.fields {
		if t := f.template(field); t != "" && !slices.Contains(field.Suggest, t) {
			f.brought[field.Key], f.theirs[field.Key] = true, t
		}
	}
}

// typedOver ends that a template is a stranger's: when it was emptied, begun anew, or
// replaced by a suggestion. One that was only changed stays theirs, and one that an undo
// brings back is theirs again.
func (f *Form) typedOver(field sheet.Field, text string) {
	text = strings.TrimSpace(text)
	switch theirs := f.theirs[field.Key]; {
	case len(text) <= 1 || slices.Contains(field.Suggest, text):
		delete(f.brought, field.Key)
	case theirs != "" && strings.Contains(text, theirs):
		f.brought[field.Key] = true
	}
}

// Brought returns the templates that came with the link and that nobody has accepted, in
// the order of their fields. One with a problem is none: nothing is made of it.
func (f *Form) Brought() []report.TemplateText { return f.templates(true) }

// IsBrought reports whether a field holds a template that came with the link and that nobody has
// accepted.
func (f *Form) IsBrought(key string) bool { return f.brought[key] }

// Own returns the templates that were typed here, or accepted.
func (f *Form) Own() []report.TemplateText { return f.templates(false) }

func (f *Form) templates(brought bool) []report.TemplateText {
	var all []report.TemplateText
	for _, field := range f.fields {
		if t := f.template(field); t != "" && f.brought[field.Key] == brought && !slices.Contains(field.Suggest, t) && f.ProblemAt(field.Key, 0) == "" {
			all = append(all, report.TemplateText{Key: field.Key, Label: field.Label, Text: t})
		}
	}
	return all
}

// Accept has what is made of a field's template offered, if this is the very text of it.
func (f *Form) Accept(key, text string) {
	if field, ok := f.Field(key); ok && f.template(field) == text {
		delete(f.brought, key)
		delete(f.theirs, key)
		f.accepted[key] = text
		f.solve()
	}
}

// TakeBack ends that a field's template is accepted.
func (f *Form) TakeBack(key string) {
	if text := f.accepted[key]; text != "" {
		delete(f.accepted, key)
		f.brought[key], f.theirs[key] = true, text
		f.solve()
	}
}

// markLines puts before what is made of templates which of them came with the link, and
// what may be wrong with them. What is made of one that is not accepted is marked, and of
// one that cannot be it is left out.
func (f *Form) markLines() {
	for i := range f.report.Parts {
		part := &f.report.Parts[i]
		told := map[string]bool{}
		var blocks []report.Block
		for _, b := range part.Blocks {
			code, ok := b.(report.Code)
			if ok && len(code.Of) > 0 {
				var before []report.Block
				before, ok = f.mark(&code, told)
				blocks = append(blocks, before...)
				if !ok {
					continue
				}
				b = code
			}
			blocks = append(blocks, b)
		}
		part.Blocks = blocks
	}
}

// mark returns what stands before a Code, of templates that were not told of yet, and
// whether the Code itself can stand there.
func (f *Form) mark(code *report.Code, told map[string]bool) (before []report.Block, ok bool) {
	lines := [report.Accepted + 1][]report.TemplateText{}
	state := report.ToAccept
	for _, key := range code.Of {
		field, _ := f.Field(key)
		t, _ := field.Template()
		text := f.template(field)
		if text == "" || !f.Visible(field, 0) {
			continue
		}
		says, refused := t.Doubts(code.Axes, f.brought[key])
		code.Brought = code.Brought || f.brought[key]
		if refused {
			state = report.Refused
		}
		if told[key] {
			continue
		}
		told[key] = true
		line := report.TemplateText{Key: key, Label: field.Label, Text: text}
		if f.brought[key] {
			lines[report.ToAccept] = append(lines[report.ToAccept], line)
		} else if f.accepted[key] == text {
			lines[report.Accepted] = append(lines[report.Accepted], line)
		}
		for _, s := range says {
			before = append(before, report.Note{Kind: report.Doubt, Line: report.Text(s)})
		}
	}
	if state == report.Refused {
		lines[report.Refused], lines[report.ToAccept] = lines[report.ToAccept], nil
	}
	var brought []report.Block
	for state, all := range lines {
		if len(all) > 0 {
			brought = append(brought, report.Brought{Before: code.ID, All: all, State: report.BroughtState(state)})
		}
	}
	return append(brought, before...), state != report.Refused
}
