package wire

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
)

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
		return 0, &FrameError{"there is no Content-Length"}
	}
	return size, nil
}

// readHeader takes the length from the header that gives it. The only other is
// Content-Type, whose only encoding is UTF-8.
func readHeader(line string, size *int64) error {
	name, value, ok := strings.Cut(line, ":")
	if !ok {
		return &FrameError{fmt.Sprintf("%.40q is no header", line)}
	}
	if !strings.EqualFold(strings.TrimSpace(name), "Content-Length") {
		return nil
	}
	n, err := strconv.ParseInt(strings.TrimSpace(value), 10, 64)
	if err != nil || n < 0 {
		return &FrameError{fmt.Sprintf("Content-Length %.40q is no length", strings.TrimSpace(value))}
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
	return "", &FrameError{fmt.Sprintf("the headers are over %d bytes", maxHeaders)}
}
