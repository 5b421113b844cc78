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
	key   string // its ID
	text  string // as it was read; empty of one that is new
	read  bool
	ok    bool // it could be read
}

// Machines are the axes that stand on this device, in the person's order. A club may have hundreds:
// each is read when it is asked for.
type Machines struct {
	all     []*Axis
	Refused Refusal // why nothing could be read
}

// ReadMachines finds all of them.
func ReadMachines() *Machines {
	m := &Machines{}
	if !app.IsClient {
		return m
	}
	texts, failed := browser.Kept(machinePrefix())
	m.Refused = refusal(failed)
	for i := 0; i+1 < len(texts); i += 2 {
		a := &Axis{key: texts[i], text: texts[i+1]}
		if order, found := strings.CutPrefix(a.text, orderKey+"="); found {
			order, _, _ = strings.Cut(order, "&")
			a.Order, _ = strconv.Atoi(order)
		}
		m.all = append(m.all, a)
	}
	lists.Sort(m.all, func(a, b *Axis) bool {
		if a.Order != b.Order {
			return a.Order < b.Order
		}
		return a.key < b.key
	})
	return m
}

// isRead reads an axis, and reports whether that is possible: a newer version may have written it.
func (a *Axis) isRead() bool {
	if !a.read {
		a.Axis, a.ok = machine.Read(a.text)
		a.ok = a.ok && a.ID() == a.key
		a.read = true
	}
	return a.ok
}

// First returns so many axes, as far as they can be read.
func (m *Machines) First(n int) []*Axis {
	var first []*Axis
	for _, a := range m.all {
		if len(first) == n {
			break
		}
		if a.isRead() {
			first = append(first, a)
		}
	}
	return first
}

// All returns all that can be read.
func (m *Machines) All() []*Axis { return m.First(len(m.all)) }

// Unread is how many of those that were asked for can't be read. They stay as they are.
func (m *Machines) Unread() (n int) {
	for _, a := range m.all {
		if a.read && !a.ok {
			n++
		}
	}
	return n
}

// Len is how many there are.
func (m *Machines) Len() int { return len(m.all) }

// OnMachines is OnChange of machines.
func OnMachines(do func()) (end func()) { return OnChange(machinePrefix(), do) }

// Of returns the axis with an ID; nil if this device has none that can be read.
func (m *Machines) Of(id string) *Axis {
	for _, a := range m.all {
		if a.key == id && a.isRead() {
			return a
		}
	}
	return nil
}

// Axes are all that can be read, as plain axes.
func (m *Machines) Axes() []machine.Axis {
	var axes []machine.Axis
	for _, a := range m.All() {
		axes = append(axes, a.Axis)
	}
	return axes
}

// Alike returns an axis of the same name, which may be the same one; nil if there is none.
func (m *Machines) Alike(a machine.Axis) *Axis {
	for _, other := range m.All() {
		if strings.EqualFold(other.Title(), a.Title()) {
			return other
		}
	}
	return nil
}

// New is an axis that is not kept yet, at the end of the list. It keeps its ID if that is free.
func (m *Machines) New(a machine.Axis) *Axis {
	order := 0
	for _, other := range m.all {
		order = max(order, other.Order)
	}
	for n := 0; a.ID() == "" || m.isTaken(a.ID()); n++ {
		a = a.With("id", link.Sum(append(a.Without("id"), link.Piece{Key: browser.Now(), Cells: []string{strconv.Itoa(n)}})))
	}
	return &Axis{Axis: a, Order: order + 1, key: a.ID(), read: true, ok: true}
}

func (m *Machines) isTaken(id string) bool {
	for _, a := range m.all {
		if a.key == id {
			return true
		}
	}
	return false
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
