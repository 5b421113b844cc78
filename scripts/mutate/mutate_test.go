package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const sample = "striderule/scripts/mutate/testdata/sample"

// keyOf returns the key of a mutant of the sample.
func keyOf(function, text string) string { return sample + "/sample.go: " + function + ": " + text }

// A mutant that no test can tell from the source lives, and so does what no test
// reaches; what changes a result is killed, and what does not end is killed by time.
func TestSample(t *testing.T) {
	o := options{packages: []string{"./testdata/sample"}, dir: t.TempDir(), list: filepath.Join(t.TempDir(), "known.txt")}
	var out bytes.Buffer
	first, err := run(o, &out)
	require.NoError(t, err)
	text, err := os.ReadFile(filepath.Join(o.dir, "results.txt"))
	require.NoError(t, err)
	found := map[string]string{}
	for line := range strings.Lines(string(text)) {
		cells := strings.Split(strings.TrimSpace(line), "\t")
		found[cells[2]] = cells[0]
	}
	for _, c := range []struct{ function, text, want string }{
		{"Larger", "if a ‹> → >=› b { // >= gives the same", alive},
		{"Larger", "if a ‹> → <=› b { // >= gives the same", killed},
		{"Larger", "return ‹a → zero›", killed},
		{"Sum", "for i := 0; i < n; i‹++ → --› {", byTime},
		{"Sum", "for i := ‹0 → 1›; i < n; i++ {", alive},
		{"Sum", "sum ‹+= → -=› i", killed},
		{"Sum", "‹sum += i → ›", killed},
		{"Price", "price = 2.5 ‹* → /› weight", killed},
		{"Price", "price = ‹2.5 → 2.5 + 1› * weight", killed},
		{"Price", "if card ‹&& → ||› !old || weight == 0 {", killed},
		{"Price", "if card && !old ‹|| → &&› weight == 0 {", killed},
		{"Price", "if ‹ → !›card && !old || weight == 0 {", killed},
		{"Price", "if card && ‹! → ›old || weight == 0 {", killed},
		{"Price", "if card && !old || weight ‹== → !=› 0 {", killed},
		{"Read", "if n > ‹limit → limit + 1› {", killed},
		{"Read", "return ‹0, err → zero›", killed},
		{"Untried", "func Untried(n int) int { return ‹- → ›n }", alive},
	} {
		assert.Equal(t, c.want, found[keyOf(c.function, c.text)], c.text)
	}
	for key := range found {
		assert.NotContains(t, key, `note = `, "texts are left alone")
		assert.NotContains(t, key, `64 →`, "sizes in bits are left alone")
	}
	assert.Contains(t, out.String(), "lives, not listed: sample.go:")
	assert.Contains(t, out.String(), "(no test reaches it)")
	assert.Equal(t, first.there, first.judged)
	assert.Positive(t, first.unlisted)

	// What is listed with a reason may live. What was judged is not judged again.
	var list strings.Builder
	for key, outcome := range found {
		if outcome == alive {
			list.WriteString(key + " — the same to whoever calls it\n")
		}
	}
	require.NoError(t, os.WriteFile(o.list, []byte(list.String()), 0o644))
	second, err := run(o, &out)
	require.NoError(t, err)
	assert.Zero(t, second.unlisted)
	assert.Equal(t, first.unlisted, second.listed)
	assert.Equal(t, first.killed, second.killed)
	again, err := os.ReadFile(filepath.Join(o.dir, "results.txt"))
	require.NoError(t, err)
	assert.Equal(t, text, again)
}

// A sample is drawn by the mutants' names, so that it stays the same.
func TestSamples(t *testing.T) {
	s := samples{}
	require.NoError(t, s.Set("a=4"))
	for _, bad := range []string{"a", "a=-1", "=2", "a=x"} {
		assert.Error(t, s.Set(bad), bad)
	}
	require.NoError(t, s.Set("none=0"))
	assert.False(t, s.has(&mutant{pkg: "none"}, 1))
	drawn, others := 0, 0
	for i := range 1000 {
		m := &mutant{pkg: "a", key: strings.Repeat("x", i)}
		if s.has(m, 1) {
			drawn++
		}
		if s.has(m, 2) {
			others++
		}
		assert.True(t, s.has(&mutant{pkg: "b"}, 1), "all of a package that is not named")
	}
	assert.InDelta(t, 250, drawn, 50)
	assert.InDelta(t, 250, others, 50)
}

// Who killed a mutant nearby is asked first, then who killed most; who takes long, late.
func TestGroups(t *testing.T) {
	at := map[int]bool{7: true}
	s := suite{tests: []test{
		{Name: "TestA", Seconds: 0.01, reached: at}, {Name: "TestB", Seconds: 0.02, reached: at}, {Name: "TestElsewhere", Seconds: 0.02},
		{Name: "TestMost", Seconds: 0.3, reached: at}, {Name: "TestLong", Seconds: 2, reached: at}, {Name: "TestLonger", Seconds: 3, reached: at},
	}}
	names := func(last string, kills map[string]int) (all []string) {
		for _, group := range s.groups(&mutant{site: 7}, last, kills) {
			name := ""
			for _, t := range group {
				name += t.Name
			}
			all = append(all, name)
		}
		return all
	}
	assert.Equal(t, []string{"TestATestB", "TestMost", "TestLong", "TestLonger"}, names("", nil))
	kills := map[string]int{"TestMost": 3, "TestA": 2, "TestLong": 9, "TestElsewhere": 9}
	assert.Equal(t, []string{"TestMost", "TestATestB", "TestLong", "TestLonger"}, names("", kills))
	assert.Equal(t, []string{"TestB", "TestMost", "TestA", "TestLong", "TestLonger"}, names("TestB", kills))
	assert.Equal(t, []string{"TestMost", "TestATestB", "TestLong", "TestLonger"}, names("TestMost", kills))
	assert.Equal(t, []string{"TestMost", "TestATestB", "TestLonger", "TestLong"}, names("TestLonger", kills))
}
