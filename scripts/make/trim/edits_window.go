package trim

// windowEdits take out what our pages do not use of the browser: notifications,
// offers to install, news of an update or of another size of the window, and what
// a component looks like that has no look.
var windowEdits = []edit{
	drop{"pkg/app/notification.go"},
	cut{"pkg/app/context.go", []string{"Context.Notifications", "Context.ResizeContent"}},
	cut{"pkg/app/component.go", []string{"Compo.Render", "Compo.ValueTo"}},
	cut{"pkg/app/strings.go", []string{"stringTo", "jsonString"}},
	cut{"pkg/app/browser.go", []string{"browser.handleAppUpdate", "browser.handleAppInstallChange", "browser.handleAppResize"}},
	replace{"pkg/app/browser.go", `	b.handleAppUpdate(ctx, notifyComponentEvent)
	b.handleAppInstallChange(ctx, notifyComponentEvent)
	b.handleAppResize(ctx, notifyComponentEvent)
`, ""},
	replace{"pkg/app/browser.go", "\tresizeTimer      *time.Timer\n", ""},
	replace{"pkg/app/browser.go", "import (\n\t\"time\"\n)\n", ""},
	replace{"pkg/app/node.go", `
		case appUpdate:
			if appUpdater, ok := element.(AppUpdater); ok {
				ctx.Dispatch(appUpdater.OnAppUpdate)
			}

		case appInstallChange:
			if appInstaller, ok := element.(AppInstaller); ok {
				ctx.Dispatch(appInstaller.OnAppInstallChange)
			}

		case resize:
			if resizer, ok := element.(Resizer); ok {
				ctx.Dispatch(resizer.OnResize)
			}
`, ""},

	// Where the pointer is, every event would ask.
	replace{"pkg/app/node.go", "\t\t\t\ttrackMousePosition(event)\n", ""},
	cut{"pkg/app/event.go", []string{"trackMousePosition"}},

	// Titles and the like stand in each page as it is generated; what is asked for is
	// the address.
	drop{"pkg/app/page.go"},

	// Addresses that only the host answers would come as JSON; there are none.
	cut{"pkg/app/engine.go", []string{"engineX.internalURL"}},
	replace{"pkg/app/engine.go", "\tcase e.internalURL(destination),\n\t\te.mailTo(destination):\n", "\tcase e.mailTo(destination):\n"},
	replace{"pkg/app/engine.go", "\tinternalURLs   []string\n", ""},

	// A path without a page is answered by the host. What comes here all the same
	// gets the start page, which leads to every other.
	drop{"pkg/app/notfound.go"},
	replace{"pkg/app/engine.go", "\t\troot = &notFound{}\n", "\t\troot, _ = e.routes.createComponent(\"/\")\n"},
}
