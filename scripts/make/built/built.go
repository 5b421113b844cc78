// Package built says of a site how it was built, in a file of the site, so that
// somebody else can build the same.
package built

import "strings"

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

// String is the file: a line for each fact, as scripts/verify reads them.
func (f Facts) String() string {
	lines := []string{"Built with " + f.Go}
	if f.Address != "" {
		lines = append(lines, "For the address "+f.Address)
	}
	for _, step := range f.Without {
		lines = append(lines, Without(step))
	}
	return strings.Join(lines, "\n") + "\n"
}

// Without is the line of a step that was left out.
func Without(step string) string { return "Without " + step }
