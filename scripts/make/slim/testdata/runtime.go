// A program that leans on what the runtime knows of functions.
package main

import (
	"errors"
	"fmt"
	"os"
	"reflect"
	"runtime"
	"slices"
	"sort"
	"strings"
	"sync"
	"time"
)

type tree struct {
	left, right *tree
	name        string
	value       int
}

func grow(depth int) *tree {
	if depth == 0 {
		return &tree{name: strings.Repeat("x", 3), value: 1}
	}
	t := &tree{grow(depth - 1), grow(depth - 1), fmt.Sprint("depth ", depth), depth}
	if depth%5 == 0 {
		runtime.GC()
	}
	return t
}

func (t *tree) sum() int {
	if t == nil {
		return 0
	}
	return t.value + len(t.name) + t.left.sum() + t.right.sum()
}

type word string

func (w word) String() string { return "<" + string(w) + ">" }

// told returns what do panics with.
func told(do func()) (text string) {
	defer func() {
		switch r := recover().(type) {
		case nil:
			text = "nothing"
		case error:
			text = "error: " + r.Error()
		default:
			text = fmt.Sprint("said: ", r)
		}
	}()
	do()
	return "unreachable where it panics"
}

func nested(depth int) (text string) {
	defer func() { text += fmt.Sprint(depth) }()
	if depth == 0 {
		panic("deep")
	}
	defer func() {
		if r := recover(); r != nil && depth == 3 {
			text = fmt.Sprint("caught ", r, " ")
		} else if r != nil {
			panic(r)
		}
	}()
	return nested(depth - 1)
}

// deep needs a stack that grows, with a pointer in every frame.
func deep(n int, kept *[]*int) int {
	room := [64]int{n}
	p := &n
	if n == 0 {
		runtime.GC()
		return room[0]
	}
	*kept = append(*kept, p)
	return deep(n-1, kept) + *p - n + room[0]%2
}

// fall panics in one of many ways, between pointers that are live and calls that come back. What it
// deferred frees memory and takes it again before it looks at them.
func fall(way int, none []int, nobody *tree) (text string) {
	first, second := &tree{name: fmt.Sprint("first of ", way)}, &tree{name: "second"}
	defer func() {
		runtime.GC()
		for range 1000 {
			_ = strings.Repeat("z", 30)
		}
		text = fmt.Sprint(recover(), ", ", first.name, ", ", second.name)
	}()
	first.left = grow(2)
	switch third := grow(1); way {
	case 0:
		third.value = none[way]
	case 1:
		third.left.value = nobody.value
	case 2:
		third.value = 1 / (way - 2)
	case 3:
		none = none[way+2:]
	case 4:
		none = none[:way+2]
	case 5:
		var is any = third
		text = is.(fmt.Stringer).String()
	case 6:
		third.value = 1 << (way - 7)
	case 7:
		panic(third.name)
	case 8:
		nobody.left.right = third
	}
	second = grow(3)
	return second.name + fmt.Sprint(none)
}

func choose(n int) string {
	switch {
	case n%15 == 0:
		return "both"
	case n%3 == 0:
		return "three"
	case n%5 == 0:
		return "five"
	}
	for i := 2; i < n; i++ {
		if n%i == 0 {
			continue
		}
		if i*i > n {
			break
		}
	}
	return "none"
}

func main() {
	var none []int
	var nobody *tree
	var nothing map[string]int
	var nilWord *word
	for _, do := range []func(){
		func() { panic("text") },
		func() { panic(errors.New("told")) },
		func() { _ = none[len(none)+2] },
		func() { nobody.value = 1 },
		func() { nothing["a"] = 1 },
		func() { _ = fmt.Stringer(nilWord).String() },
		func() { _ = any("text").(int) },
		func() { close((chan int)(nil)) },
		func() {},
	} {
		text := told(do)
		if strings.Contains(text, "value method") {
			text = "error: a method of a value called by nil" // its name is not kept
		}
		fmt.Println(text)
	}
	for way := range 10 {
		fmt.Println(fall(way, none, nobody))
	}
	fmt.Println(nested(6))
	for range 3 {
		fmt.Println(grow(11).sum())
	}
	var kept []*int
	fmt.Println(deep(3000, &kept), len(kept), *kept[7])

	results := make(chan string)
	var wait sync.WaitGroup
	for i := range 20 {
		wait.Go(func() {
			time.Sleep(time.Duration(i%3) * time.Millisecond)
			results <- choose(i) + " " + fmt.Sprint(i, grow(4).sum())
		})
	}
	go func() { wait.Wait(); close(results) }()
	var all []string
	for done := false; !done; {
		select {
		case r, ok := <-results:
			if ok {
				all = append(all, r)
			}
			done = !ok
		case <-time.After(10 * time.Second):
			done = true
		}
	}
	slices.Sort(all)
	fmt.Println(all)

	byName := map[string][]float64{}
	for i := range 200 {
		byName[choose(i)] = append(byName[choose(i)], float64(i)/7)
	}
	names := make([]string, 0, len(byName))
	for name := range byName {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		fmt.Printf("%s %d %.6f\n", name, len(byName[name]), byName[name][3])
	}

	called := reflect.ValueOf(word("reflected")).MethodByName("String").Call(nil)
	made := reflect.MakeFunc(reflect.TypeFor[func(int) string](), func(in []reflect.Value) []reflect.Value {
		runtime.GC()
		return []reflect.Value{reflect.ValueOf(fmt.Sprint("made ", in[0].Int()))}
	}).Interface().(func(int) string)
	fmt.Println(called[0], made(5))

	cleaned := make(chan bool, 1)
	func() {
		t := grow(1)
		runtime.AddCleanup(t, func(c chan bool) { c <- true }, cleaned)
	}()
	runtime.GC()
	fmt.Println("cleaned", <-cleaned)
	fmt.Fprintln(os.Stderr, "all done")
}
