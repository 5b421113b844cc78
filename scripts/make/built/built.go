// Package built says of a site how it was built, in a file of the site, so that
// somebody else can build the same.
package built

import (
	"fmt"
	"strings"
)

const (
	Name = "built.txt"      // the file
	Zip  = "striderule.zip" // the site, packed
)

// Facts are what the bytes of a site depend on, besides the source.
type Facts struct {
	Go      string   // the toolchain, as go env GOVERSION has it
	Address string   // that the site was told it would have, or ""
	Without []string // steps of the program that were left out: trim, slim
}

const (
	goIs      = "Built with "
	addressIs = "For the address "
	withoutIs = "Without "
)

// String is the file: a line for each fact.
func (f Facts) String() string {
	lines := []string{goIs + f.Go}
	if f.Address != "" {
		lines = append(lines, addressIs+f.Address)
	}
	for _, step := range f.Without {
		lines = append(lines, withoutIs+step)
	}
	return strings.Join(lines, "\n") + "\n"
}

// Parse reads the file.
func Parse(file string) (Facts, error) {
	var f Facts
	for line := range strings.Lines(file) {
		line = strings.TrimRight(line, "\r\n")
		if v, ok := strings.CutPrefix(line, goIs); ok {
			f.Go = v
		} else if v, ok := strings.CutPrefix(line, addressIs); ok {
			f.Address = v
		} else if v, ok := strings.CutPrefix(line, withoutIs); ok {
			f.Without = append(f.Without, v)
		} else {
			return Facts{}, fmt.Errorf("%s has a line that says nothing known: %q", Name, line)
		}
	}
	if f.Go == "" {
		return Facts{}, fmt.Errorf("%s does not say by which Go the site was built", Name)
	}
	return f, nil
}
