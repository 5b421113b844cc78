package calculator

import (
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/site"
	"striderule/app/view"
	"striderule/calc/form"
)

// postView offers the sheet as a text for a thread, in three forms. It is made
// only while it is open.
func (c *calculator) postView(url string) app.UI {
	return c.folds.View(view.Fold{ID: "post", Class: "part", Heading: app.H2().Text(postTitle), Brief: postBrief, Body: func() []app.UI {
		if url == "" {
			return nil
		}
		var kinds []app.UI
		for i, name := range form.PostKinds {
			kind := form.PostKind(i)
			choice := "post-" + strconv.Itoa(i)
			kinds = append(kinds, app.Label().Class("option").For(choice).Body(
				app.Input().Type("radio").Name("post-kind").ID(choice).Value(strconv.Itoa(i)).Checked(c.post == kind).
					OnChange(func(app.Context, app.Event) { c.post = kind }, app.EventScope(choice)),
				app.Span().Class("option-text").Text(name)))
		}
		text := form.Post(c.form, c.post, url)
		return []app.UI{
			app.FieldSet().Class("choice radios").Body(
				app.Legend().Text(postFormat),
				app.Div().Class("options").Body(kinds...)),
			app.Pre().Class("post-text").ID("post-text").TabIndex(0).Aria("label", postText).Attr("role", "region").Text(text),
			app.Div().Class("share").Body(
				app.Button().Type("button").ID("copy-post").DataSet("copy", text).DataSet("said", postCopied).Text(copyPost),
				app.Button().Type("button").ID("share-post").Class("only-share").DataSet("share", url).DataSet("share-text", text).
					DataSet("title", site.TitleOf(c.page.Title)).Text(sharePost)),
		}
	}})
}
