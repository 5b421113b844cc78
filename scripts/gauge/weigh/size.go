package main

import (
	"fmt"
	"os"
	"path/filepath"

	"striderule/scripts/gauge/stock"
	"striderule/scripts/make/serving"
	"striderule/scripts/make/squeeze"
)

// weight is a program's size in bytes: as it is, by gzip -9, by brotli 11.
type weight struct{ raw, gzip, brotli int }

// built is the weight of a file that the build has compressed.
func built(file string) (w weight, err error) {
	for end, size := range map[string]*int{"": &w.raw, ".gz": &w.gzip, ".br": &w.brotli} {
		info, err := os.Stat(file + end)
		if err != nil {
			return w, err
		}
		*size = int(info.Size())
	}
	return w, nil
}

// weigh compresses a content as the build does.
func weigh(content []byte) (weight, error) { return weighBy(anew, content) }

// weighBy does so by a compressor, which may keep what it made: see squeeze.Kept.
func weighBy(get compressor, content []byte) (weight, error) {
	zipped, err := get("1.gz", content, squeeze.Gzip)
	if err != nil {
		return weight{}, err
	}
	br, err := get("1.br", content, squeeze.Brotli)
	return weight{len(content), len(zipped), len(br)}, err
}

type compressor func(way string, content []byte, compress func([]byte) ([]byte, error)) ([]byte, error)

func anew(_ string, content []byte, compress func([]byte) ([]byte, error)) ([]byte, error) {
	return compress(content)
}

// printSizes prints the program's weight and that of stock, and returns the share by
// brotli.
func printSizes(root, dist string) (share float64, err error) {
	file, err := serving.Program(dist)
	if err != nil {
		return 0, err
	}
	ours, err := built(file)
	if err != nil {
		return 0, err
	}
	_, wasm, err := stock.Program(root)
	if err != nil {
		return 0, err
	}
	program, err := os.ReadFile(wasm)
	if err != nil {
		return 0, err
	}
	kept, err := squeeze.Keep(filepath.Join(root, ".build", "stock-squeezed"))
	if err != nil {
		return 0, err
	}
	theirs, err := weighBy(kept.Get, program)
	if err != nil {
		return 0, err
	}
	fmt.Printf("%-32s %12s %12s %12s\n", "bytes", "raw", "gzip -9", "brotli 11")
	fmt.Printf("%-32s %12d %12d %12d\n", "web/app.wasm", ours.raw, ours.gzip, ours.brotli)
	fmt.Printf("%-32s %12d %12d %12d\n", "stock go-app hello world", theirs.raw, theirs.gzip, theirs.brotli)
	part := func(a, b int) float64 { return float64(a) / float64(b) }
	share = part(ours.brotli, theirs.brotli)
	fmt.Printf("%-32s %11.3fx %11.3fx %11.3fx  (budget %.3fx, aim %.2fx)\n", "ours of stock", part(ours.raw, theirs.raw), part(ours.gzip, theirs.gzip), share, budget, aim)
	return share, nil
}

// The program's size by brotli, of that of a stock hello world.
const (
	budget = 0.576
	aim    = 0.55
)

func checkBudget(share float64) error {
	if share > budget {
		return fmt.Errorf("the program is over its budget: %.3fx of the stock hello world by brotli, and at most %.3fx is allowed", share, budget)
	}
	return nil
}
