package squeeze

import (
	"bytes"
	"compress/gzip"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func samples(t *testing.T) map[string][]byte {
	t.Helper()
	random := rand.New(rand.NewPCG(1, 2))
	noise := make([]byte, 70000)
	for i := range noise {
		noise[i] = byte(random.Uint32())
	}
	far := append(append(bytes.Clone(noise[:window]), noise[:400]...), noise[:window]...)
	// Long enough for two chunks, with pieces that come again over their ends.
	var long bytes.Buffer
	for long.Len() < chunkSize+1000 {
		n := random.IntN(300)
		at := random.IntN(len(noise) / 8)
		long.Write(noise[at : at+n])
	}
	source, err := os.ReadFile("path.go")
	require.NoError(t, err)
	return map[string][]byte{
		"nothing": {}, "a byte": {7}, "two": {7, 7}, "one kind": bytes.Repeat([]byte{0}, 100000),
		"all bytes": noise[:256], "noise": noise, "far": far, "long": long.Bytes(), "source": source,
		"runs": []byte(strings.Repeat("a", 257) + strings.Repeat("b", 258) + strings.Repeat("ab", 259)),
	}
}

func TestGzipSaysTheSame(t *testing.T) {
	for name, content := range samples(t) {
		small, err := Gzip(content)
		require.NoError(t, err)
		r, err := gzip.NewReader(bytes.NewReader(small))
		require.NoError(t, err, name)
		back, err := io.ReadAll(r) // checks the sum too
		require.NoError(t, err, name)
		assert.True(t, bytes.Equal(content, back), name)
		again, err := Gzip(content)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(small, again), "%s is not the same each time", name)
	}
}

func TestGzipIsSmallerThanTheUsual(t *testing.T) {
	for _, name := range []string{"long", "source"} {
		content := samples(t)[name]
		var usual bytes.Buffer
		w, err := gzip.NewWriterLevel(&usual, gzip.BestCompression)
		require.NoError(t, err)
		_, err = w.Write(content)
		require.NoError(t, err)
		require.NoError(t, w.Close())
		small, err := Gzip(content)
		require.NoError(t, err)
		t.Logf("%s: %d, usually %d", name, len(small), usual.Len())
		assert.Less(t, len(small), usual.Len(), name)
	}
}

func TestBrotliSaysTheSame(t *testing.T) {
	content := samples(t)["source"]
	small, err := Brotli(content)
	require.NoError(t, err)
	back, err := io.ReadAll(brotli.NewReader(bytes.NewReader(small)))
	require.NoError(t, err)
	assert.Equal(t, content, back)
}

func TestCodeLengthsAreLimited(t *testing.T) {
	counts := []int{1, 1}
	for len(counts) < 30 { // Fibonacci: the deepest tree there is
		counts = append(counts, counts[len(counts)-1]+counts[len(counts)-2])
	}
	room := 0
	for _, l := range codeLengths(counts, 15) {
		require.NotZero(t, l)
		require.LessOrEqual(t, l, uint8(15))
		room += 1 << (15 - l)
	}
	assert.Equal(t, 1<<15, room, "the code has a word for every row of bits")
}

func TestKept(t *testing.T) {
	dir := t.TempDir()
	made := 0
	make := func(content []byte) ([]byte, error) { made++; return append([]byte("small "), content...), nil }
	for range 2 {
		k, err := Keep(dir)
		require.NoError(t, err)
		small, err := k.Get("1.x", []byte("a"), make)
		require.NoError(t, err)
		assert.Equal(t, "small a", string(small))
		require.NoError(t, k.Tidy())
	}
	assert.Equal(t, 1, made)
	k, err := Keep(dir)
	require.NoError(t, err)
	_, err = k.Get("2.x", []byte("a"), make)
	require.NoError(t, err)
	require.NoError(t, k.Tidy())
	left, err := filepath.Glob(filepath.Join(dir, "*"))
	require.NoError(t, err)
	assert.Len(t, left, 1, "what is no longer asked for goes")
}
