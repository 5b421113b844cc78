package calc

import (
	"sync"

	"striderule/calc/form"
	"striderule/calc/link"
)

// linkKeys are the keys that a link to any page may have, gathered page by page:
// most links need no more than the first.
var linkKeys = struct {
	sync.Mutex
	known map[string]bool
	pages int // whose keys are known
}{known: map[string]bool{"v": true, link.ClaimKey: true, link.RemarkKey: true, form.CardKey: true}}

func init() {
	for _, key := range form.MachineKeys {
		linkKeys.known[key] = true
	}
}

func isLinkKey(key string) bool {
	linkKeys.Lock()
	defer linkKeys.Unlock()
	for !linkKeys.known[key] {
		if linkKeys.pages == len(Pages) {
			return false
		}
		for _, f := range Pages[linkKeys.pages].New().Fields() {
			linkKeys.known[f.Key], linkKeys.known[link.WasMark+f.Key] = true, true
		}
		linkKeys.pages++
	}
	return true
}
