package squeeze

import (
	"bytes"
	"compress/gzip"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/andybalholm/brotli"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func samples(t *testing.T) map[string][]byte {
	t.Helper()
	source, err := os.ReadFile("squeeze.go")
	require.NoError(t, err)
	return map[string][]byte{"nothing": {}, "a byte": {7}, "one kind": bytes.Repeat([]byte{0}, 100000), "source": source}
}

// What is compressed comes out again, and is the same bytes each time.
func TestBothSayTheSame(t *testing.T) {
	for way, does := range map[string]struct {
		small func([]byte) ([]byte, error)
		whole func(io.Reader) (io.Reader, error)
	}{
		"gzip":   {Gzip, func(r io.Reader) (io.Reader, error) { return gzip.NewReader(r) }},
		"brotli": {Brotli, func(r io.Reader) (io.Reader, error) { return brotli.NewReader(r), nil }},
	} {
		for name, content := range samples(t) {
			small, err := does.small(content)
			require.NoError(t, err)
			r, err := does.whole(bytes.NewReader(small))
			require.NoError(t, err)
			back, err := io.ReadAll(r)
			require.NoError(t, err)
			assert.True(t, bytes.Equal(content, back), "%s of %s", way, name)
			again, err := does.small(content)
			require.NoError(t, err)
			assert.Equal(t, small, again, "%s of %s", way, name)
		}
	}
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
