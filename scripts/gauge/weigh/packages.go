package main

import (
	"cmp"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"striderule/scripts/make/program"
	"striderule/scripts/make/slim"
	"striderule/scripts/make/trim"
)

// leastShare is the share of all code from which on a package has a line.
const leastShare = 0.01

// printPackages prints what each package's code weighs, compressed by itself, in a
// build that keeps the functions' names; and the data of all.
func printPackages(root string) error {
	work := filepath.Join(root, ".build")
	file := filepath.Join(work, "named.wasm")
	defer os.Remove(file)
	if err := program.Build(root, work, file, program.Options{Trim: true, Slim: true, Names: true}); err != nil {
		return err
	}
	named, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	functions, data, err := slim.Parts(named)
	if err != nil {
		return err
	}
	packages, modules, err := packagesByName(root)
	if err != nil {
		return err
	}
	code := map[string][]byte{}
	all := 0
	for _, f := range functions {
		of := packageOf(packages, f.Name)
		code[of] = append(code[of], f.Code...)
		all += len(f.Code)
	}
	names := make([]string, 0, len(code))
	for name := range code {
		names = append(names, name)
	}
	slices.SortFunc(names, func(a, b string) int {
		return cmp.Or(cmp.Compare(len(code[b]), len(code[a])), strings.Compare(a, b))
	})
	fmt.Printf("\n%-32s %12s %12s %12s\n", "code by package, each by itself", "raw", "gzip -9", "brotli 11")
	var others []byte
	n := 0
	for _, name := range names {
		if float64(len(code[name])) < leastShare*float64(all) {
			others = append(others, code[name]...)
			n++
		} else if err := printWeight(name, code[name]); err != nil {
			return err
		}
	}
	if err := printWeight(fmt.Sprint(n, " others"), others); err != nil {
		return err
	}
	if err := printWeight("data of all", data); err != nil {
		return err
	}
	return printModules(root, code, modules)
}

func printWeight(name string, content []byte) error {
	w, err := weigh(content)
	if err != nil {
		return err
	}
	if over := len(name) - 32; over > 0 {
		name = "…" + name[over+1:]
	}
	fmt.Printf("%-32s %12d %12d %12d\n", name, w.raw, w.gzip, w.brotli)
	return nil
}

// notInNames is what the linker replaces in names.
var notInNames = regexp.MustCompile(`[^\w.]`)

// packagesByName lists the program's packages by how their names begin in it, and
// the module of each that is not of Go's own.
func packagesByName(root string) (packages, modules map[string]string, err error) {
	list := exec.Command("go", "list", "-deps", "-modfile="+filepath.Join(root, ".build", "trim", "trimmed.mod"), "-f", "{{if eq .Name `main`}}main{{else}}{{.ImportPath}}{{end}} {{with .Module}}{{.Path}}{{end}}", "./app")
	list.Dir = root
	list.Env = append(os.Environ(), trim.WasmEnv...)
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		return nil, nil, fmt.Errorf("go list: %w", err)
	}
	packages, modules = map[string]string{}, map[string]string{}
	for line := range strings.Lines(string(out)) {
		path, module, _ := strings.Cut(strings.TrimSpace(line), " ")
		packages[notInNames.ReplaceAllString(path, "_")] = path
		if module != "" {
			modules[path] = module
		}
	}
	return packages, modules, nil
}

// packageOf returns the package of a function: the longest that its name begins with.
func packageOf(packages map[string]string, name string) string {
	for end := strings.LastIndexByte(name, '.'); end > 0; end = strings.LastIndexByte(name[:end], '.') {
		if path, ok := packages[name[:end]]; ok {
			return path
		}
	}
	return "by the compiler and the linker"
}
