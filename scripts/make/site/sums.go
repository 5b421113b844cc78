package main

import (
	"fmt"
	"os"
	"strings"

	"striderule/scripts/make/built"
	"striderule/scripts/make/program"
)

// sumsName is the file of sums, as sha256sum -c reads it in the site's folder.
const sumsName = "SHA256SUMS"

// facts writes what somebody must know to build the same again.
func (b *builder) facts() error {
	version, err := program.GoEnv(b.root, "GOVERSION")
	if err != nil {
		return err
	}
	facts := built.Facts{Go: version, Address: b.address, Without: b.options.Without()}
	return os.WriteFile(b.path(built.Name), []byte(facts.String()), 0o644)
}

// sums writes the sum of every file that is there by now: all but the zip.
func (b *builder) sums() error {
	files, err := siteFiles(b.site)
	if err != nil {
		return err
	}
	var lines strings.Builder
	for _, f := range files {
		content, err := os.ReadFile(b.path(f))
		if err != nil {
			return err
		}
		lines.WriteString(sumLine(content, f))
	}
	return os.WriteFile(b.path(sumsName), []byte(lines.String()), 0o644)
}

func sumLine(content []byte, name string) string {
	return fmt.Sprintf("%s  %s\n", digest(content), name)
}
