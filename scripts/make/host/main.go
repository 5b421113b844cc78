// Command host serves a folder of static files, as any plain web host would.
//
//	host [-lan] [port] folder
package main

import (
	"errors"
	"flag"
	"fmt"
	"net"
	"net/http"
	"os"
	"strconv"
	"time"

	"striderule/scripts/make/serving"
)

func main() {
	lan := flag.Bool("lan", false, "let other devices of the network in")
	flag.Usage = func() {
		fmt.Fprintln(os.Stderr, "usage: host [-lan] [port] folder")
	}
	flag.Parse()
	if err := run(flag.Args(), *lan); err != nil {
		fmt.Fprintln(os.Stderr, "serve:", err)
		os.Exit(1)
	}
}

func run(args []string, lan bool) error {
	port := 8080
	if len(args) == 2 {
		n, err := strconv.Atoi(args[0])
		if err != nil || n < 1 || n > 65535 {
			return fmt.Errorf("%q is not a port: a port is a number from 1 to 65535, such as 8080", args[0])
		}
		port, args = n, args[1:]
	}
	if len(args) != 1 {
		return errors.New("say at most one port: scripts/serve 8080")
	}
	l, err := listen(port, lan)
	if err != nil {
		return err
	}
	got := l.Addr().(*net.TCPAddr).Port
	if got != port {
		fmt.Printf("Port %d is taken: using %d instead.\n", port, got)
	}
	fmt.Printf("Striderule is at http://localhost:%d/ (end with Ctrl+C)\n", got)
	if lan {
		printNetwork(got)
	}
	server := &http.Server{Handler: serving.Handler(args[0], "br", "gzip"), ReadHeaderTimeout: 10 * time.Second}
	return server.Serve(l)
}

// listen takes the port, or the next free one of the following twenty.
func listen(port int, lan bool) (net.Listener, error) {
	host := "localhost"
	if lan {
		host = ""
	}
	var last error
	for p := port; p <= min(port+20, 65535); p++ {
		l, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(p)))
		if err == nil {
			return l, nil
		}
		last = err
	}
	return nil, fmt.Errorf("no free port from %d on: %w", port, last)
}

func printNetwork(port int) {
	addrs, err := net.InterfaceAddrs()
	if err != nil {
		return
	}
	for _, a := range addrs {
		if ip, ok := a.(*net.IPNet); ok && ip.IP.To4() != nil && !ip.IP.IsLoopback() {
			fmt.Printf("Other devices of this network: http://%s:%d/ (without https, browsers keep offline use off)\n", ip.IP, port)
		}
	}
}
