// Package spool keeps text that can only be written at the end of a run, such as what
// follows a count of it. Reports repeat themselves, so that packed they take little room.
package spool

import (
	"bytes"
	"compress/flate"
	"io"
	"sync"
)

// chunk is how many bytes are packed at once. Less is kept as it is.
const chunk = 256 << 10

// Spool keeps what is written to it in order. Its zero value is empty.
type Spool struct {
	packed [][]byte // by DEFLATE, chunk after chunk
	last   []byte   // what is not packed yet
}

// packers are shared by spools: each takes some 800kB.
var packers = sync.Pool{New: func() any {
	w, err := flate.NewWriter(nil, flate.BestSpeed)
	if err != nil {
		panic(err) // only for a level that there is not
	}
	return w
}}

// Write keeps a copy of the text. It returns no error.
func (s *Spool) Write(text []byte) (int, error) {
	s.last = append(s.last, text...)
	if len(s.last) >= chunk {
		s.pack()
	}
	return len(text), nil
}

func (s *Spool) pack() {
	var b bytes.Buffer
	w := packers.Get().(*flate.Writer)
	defer packers.Put(w)
	w.Reset(&b)
	if _, err := w.Write(s.last); err != nil {
		panic(err) // a buffer takes all
	}
	if err := w.Close(); err != nil {
		panic(err)
	}
	s.packed = append(s.packed, bytes.Clone(b.Bytes()))
	s.last = s.last[:0]
}

// WriteTo implements io.WriterTo: it writes all that is kept, which stays.
func (s *Spool) WriteTo(w io.Writer) (total int64, err error) {
	for _, p := range s.packed {
		n, err := io.Copy(w, flate.NewReader(bytes.NewReader(p)))
		total += n
		if err != nil {
			return total, err
		}
	}
	n, err := w.Write(s.last)
	return total + int64(n), err
}
