// Package kept is the machine log as this browser keeps it: an item of its storage for each entry.
package kept
