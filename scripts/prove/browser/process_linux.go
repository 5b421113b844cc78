package browser

import (
	"os/exec"
	"syscall"
)

// bound has a program end with the tests, even if they are ended by force.
func bound(c *exec.Cmd) *exec.Cmd {
	c.SysProcAttr = &syscall.SysProcAttr{Pdeathsig: syscall.SIGKILL}
	return c
}
