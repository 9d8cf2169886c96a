package editor

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

const (
	// maxMessage is the most that the body of a message may have. The greatest
	// spec, every character of it escaped, is a quarter of that.
	maxMessage = 32 << 20
	// maxHeaders is the most that the header lines of a message may have.
	maxHeaders = 4 << 10
)

// frameError says that the stream can't be read on: nobody knows where the next
// message starts.
type frameError struct{ why string }

func (e *frameError) Error() string { return "read message: " + e.why }

// tooBigError is of a message that was skipped for its size. The next one can
// be read.
type tooBigError struct{ size int64 }

func (e *tooBigError) Error() string {
	return fmt.Sprintf("the message has %d bytes; the most is %d", e.size, maxMessage)
}

// readFrame reads one message: header lines, an empty line, and as many bytes as
// the headers say. At the end of the stream, between messages, it is io.EOF.
func readFrame(r *bufio.Reader) ([]byte, error) {
	size, err := readHeaders(r)
	if err != nil {
		return nil, err
	}
	if size > maxMessage {
		if _, err := io.CopyN(io.Discard, r, size); err != nil {
			return nil, cutShort(err)
		}
		return nil, &tooBigError{size}
	}
	body := make([]byte, size)
	if _, err := io.ReadFull(r, body); err != nil {
		return nil, cutShort(err)
	}
	return body, nil
}

// readHeaders reads up to the empty line and returns the length of the body.
func readHeaders(r *bufio.Reader) (int64, error) {
	size, read := int64(-1), 0
	for {
		line, err := readLine(r, maxHeaders-read)
		if err != nil {
			if errors.Is(err, io.EOF) && line == "" && read == 0 {
				return 0, io.EOF
			}
			return 0, cutShort(err)
		}
		read += len(line)
		line = strings.TrimRight(line, "\r\n")
		if line == "" {
			break
		}
		if err := readHeader(line, &size); err != nil {
			return 0, err
		}
	}
	if size < 0 {
		return 0, &frameError{"there is no Content-Length"}
	}
	return size, nil
}

// readHeader takes the length from the header that gives it. The only other is
// Content-Type, whose only encoding is UTF-8.
func readHeader(line string, size *int64) error {
	name, value, ok := strings.Cut(line, ":")
	if !ok {
		return &frameError{fmt.Sprintf("%.40q is no header", line)}
	}
	if !strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
		return nil
	}
	n, err := strconv.ParseInt(strings.TrimSpace(value), 10, 64)
	if err != nil || n < 0 {
		return &frameError{fmt.Sprintf("Content-Length %.40q is no length", strings.TrimSpace(value))}
	}
	*size = n
	return nil
}

// readLine reads up to the end of a line, but not more than most bytes.
func readLine(r *bufio.Reader, most int) (string, error) {
	var b strings.Builder
	for b.Len() < most {
		c, err := r.ReadByte()
		if err != nil {
			return b.String(), err
		}
		b.WriteByte(c)
		if c == '\n' {
			return b.String(), nil
		}
	}
	return "", &frameError{fmt.Sprintf("the headers are over %d bytes", maxHeaders)}
}

// cutShort is the error of a stream that ends within a message.
func cutShort(err error) error {
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		return &frameError{"it is cut short"}
	}
	return err
}

// writeFrame writes one message in one write.
func writeFrame(w io.Writer, body []byte) error {
	frame := append([]byte("Content-Length: "+strconv.Itoa(len(body))+"\r\n\r\n"), body...)
	_, err := w.Write(frame)
	return err
}
