package main

import "github.com/maxence-charriere/go-app/v10/pkg/app"

// sitePage is one page of the site.
type sitePage struct {
	Path        string // "/", "/measure/"
	Title       string // document title
	Description string // meta description
	New         func() app.Composer
}

// sitePages returns all pages.
func sitePages() []sitePage {
	return []sitePage{
		{"/", "Striderule", "Small calculators for motion scale.", func() app.Composer { return &stubPage{Heading: "Start"} }},
		{"/measure/", "Correct from a measurement - Striderule", "What should the setting be?", func() app.Composer { return &stubPage{Heading: "Correct from a measurement", Fields: true} }},
		{"/method/", "Method and cautions - Striderule", "Formulas and cautions.", func() app.Composer { return &stubPage{Heading: "Method and cautions"} }},
	}
}

// root is the path of the folder that the site lies in, without a last slash;
// empty while pages are generated, where links are made relative afterwards.
func root() string { return app.Getenv("GOAPP_ROOT_PREFIX") }
