package main

import (
	"runtime"
	"time"
)

// pulses returns how long a fixed loop took, a few times, in ms: the cores of virtual
// machines come and go in speed, and figures of two runs compare only if these do.
func pulses() []float64 {
	var all []float64
	for range 5 {
		start := time.Now()
		x := uint64(1)
		for range 100_000_000 {
			x ^= x << 13
			x ^= x >> 7
			x ^= x << 17
		}
		runtime.KeepAlive(x) // or the loop might be left out
		all = append(all, float64(time.Since(start).Microseconds())/1000)
	}
	return all
}
