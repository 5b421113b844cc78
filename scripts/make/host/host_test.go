package main

import (
	"net"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTakenPort(t *testing.T) {
	taken, err := net.Listen("tcp", "localhost:0")
	require.NoError(t, err)
	defer taken.Close()
	port := taken.Addr().(*net.TCPAddr).Port
	if port > 65000 {
		t.Skip("no room above the port that the system gave: " + strconv.Itoa(port))
	}
	l, err := listen(port, false)
	require.NoError(t, err)
	defer l.Close()
	assert.Greater(t, l.Addr().(*net.TCPAddr).Port, port)
	assert.True(t, l.Addr().(*net.TCPAddr).IP.IsLoopback(), "other devices are let in only when asked")
}

func TestBadPort(t *testing.T) {
	for _, port := range []string{"http", "0", "70000", "-1"} {
		err := run([]string{port, t.TempDir()}, false)
		require.Error(t, err)
		assert.Contains(t, err.Error(), "a port is a number")
	}
}
