package wire

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
)

const (
	// maxMessage is the most that the body of a message may have. The greatest
	// spec, every character of it escaped, is a quarter of that.
	maxMessage = 32 << 20
	// maxHeaders is the most that the header lines of a message may have.
	maxHeaders = 4 << 10
)

// FrameError says that the stream can't be read on: nobody knows where the next
// message starts.
type FrameError struct{ why string }

// Error is the reason, with what was read.
func (e *FrameError) Error() string { return "read message: " + e.why }

// TooBigError is of a message that was skipped for its size. The next one can
// be read.
type TooBigError struct{ size int64 }

// Error states the size and the limit.
func (e *TooBigError) Error() string {
	return fmt.Sprintf("the message has %d bytes; the maximum is %d", e.size, maxMessage)
}

// ReadFrame reads one message: header lines, an empty line, and as many bytes as
// the headers say. At the end of the stream, between messages, it is io.EOF.
func ReadFrame(r *bufio.Reader) ([]byte, error) {
	size, err := readHeaders(r)
	if err != nil {
		return nil, err
	}
	if size > maxMessage {
		if _, err := io.CopyN(io.Discard, r, size); err != nil {
			return nil, cutShort(err)
		}
		return nil, &TooBigError{size}
	}
	body := make([]byte, size)
	if _, err := io.ReadFull(r, body); err != nil {
		return nil, cutShort(err)
	}
	return body, nil
}

// cutShort is the error of a stream that ends within a message.
func cutShort(err error) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return &FrameError{"it is cut short"}
	}
	return err
}

// WriteFrame writes one message in one write.
func WriteFrame(w io.Writer, body []byte) error {
	frame := append([]byte("Content-Length: "+strconv.Itoa(len(body))+"\r\n\r\n"), body...)
	_, err := w.Write(frame)
	return err
}
