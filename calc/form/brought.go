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
// itself suggests needs that not.

// template returns a field's template as it stands in the form, trimmed; empty if it is no
// such field. Also of one that is hidden, which a choice may bring back.
func (f *Form) template(field sheet.Field) string {
	if !field.HoldsTemplate() {
		return ""
	}
	return strings.TrimSpace(f.Text(field.Key, 0))
}

// noteBrought notes the templates of a link that has just been read.
func (f *Form) noteBrought() {
	f.brought, f.theirs = map[string]bool{}, map[string]string{}
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
		f.solve()
	}
}

// markBrought marks what is made of a stranger's templates, and puts those before it.
func (f *Form) markBrought() {
	if len(f.brought) == 0 {
		return
	}
	for i := range f.report.Parts {
		part := &f.report.Parts[i]
		told := map[string]bool{}
		var blocks []report.Block
		for _, b := range part.Blocks {
			if code, ok := b.(report.Code); ok {
				var lines []report.TemplateText
				for _, key := range code.Of {
					field, _ := f.Field(key)
					if !f.brought[key] || !f.Visible(field, 0) {
						continue
					}
					code.Brought = true
					if !told[key] {
						told[key] = true
						lines = append(lines, report.TemplateText{Key: key, Label: field.Label, Text: f.template(field)})
					}
				}
				if len(lines) > 0 {
					blocks = append(blocks, report.Brought{Before: code.ID, All: lines})
				}
				b = code
			}
			blocks = append(blocks, b)
		}
		part.Blocks = blocks
	}
}
