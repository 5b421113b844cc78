// Package parts is the page that works a first setting out from the parts, and the size of a
// part from a setting.
package parts
