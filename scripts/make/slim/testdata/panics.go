// A program that ends by a panic.
package main

type fault struct{ where string }

func (f fault) Error() string { return "it broke in " + f.where }

func deep(n int) {
	if n == 0 {
		panic(fault{"the cellar"})
	}
	deep(n - 1)
}

func main() { deep(100) }
