package squeeze

import (
	"encoding/binary"
	"hash/crc32"
	"runtime"
	"sync"
)

// chunkSize is how much is worked on at a time. No block of the result reaches
// over the end of a chunk, so chunks can be worked on at once.
const chunkSize = 1 << 20

// Gzip compresses as any gzip does, and looks for the smallest result, where others
// look for one quickly: over and over it works out what each way of writing a
// piece would cost, and takes the cheapest path through all of them (RFC 1951 and
// 1952 say what the result must be, not how to find it). That is some 5 % less
// than gzip -9.
func Gzip(content []byte) ([]byte, error) {
	chunks := make([][]block, (len(content)+chunkSize-1)/chunkSize)
	var wait sync.WaitGroup
	free := make(chan struct{}, runtime.NumCPU())
	for i := range chunks {
		wait.Add(1)
		go func() {
			defer wait.Done()
			free <- struct{}{}
			chunks[i] = blocksOf(content, i*chunkSize, min((i+1)*chunkSize, len(content)))
			<-free
		}()
	}
	wait.Wait()
	// No name and no time, which would differ by build. 2: made slowly; 255: on
	// whatever system.
	w := bitWriter{out: []byte{0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 2, 255}}
	for _, blocks := range chunks {
		for _, b := range blocks {
			b.write(&w, b.end == len(content))
		}
	}
	if len(content) == 0 {
		newBlock(nil, 0, 0).write(&w, true)
	}
	w.flush()
	w.out = binary.LittleEndian.AppendUint32(w.out, crc32.ChecksumIEEE(content))
	return binary.LittleEndian.AppendUint32(w.out, uint32(len(content))), nil
}

// bitWriter packs bits into bytes, the lowest first.
type bitWriter struct {
	out  []byte
	held uint64
	n    uint
}

func (w *bitWriter) bits(value uint32, n uint) {
	w.held |= uint64(value) << w.n
	for w.n += n; w.n >= 8; w.n -= 8 {
		w.out = append(w.out, byte(w.held))
		w.held >>= 8
	}
}

func (w *bitWriter) flush() {
	if w.n > 0 {
		w.bits(0, 8-w.n)
	}
}
