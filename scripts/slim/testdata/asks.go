// A program that asks something of its page before it waits.
package main

import "syscall/js"

func main() {
	js.Global().Get("document")
	select {}
}
