package slim

import "errors"

// reader reads a program's bytes. After an error it reads zeros.
type reader struct {
	b   []byte
	at  int
	err error
}

var errShort = errors.New("it ends too soon")

func (r *reader) end() bool { return r.err != nil || r.at >= len(r.b) }

func (r *reader) byte() byte {
	if r.end() {
		r.err = errShort
		return 0
	}
	r.at++
	return r.b[r.at-1]
}

func (r *reader) bytes(n int) []byte {
	if n < 0 || r.err != nil || n > len(r.b)-r.at {
		r.err = errShort
		return nil
	}
	r.at += n
	return r.b[r.at-n : r.at]
}

// uint reads an unsigned LEB128 number.
func (r *reader) uint() uint64 {
	var v uint64
	for shift := 0; ; shift += 7 {
		c := r.byte()
		v |= uint64(c&0x7F) << shift
		if c < 0x80 || shift > 63 {
			return v
		}
	}
}

// int reads a signed LEB128 number.
func (r *reader) int() int64 {
	var v int64
	for shift := 0; ; {
		c := r.byte()
		v |= int64(c&0x7F) << shift
		shift += 7
		if c < 0x80 || shift > 63 {
			if c&0x40 != 0 && shift < 64 {
				v |= -1 << shift
			}
			return v
		}
	}
}

func appendUint(b []byte, v uint64) []byte {
	for ; v >= 0x80; v >>= 7 {
		b = append(b, byte(v)|0x80)
	}
	return append(b, byte(v))
}

func appendInt(b []byte, v int64) []byte {
	for {
		c := byte(v) & 0x7F
		v >>= 7
		if v == 0 && c&0x40 == 0 || v == -1 && c&0x40 != 0 {
			return append(b, c)
		}
		b = append(b, c|0x80)
	}
}
