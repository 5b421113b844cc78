package main

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"time"
)

// A suite is the compiled tests of a package.
type suite struct {
	pkg, dir, binary string
	skip             string // a pattern of tests that are left out
	properties       bool   // it tries properties on many cases
	tests            []test // the quickest first
}

// A test is one test function.
type test struct {
	Name    string
	Seconds float64 // of the processor
	Few     bool    // its properties are tried on fewer cases
	Sites   []int
	reached map[int]bool
}

// compile compiles the tests of each package, with all mutants in them, and runs each
// test function once.
func compile(pkgs []*pkg, overlay, dir, skip string) ([]*suite, error) {
	var suites []*suite
	for _, p := range pkgs {
		s := &suite{pkg: p.path, dir: p.dir, skip: skip, binary: filepath.Join(dir, strings.ReplaceAll(p.path, "/", "_")+".test")}
		os.Remove(s.binary)
		if _, err := goTool("test", "-c", "-vet=off", "-overlay="+overlay, "-o", s.binary, p.path); err != nil {
			return nil, err
		}
		if _, err := os.Stat(s.binary); err != nil {
			continue // it has no tests
		}
		if err := s.learn(dir); err != nil {
			return nil, err
		}
		suites = append(suites, s)
	}
	return suites, nil
}

// learn finds out what each test reaches, or remembers it.
func (s *suite) learn(dir string) error {
	binary, err := os.ReadFile(s.binary)
	if err != nil {
		return err
	}
	s.properties = bytes.Contains(binary, []byte("rapid.nofailfile"))
	sum := sha256.Sum256(append(binary, s.skip...))
	kept := filepath.Join(dir, "reached-"+filepath.Base(s.binary)+"-"+hex.EncodeToString(sum[:8])+".json")
	if text, err := os.ReadFile(kept); err == nil && json.Unmarshal(text, &s.tests) == nil {
		s.index()
		return nil
	}
	listed, err := exec.Command(s.binary, "-test.list=.").Output()
	if err != nil {
		return err
	}
	file := filepath.Join(dir, "reached.txt")
	for _, name := range strings.Fields(string(listed)) {
		if strings.HasPrefix(name, "Benchmark") {
			continue
		}
		t := test{Name: name, Sites: []int{}}
		o := s.run([]test{t}, 0)
		if o.outcome != alive {
			return fmt.Errorf("%s of %s fails without any mutant:\n%s", name, s.pkg, o.said)
		}
		if o.seconds > slow && s.properties {
			t.Few = true
			if fewer := s.run([]test{t}, 0); fewer.outcome == alive && fewer.seconds < o.seconds*0.7 {
				o = fewer
			} else {
				t.Few = false
			}
		}
		t.Seconds = o.seconds
		os.Remove(file)
		s.run([]test{t}, 0, "MUTATED_REACHED="+file)
		text, _ := os.ReadFile(file)
		for lines := bufio.NewScanner(bytes.NewReader(text)); lines.Scan(); {
			site, err := strconv.Atoi(lines.Text())
			if err != nil {
				return err
			}
			t.Sites = append(t.Sites, site)
		}
		s.tests = append(s.tests, t)
	}
	sort.SliceStable(s.tests, func(i, j int) bool { return s.tests[i].Seconds < s.tests[j].Seconds })
	text, err := json.Marshal(s.tests)
	if err != nil {
		return err
	}
	s.index()
	return os.WriteFile(kept, text, 0o644)
}

func (s *suite) index() {
	for i := range s.tests {
		t := &s.tests[i]
		t.reached = map[int]bool{}
		for _, site := range t.Sites {
			t.reached[site] = true
		}
	}
}

// What comes of a mutant.
const (
	killed = "killed"
	byTime = "time"
	alive  = "alive"
)

type ran struct {
	outcome string
	seconds float64
	said    []byte
}

// memory is what a test may take, in KB: what a mutant does without end takes all.
const memory = 6 << 20

// slow is how many seconds a test takes whose properties are tried on fewer cases.
const slow = 0.4

// run runs tests together, with as many seconds of the processor as are given.
func (s *suite) run(tests []test, seconds int, env ...string) ran {
	var names []string
	few := false
	for _, t := range tests {
		names = append(names, t.Name)
		few = few || t.Few
	}
	var flags []string
	if s.properties {
		flags = []string{"-rapid.seed=1", "-rapid.nofailfile"}
	}
	if s.skip != "" {
		flags = append(flags, "-test.skip="+s.skip)
	}
	if few {
		flags = append(flags, "-rapid.checks=20")
	}
	limit := "unlimited"
	if seconds > 0 {
		limit = strconv.Itoa(seconds)
	}
	args := append([]string{"-c", fmt.Sprintf(`ulimit -t %s -v %d; exec "$0" "$@"`, limit, memory),
		s.binary, "-test.run=^(" + strings.Join(names, "|") + ")$", "-test.failfast", "-test.timeout=5m"}, flags...)
	cmd := exec.Command("bash", args...)
	cmd.Dir = s.dir
	cmd.Env = append(os.Environ(), env...)
	began := time.Now()
	said, err := cmd.CombinedOutput()
	o := ran{outcome: alive, said: said, seconds: time.Since(began).Seconds()}
	if cmd.ProcessState != nil {
		o.seconds = (cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()).Seconds()
	}
	if err != nil {
		o.outcome = killed
		for _, word := range []string{"test timed out after", "out of memory", "cannot allocate memory"} {
			if bytes.Contains(said, []byte(word)) {
				o.outcome = byTime
			}
		}
		// The shell's limit kills; nothing else does.
		if cmd.ProcessState != nil && !cmd.ProcessState.Exited() || bytes.Contains(said, []byte("SIGXCPU")) {
			o.outcome = byTime
		}
	}
	return o
}
