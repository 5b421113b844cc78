package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"slices"
)

// printModules prints what each module of go.mod weighs: its code in the browser's
// program, by package in code, compressed by itself; and what a builder fetches.
func printModules(root string, code map[string][]byte, modules map[string]string) error {
	all, err := required(root)
	if err != nil {
		return err
	}
	fmt.Printf("\n%-48s %12s %12s %12s\n", "by module", "raw", "gzip -9", "to fetch")
	for _, m := range all {
		var of []string
		for path := range code {
			if modules[path] == m {
				of = append(of, path)
			}
		}
		slices.Sort(of)
		var own bytes.Buffer
		for _, path := range of {
			own.Write(code[path])
		}
		w := weight{}
		if own.Len() > 0 {
			if w, err = weigh(own.Bytes()); err != nil {
				return err
			}
		}
		fetched, err := fetchedSize(root, m)
		if err != nil {
			return err
		}
		fmt.Printf("%-48s %12d %12d %12d\n", m, w.raw, w.gzip, fetched)
	}
	return nil
}

// required lists the modules of go.mod.
func required(root string) ([]string, error) {
	edit := exec.Command("go", "mod", "edit", "-json")
	edit.Dir = root
	out, err := edit.Output()
	if err != nil {
		return nil, fmt.Errorf("go mod edit: %w", err)
	}
	var mod struct{ Require []struct{ Path string } }
	if err := json.Unmarshal(out, &mod); err != nil {
		return nil, err
	}
	var all []string
	for _, r := range mod.Require {
		all = append(all, r.Path)
	}
	slices.Sort(all)
	return all, nil
}

// fetchedSize returns the size of a module's zip, in bytes.
func fetchedSize(root, module string) (int64, error) {
	download := exec.Command("go", "mod", "download", "-json", module)
	download.Dir = root
	out, err := download.Output()
	if err != nil {
		return 0, fmt.Errorf("go mod download %s: %w", module, err)
	}
	var got struct{ Zip string }
	if err := json.Unmarshal(out, &got); err != nil {
		return 0, err
	}
	info, err := os.Stat(got.Zip)
	if err != nil {
		return 0, err
	}
	return info.Size(), nil
}
