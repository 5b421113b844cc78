package browser

import (
	"net"
	"os"
	"os/exec"
	"time"
)

// What browsers and drivers have in common that run beside the tests.

// lookPath returns the first of these programs that is there.
func lookPath(names ...string) (path string, err error) {
	for _, name := range names {
		if path, err = exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", err
}

func freePort() (int, error) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return 0, err
	}
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port, nil
}

// retry tries until there is no error, or the time is up.
func retry(limit time.Duration, try func() error) error {
	for end := time.Now().Add(limit); ; time.Sleep(20 * time.Millisecond) {
		err := try()
		if err == nil || time.Now().After(end) {
			return err
		}
	}
}

// stop ends a program, if it runs.
func stop(c *exec.Cmd) {
	if c == nil || c.Process == nil {
		return
	}
	_ = c.Process.Kill()
	_ = c.Wait()
}

// emptied makes a folder that all tabs save to an empty one.
func emptied(dir string) (string, error) {
	if err := os.RemoveAll(dir); err != nil {
		return "", err
	}
	return dir, os.MkdirAll(dir, 0o755)
}
