package main

import (
	"errors"
	"strconv"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/calc/logbook"
)

// logPrefix is what the keys of the log begin with. It names the site's folder, as
// it is read: other sites of the same host share the storage.
func logPrefix() string { return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + ":log:" }

// A stored text is one item of the log as the browser keeps it.
type stored struct {
	key  string // behind logPrefix: an entry's ID
	text string
}

// An unread item is one that this version can't read. It stays as it is.
type unread struct {
	stored
	why   string
	newer bool
}

// A keptLog is the log as it stands on this device.
type keptLog struct {
	book    *logbook.Book
	unread  []unread
	refused string // why nothing could be read
}

// readLog reads the whole log.
func readLog() keptLog {
	k := keptLog{book: logbook.NewBook()}
	if !app.IsClient {
		return k
	}
	texts, failed := browser.Kept(logPrefix())
	k.refused = refusal(failed)
	var entries []logbook.Entry
	for i := 0; i+1 < len(texts); i += 2 {
		s := stored{texts[i], texts[i+1]}
		e, err := logbook.Read(s.text)
		if err == nil && e.ID != s.key {
			err = errors.New("it says of itself that it is another one")
		}
		if err != nil {
			k.unread = append(k.unread, unread{s, err.Error(), errors.Is(err, logbook.ErrNewer)})
			continue
		}
		entries = append(entries, e)
	}
	k.book.Merge(entries)
	for _, u := range k.unread { // which new entries would overwrite
		k.book.Reserve(u.key)
	}
	return k
}

// text returns what stands under a key.
func (k keptLog) text(key string) (string, bool) {
	for _, u := range k.unread {
		if u.key == key {
			return u.text, true
		}
	}
	e, ok := k.book.Entry(key)
	return e.Text(), ok
}

// store keeps items, and returns how many before the browser refused.
func store(items []stored) (kept int, refused string) {
	for i, s := range items {
		if r := refusal(browser.Keep(logPrefix()+s.key, s.text)); r != "" {
			if r == isFull && i == 0 && readLog().book.Len() == 0 {
				r = isNone
			}
			return i, r
		}
	}
	return len(items), ""
}

// drop deletes items, and returns those that are gone. What another tab has put under
// their keys since stays.
func drop(items []stored) (gone []stored, refused string) {
	now := readLog()
	if now.refused != "" {
		return nil, now.refused
	}
	for _, s := range items {
		if text, ok := now.text(s.key); !ok || text != s.text {
			continue
		}
		if r := refusal(browser.Drop(logPrefix() + s.key)); r != "" {
			return gone, r
		}
		gone = append(gone, s)
	}
	return gone, ""
}

// putBack keeps again what drop deleted, beside what another tab has put under the
// same keys since. It returns how many were put back before the browser refused.
func putBack(items []stored) (back int, refused string) {
	now := readLog()
	var entries []logbook.Entry
	var more []stored
	for _, s := range items {
		if e, err := logbook.Read(s.text); err == nil && e.ID == s.key {
			entries = append(entries, e)
			continue
		}
		key := s.key
		text, taken := now.text(key)
		for n := 2; taken && text != s.text; n++ {
			key = s.key + "-" + strconv.Itoa(n)
			text, taken = now.text(key)
		}
		if !taken {
			more = append(more, stored{key, s.text})
		}
	}
	return store(append(asStored(now.book.Merge(entries).Added), more...))
}

// asStored returns entries as they are kept.
func asStored(entries []logbook.Entry) []stored {
	var items []stored
	for _, e := range entries {
		items = append(items, stored{e.ID, e.Text()})
	}
	return items
}

// Why a browser refuses to keep something, as sentences.
const (
	isFull    = "The storage that the browser gives this site is full."
	isNone    = "The browser gives this site no room to keep anything, as some private windows do."
	isBlocked = "This browser does not let the site keep anything: site data are switched off, or this is a window that forgets all of it."
)

// refusal puts the name of a browser's error into words; without an error there are none.
func refusal(name string) string {
	switch name {
	case "":
		return ""
	case "QuotaExceededError", "NS_ERROR_DOM_QUOTA_REACHED":
		return isFull
	}
	return isBlocked
}

// fileName is that of a file of the log, with today's date.
func fileName(ending string) string { return "striderule-log-" + browser.Now()[:10] + "." + ending }
