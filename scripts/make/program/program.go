// Package program compiles the app to the WebAssembly that browsers run.
//
// What each step buys, in bytes (2026-12-01; scripts/size -steps prints it anew):
//
//	                                    raw      gzip -9    brotli 11
//	as Go makes it                 12597748      3051627      2198065
//	trimmed                         7001492      1831194      1318605
//	slimmed                         8244728      1883108      1372854
//	trimmed and slimmed             4675547      1091890       798657
package program

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"striderule/scripts/make/slim"
	"striderule/scripts/make/trim"
)

// Options say how to compile.
type Options struct {
	Trim  bool // with the trimmed copy of go-app
	Slim  bool // without what the program does without: package slim
	Names bool // keep the functions' names, to tell what weighs what
}

// Without are the steps that are left out, by the names of their switches.
func (o Options) Without() (steps []string) {
	for _, s := range []struct {
		name string
		on   bool
	}{{"trim", o.Trim}, {"slim", o.Slim}} {
		if !s.on {
			steps = append(steps, s.name)
		}
	}
	return steps
}

// Build compiles the app of the module at root into the file out; work is a folder
// in the module for what is needed on the way.
func Build(root, work, out string, o Options) error {
	args := []string{"build", "-buildvcs=false", "-o", out}
	if !o.Names {
		args = append(args, "-ldflags=-s -w")
	}
	args = append(args, flags()...)
	if o.Trim {
		modfile, err := trim.Write(root, filepath.Join(work, "trim"))
		if err != nil {
			return err
		}
		args = append(args, "-modfile="+modfile)
	}
	if err := compile(root, append(args, "./app")); err != nil {
		return err
	}
	if !o.Slim {
		return nil
	}
	return rewrite(root, out, func(program []byte) ([]byte, error) { return slim.Program(program, never...) })
}

// never are functions, by the beginnings of their names, that the app never comes to: it reads no
// error of a number, which quotes what was read, and no number of single precision, in hexadecimal
// or complex; and nobody asks who called. Tests do.
var never = []string{
	"runtime.fpunwindExpand", "runtime.tracebackPCs", "runtime.expandCgoFrames", "runtime.showfuncinfo", "runtime.funcline1", "reflect.valueMethodName",
	"strconv.appendEscapedRune", "strconv.appendQuotedWith", "strconv.IsPrint",
	"internal/strconv.dboxFtoa32", "internal/strconv.atof32", "internal/strconv.atofHex", "internal/strconv.eiselLemire32",
	"internal/strconv.fmtX", "internal/strconv.fmtB", "internal/strconv.AppendComplex",
}

// Tests compiles the tests of a package, "./calc", as Build does the app: what both
// have in common is the same code.
func Tests(root, of, out string) error {
	args := append([]string{"test", "-c", "-vet=off", "-o", out, "-ldflags=-s -w"}, flags()...)
	if err := compile(root, append(args, of)); err != nil {
		return err
	}
	return rewrite(root, out, func(program []byte) ([]byte, error) { return slim.Program(program) })
}

// flags are those of the compiler.
func flags() []string {
	flags := []string{"-trimpath"}
	// Pages, views, texts and codes are sentences more than sums: without inlining
	// they are a tenth of the whole program smaller, and no slower to speak of.
	for _, wordy := range []string{"striderule/calc", "striderule/calc/drive", "striderule/calc/form", "striderule/calc/link", "striderule/calc/lists", "striderule/calc/logbook", "striderule/calc/machine", "striderule/calc/page/...", "striderule/calc/report", "striderule/calc/run", "striderule/calc/sheet", "striderule/calc/unit", "striderule/calc/word", "striderule/calc/measure", "striderule/calc/distribution", "striderule/calc/simulation", "strings", "striderule/app/...", "rsc.io/qr/...", "github.com/maxence-charriere/go-app/v10/..."} {
		flags = append(flags, "-gcflags="+wordy+"=-l")
	}
	return flags
}

// compile runs go with these arguments.
func compile(root string, args []string) error {
	build := exec.Command("go", args...)
	build.Dir = root
	build.Env = append(os.Environ(), trim.WasmEnv...)
	build.Stdout, build.Stderr = os.Stderr, os.Stderr
	if err := build.Run(); err != nil {
		return fmt.Errorf("go %s: %w", args[0], err)
	}
	return nil
}

// rewrite has a program made better.
func rewrite(root, file string, better func(program []byte) ([]byte, error)) error {
	version, err := GoEnv(root, "GOVERSION")
	if err != nil {
		return err
	}
	if err := slim.Knows(version); err != nil {
		return err
	}
	program, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	if program, err = better(program); err != nil {
		return err
	}
	if err := os.Remove(file); err != nil { // a page asks for it, nobody runs it
		return err
	}
	return os.WriteFile(file, program, 0o644)
}

// GoEnv returns a setting of the toolchain that the program of the module at root is built by.
func GoEnv(root, name string) (string, error) {
	env := exec.Command("go", "env", name)
	env.Dir = root
	env.Env = append(os.Environ(), "GOTOOLCHAIN="+slim.Toolchain)
	out, err := env.Output()
	return strings.TrimSpace(string(out)), err
}
