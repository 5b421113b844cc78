// A program that waits for its page as the app does.
package main

import (
	"syscall/js"
)

var numbers = map[string]int{"one": 1, "two": 2}

func main() {
	start := make(chan string)
	js.Global().Get("striderule").Set("start", js.FuncOf(func(_ js.Value, args []js.Value) any {
		start <- args[0].String()
		return nil
	}))
	numbers["three"] = 3
	word := <-start
	var list [][]byte // the memory grows
	for i := range 1000 {
		list = append(list, make([]byte, i*20))
	}
	println("went on with", word, len(numbers), numbers["three"], len(list), js.ValueOf(map[string]any{"a": 1}).Get("a").Int())
	println(js.Global().Get("Object").Equal(js.Global().Get("Object")), js.ValueOf([]any{4, 5}).Length())
}
