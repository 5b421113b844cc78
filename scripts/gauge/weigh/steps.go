package main

import (
	"fmt"
	"os"
	"path/filepath"

	"striderule/scripts/make/program"
)

// printSteps prints what each step of the program buys: the weight with one more of them,
// and with all but one. It takes some minutes: each is compressed in full.
func printSteps(root string) error {
	work := filepath.Join(root, ".build")
	file := filepath.Join(work, "step.wasm")
	defer os.Remove(file)
	fmt.Printf("%-32s %12s %12s %12s\n", "bytes", "raw", "gzip -9", "brotli 11")
	for _, s := range []struct {
		name string
		with program.Options
	}{
		{"as Go makes it", program.Options{}},
		{"trimmed", program.Options{Trim: true}},
		{"slimmed", program.Options{Slim: true}},
		{"trimmed and slimmed", program.Options{Trim: true, Slim: true}},
	} {
		// go build leaves a program that is there already, rewritten or not.
		if err := os.RemoveAll(file); err != nil {
			return err
		}
		if err := program.Build(root, work, file, s.with); err != nil {
			return err
		}
		content, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		if err := printWeight(s.name, content); err != nil {
			return err
		}
	}
	return nil
}
