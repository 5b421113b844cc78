package main

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What tests say is told where one fails, with what was skipped and what took long.
func TestTally(t *testing.T) {
	var out strings.Builder
	a := &tally{out: &out, total: 4, began: time.Now(), told: time.Now()}
	require.NoError(t, a.read(strings.NewReader(`{"Action":"run","Package":"striderule/x","Test":"TestGood"}
{"Action":"output","Package":"striderule/x","Test":"TestGood","Output":"said by a good one\n"}
{"Action":"pass","Package":"striderule/x","Test":"TestGood","Elapsed":7.2}
{"Action":"run","Package":"striderule/x","Test":"TestSkipped"}
{"Action":"output","Package":"striderule/x","Test":"TestSkipped","Output":"    x_test.go:3: there is no browser\n"}
{"Action":"skip","Package":"striderule/x","Test":"TestSkipped","Elapsed":0}
{"Action":"run","Package":"striderule/x","Test":"TestBad/part"}
{"Action":"output","Package":"striderule/x","Test":"TestBad/part","Output":"it is wrong\n"}
{"Action":"fail","Package":"striderule/x","Test":"TestBad/part","Elapsed":0.1}
{"Action":"fail","Package":"striderule/x","Test":"TestBad","Elapsed":0.1}
{"Action":"fail","Package":"striderule/x","Elapsed":8}
of the compiler
`)))
	assert.Equal(t, 3, a.done)
	assert.Equal(t, "it is wrong\nx: fail, 1 tests in 8.0 s\n   7 s: TestGood\n   skipped TestSkipped: there is no browser\nof the compiler\n", out.String())

	out.Reset()
	a.told = time.Now().Add(-time.Minute)
	a.hear(event{Action: "pass", Package: "striderule/x", Test: "TestLate"})
	assert.Contains(t, out.String(), "4 of 4, ", "progress of what runs side by side")
}
