package kept

import (
	"errors"
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/calc/logbook"
)

// Prefix is what the keys of the log begin with. It names the site's folder, as
// it is read: other sites of the same host share the storage.
func Prefix() string { return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + ":log:" }

// An Item is one of the log as the browser keeps it.
type Item struct {
	Key  string // behind Prefix: an entry's ID
	Text string
}

// An Unread item is one that this version can't read. It stays as it is.
type Unread struct {
	Item
	Why   string
	Newer bool
}

// A Log is the log as it stands on this device.
type Log struct {
	Book    *logbook.Book
	Unread  []Unread
	Refused Refusal // why nothing could be read
}

// Read reads the whole log.
func Read() Log {
	k := Log{Book: logbook.NewBook()}
	if !app.IsClient {
		return k
	}
	texts, failed := browser.Kept(Prefix())
	k.Refused = refusal(failed)
	var entries []logbook.Entry
	for i := 0; i+1 < len(texts); i += 2 {
		s := Item{texts[i], texts[i+1]}
		e, err := logbook.Read(s.Text)
		if err == nil && e.ID != s.Key {
			err = errors.New(otherID)
		}
		if err != nil {
			k.Unread = append(k.Unread, Unread{s, err.Error(), errors.Is(err, logbook.ErrNewer)})
			continue
		}
		entries = append(entries, e)
	}
	k.Book.Merge(entries)
	for _, u := range k.Unread { // which new entries would overwrite
		k.Book.Reserve(u.Key)
	}
	return k
}

// text returns what stands under a key.
func (k Log) text(key string) (string, bool) {
	for _, u := range k.Unread {
		if u.Key == key {
			return u.Text, true
		}
	}
	e, ok := k.Book.Entry(key)
	return e.Text(), ok
}

// Put keeps items, and returns how many before the browser refused.
func Put(items []Item) (kept int, refused Refusal) {
	for i, s := range items {
		if r := refusal(browser.Keep(Prefix()+s.Key, s.Text)); r != "" {
			if r == Full && i == 0 && Read().Book.Len() == 0 {
				r = NoRoom
			}
			return i, r
		}
	}
	return len(items), ""
}

// Drop deletes items, and returns those that are gone. What another tab has put under
// their keys since stays.
func Drop(items []Item) (gone []Item, refused Refusal) {
	now := Read()
	if now.Refused != "" {
		return nil, now.Refused
	}
	for _, s := range items {
		if text, ok := now.text(s.Key); !ok || text != s.Text {
			continue
		}
		if r := refusal(browser.Drop(Prefix() + s.Key)); r != "" {
			return gone, r
		}
		gone = append(gone, s)
	}
	return gone, ""
}

// Replace keeps other texts under the keys of items, and returns how many before the browser refused.
// What another tab has put there since stays.
func Replace(items []Item, by []Item) (replaced int, refused Refusal) {
	now := Read()
	if now.Refused != "" {
		return 0, now.Refused
	}
	for i, s := range items {
		if text, ok := now.text(s.Key); !ok || text != s.Text {
			continue
		}
		if _, r := Put(by[i : i+1]); r != "" {
			return replaced, r
		}
		replaced++
	}
	return replaced, ""
}

// PutBack keeps again what drop deleted, beside what another tab has put under the
// same keys since. It returns how many were put back before the browser refused.
func PutBack(items []Item) (back int, refused Refusal) {
	now := Read()
	var entries []logbook.Entry
	var more []Item
	for _, s := range items {
		if e, err := logbook.Read(s.Text); err == nil && e.ID == s.Key {
			entries = append(entries, e)
			continue
		}
		key := s.Key
		text, taken := now.text(key)
		for n := 2; taken && text != s.Text; n++ {
			key = s.Key + "-" + strconv.Itoa(n)
			text, taken = now.text(key)
		}
		if !taken {
			more = append(more, Item{key, s.Text})
		}
	}
	return Put(append(Items(now.Book.Merge(entries).Added), more...))
}

// Items returns entries as they are kept.
func Items(entries []logbook.Entry) []Item {
	var items []Item
	for _, e := range entries {
		items = append(items, Item{e.ID, e.Text()})
	}
	return items
}

// A Refusal is why the browser does not save something; there is none without a word.
type Refusal string

const (
	Full    Refusal = "full"    // its storage for this site
	NoRoom  Refusal = "no-room" // it gives this site none
	Blocked Refusal = "blocked" // site data are switched off
	// Overtaken: another tab has changed it meanwhile.
	Overtaken Refusal = "overtaken"
)

// Says is the refusal as a sentence.
func (r Refusal) Says() string { return refusals.Of(string(r)) }

// refusal is what the name of a browser's error means; without an error there is none.
func refusal(name string) Refusal {
	switch name {
	case "":
		return ""
	case "QuotaExceededError", "NS_ERROR_DOM_QUOTA_REACHED":
		return Full
	}
	return Blocked
}

// OnChange has something done when another tab has changed what is kept under keys with a prefix, or
// when the page comes back that lay aside and heard nothing meanwhile, until it is ended.
func OnChange(prefix string, do func()) (end func()) {
	heard := func(event app.Value) {
		key := event.Get("key") // null where the whole storage was emptied
		if key.IsNull() || strings.HasPrefix(key.String(), prefix) || event.Get("persisted").Truthy() {
			do()
		}
	}
	ofStorage, ofPage := browser.Listen("storage", heard), browser.Listen("pageshow", heard)
	return func() {
		ofStorage()
		ofPage()
	}
}

// FileName is that of a file of the log, with today's date.
func FileName(ending string) string { return "striderule-log-" + browser.Now()[:10] + "." + ending }
