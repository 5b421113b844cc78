package kept

import (
	"strconv"
	"strings"

	"github.com/maxence-charriere/go-app/v10/pkg/app"

	"striderule/app/browser"
	"striderule/calc/link"
	"striderule/calc/lists"
	"striderule/calc/machine"
)

// The axes of machines, an item of the browser's storage for each, beside the log. What is changed
// in another tab meanwhile is never written over: who writes says what stood there.

// machinePrefix is what the keys of machines begin with: see Prefix.
func machinePrefix() string { return "striderule:" + app.Getenv("GOAPP_ROOT_PREFIX") + ":machine:" }

// orderKey is a piece of an item, in front of the axis: its place in the list.
const orderKey = "order"

// An Axis is one of a machine as the browser keeps it.
type Axis struct {
	machine.Axis
	Order int
	text  string // as it was read; empty of one that is new
}

// Machines are the axes that stand on this device, in the person's order.
type Machines struct {
	Axes    []*Axis
	Unread  []Item  // what this version can't read; it stays as it is
	Refused Refusal // why nothing could be read
}

// ReadMachines reads all of them.
func ReadMachines() *Machines {
	m := &Machines{}
	if !app.IsClient {
		return m
	}
	texts, failed := browser.Kept(machinePrefix())
	m.Refused = refusal(failed)
	for i := 0; i+1 < len(texts); i += 2 {
		if a, ok := readAxis(texts[i], texts[i+1]); ok {
			m.Axes = append(m.Axes, a)
		} else {
			m.Unread = append(m.Unread, Item{texts[i], texts[i+1]})
		}
	}
	lists.Sort(m.Axes, func(a, b *Axis) bool {
		if a.Order != b.Order {
			return a.Order < b.Order
		}
		return a.ID() < b.ID()
	})
	return m
}

// OnMachines has something done when another tab has changed machines, or when the page comes back
// that heard nothing meanwhile, until it is ended.
func OnMachines(do func()) (end func()) {
	heard := func(event app.Value) {
		key := event.Get("key") // null where the whole storage was emptied
		if key.IsNull() || event.Get("persisted").Truthy() || strings.HasPrefix(key.String(), machinePrefix()) {
			do()
		}
	}
	ofStorage, ofPage := browser.Listen("storage", heard), browser.Listen("pageshow", heard)
	return func() {
		ofStorage()
		ofPage()
	}
}

func readAxis(id, text string) (*Axis, bool) {
	axis, ok := machine.Read(text)
	pieces := link.Split(text)
	order, _ := strconv.Atoi(link.TextOf(pieces, orderKey))
	isNewer := link.TextOf(pieces, "v") != link.Version
	return &Axis{axis, order, text}, ok && !isNewer && axis.ID() == id
}

// Of returns the axis with an ID; nil if this device has none.
func (m *Machines) Of(id string) *Axis {
	for _, a := range m.Axes {
		if a.ID() == id {
			return a
		}
	}
	return nil
}

// OfSheet returns the axis that a sheet is about; nil if this device has none.
func (m *Machines) OfSheet(fragment string) *Axis {
	if id := link.TextOf(link.Split(fragment), "id"); id != "" {
		return m.Of(id)
	}
	return nil
}

// Alike returns an axis of the same name, which may be the same one; nil if there is none.
func (m *Machines) Alike(a machine.Axis) *Axis {
	for _, other := range m.Axes {
		if strings.EqualFold(other.Title(), a.Title()) {
			return other
		}
	}
	return nil
}

// New is an axis that is not kept yet, at the end of the list. It keeps its ID if that is free.
func (m *Machines) New(a machine.Axis) *Axis {
	order := 0
	for _, other := range m.Axes {
		order = max(order, other.Order)
	}
	for n := 0; a.ID() == "" || m.isTaken(a.ID()); n++ {
		a = a.With("id", idOf(a.Fragment()+browser.Now()+strconv.Itoa(n)))
	}
	return &Axis{Axis: a, Order: order + 1}
}

func (m *Machines) isTaken(id string) bool {
	for _, u := range m.Unread {
		if u.Key == id {
			return true
		}
	}
	return m.Of(id) != nil
}

// idOf is a short ID made of a text (FNV-1a, 32 bits).
func idOf(text string) string {
	hash := uint32(0x811c9dc5)
	for _, c := range []byte(text) {
		hash = (hash ^ uint32(c)) * 0x01000193
	}
	return strconv.FormatUint(uint64(hash), 36)
}

// Keep keeps an axis. It is Overtaken if another tab has changed or deleted it since it was read.
func (a *Axis) Keep() Refusal {
	if r := a.overtaken(); r != "" {
		return r
	}
	text := orderKey + "=" + strconv.Itoa(a.Order) + "&" + a.Fragment()
	if r := refusal(browser.Keep(machinePrefix()+a.ID(), text)); r != "" {
		return r
	}
	a.text = text
	return ""
}

// Drop deletes an axis.
func (a *Axis) Drop() Refusal {
	if r := a.overtaken(); r != "" {
		return r
	}
	r := refusal(browser.Drop(machinePrefix() + a.ID()))
	if r == "" {
		a.text = ""
	}
	return r
}

func (a *Axis) overtaken() Refusal {
	texts, failed := browser.Kept(machinePrefix() + a.ID())
	if r := refusal(failed); r != "" {
		return r
	}
	now := ""
	for i := 0; i+1 < len(texts); i += 2 {
		if texts[i] == "" { // behind the prefix: of this very ID
			now = texts[i+1]
		}
	}
	if now != a.text {
		return Overtaken
	}
	return ""
}
