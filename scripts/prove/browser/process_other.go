//go:build !linux

package browser

import "os/exec"

// bound is for Linux only.
func bound(c *exec.Cmd) *exec.Cmd { return c }
