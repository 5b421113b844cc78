package trim

// stateEdits take out what our pages do not use of go-app's own keeping: states
// (observed, stored, encrypted, told to other tabs), actions, the browser's storage
// with values as JSON, identifiers. A page keeps its entries in its form, and the
// log asks for the storage by web/page.js.
//
// At its start go-app would also read every entry of localStorage to delete expired
// states: they may be those of another tool of the same host, and where a browser
// refuses storage the exception would end the program.
var stateEdits = []edit{
	drop{"pkg/app/state.go"},
	drop{"pkg/app/crypto.go"},
	drop{"pkg/app/storage.go"},
	drop{"pkg/app/action.go"},
	drop{"pkg/app/tag.go"},
	cut{"pkg/app/context.go", []string{
		"Context.DeviceID", "Context.Encrypt", "Context.Decrypt", "Context.cryptoKey",
		"Context.LocalStorage", "Context.SessionStorage",
		"Context.Handle", "Context.NewAction", "Context.NewActionWithValue",
		"Context.ObserveState", "Context.GetState", "Context.SetState", "Context.DelState",
	}},
	replace{"pkg/app/context.go", "\tlocalStorage          BrowserStorage\n\tsessionStorage        BrowserStorage\n", ""},
	replace{"pkg/app/context.go", `	handleAction          func(string, UI, bool, ActionHandler)
	postAction            func(Context, Action)
	observeState          func(Context, string, any) Observer
	getState              func(Context, string, any)
	setState              func(Context, string, any) State
	delState              func(Context, string)
`, ""},
	replace{"pkg/app/engine.go", "\tlocalStorage   BrowserStorage\n\tsessionStorage BrowserStorage\n", ""},
	replace{"pkg/app/engine.go", `	asynchronousActionHandlers map[string]ActionHandler
	actions                    actionManager
	states                     stateManager
`, ""},
	replace{"pkg/app/engine.go", "originPage *requestPage, actionHandlers map[string]ActionHandler)", "originPage *requestPage)"},
	replace{"pkg/app/engine.go", `	var localStorage BrowserStorage
	var sessionStorage BrowserStorage
	if IsServer {
		localStorage = newMemoryStorage()
		sessionStorage = newMemoryStorage()
	} else {
		localStorage = newJSStorage("localStorage")
		sessionStorage = newJSStorage("sessionStorage")
	}

`, ""},
	replace{"pkg/app/engine.go", "\t\tlocalStorage:               localStorage,\n", ""},
	replace{"pkg/app/engine.go", "\t\tsessionStorage:             sessionStorage,\n", ""},
	replace{"pkg/app/engine.go", "\t\tasynchronousActionHandlers: actionHandlers,\n", ""},
	replace{"pkg/app/engine.go", "\t\tlocalStorage:          e.localStorage,\n\t\tsessionStorage:        e.sessionStorage,\n", ""},
	replace{"pkg/app/engine.go", `		handleAction:          e.actions.Handle,
		postAction:            e.actions.Post,
		observeState:          e.states.Observe,
		getState:              e.states.Get,
		setState:              e.states.Set,
		delState:              e.states.Delete,
`, ""},
	replace{"pkg/app/engine.go", `

		for action, handler := range e.asynchronousActionHandlers {
			e.actions.Handle(action, body, true, handler)
		}
`, "\n"},
	replace{"pkg/app/engine.go", "\te.states.CleanupExpiredPersistedStates(e.baseContext())\n", ""},
	replace{"pkg/app/engine.go", "\te.actions.Cleanup()\n\te.states.Cleanup()\n", ""},
	replace{"pkg/app/app.go", "\t\t&originPage,\n\t\tactionHandlers,\n", "\t\t&originPage,\n"},
	replace{"pkg/app/testing.go", "\t\t&originPage,\n\t\tmap[string]ActionHandler{\n\t\t\t\"/test\": func(ctx Context, a Action) {},\n\t\t},\n", "\t\t&originPage,\n"},
}
