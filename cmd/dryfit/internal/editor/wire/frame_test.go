package wire

import (
	"bufio"
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestFrames(t *testing.T) {
	read := func(stream string) ([]byte, error) { return ReadFrame(bufio.NewReader(strings.NewReader(stream))) }
	for _, good := range []string{
		"Content-Length: 2\r\n\r\n{}",
		"content-length:2\r\nContent-Type: application/vscode-jsonrpc; charset=utf-8\r\n\r\n{}",
		"Content-Length: 2\n\n{}",
		"X: y\r\nContent-Length:   2  \r\n\r\n{}rest",
	} {
		body, err := read(good)
		assert.NoError(t, err, good)
		assert.Equal(t, "{}", string(body), good)
	}
	_, err := read("")
	assert.Equal(t, io.EOF, err)
	for bad, says := range map[string]string{
		"{}":                            "cut short",
		"{}\r\n\r\n":                    "no header",
		"\r\n{}":                        "no Content-Length",
		"Content-Type: x\r\n\r\n{}":     "no Content-Length",
		"Content-Length: two\r\n\r\n{}": "no length",
		"Content-Length: -1\r\n\r\n{}":  "no length",
		"Content-Length: 99999999999999999999\r\n\r\n": "no length",
		"Content-Length: 3\r\n\r\n{}":                  "cut short",
		"Content-Length: 3\r\n":                        "cut short",
		"X: " + strings.Repeat("x", 1e4):               "over 4096 bytes",
		strings.Repeat("X: y\r\n", 10000):              "over 4096 bytes",
	} {
		_, err := read(bad)
		var broken *FrameError
		assert.ErrorAs(t, err, &broken, bad[:min(len(bad), 40)])
		assert.ErrorContains(t, err, says, bad[:min(len(bad), 40)])
	}
}

func FuzzFrame(f *testing.F) {
	for _, s := range []string{"Content-Length: 2\r\n\r\n{}", "Content-Length: 9\r\n\r\n{}", "\r\n\r\n", "Content-Length: 2\r\nContent-Length: 1\r\n\r\n{}"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, stream []byte) {
		r := bufio.NewReader(bytes.NewReader(stream))
		for {
			body, err := ReadFrame(r)
			if err != nil {
				return
			}
			var again bytes.Buffer
			if err := WriteFrame(&again, body); err != nil {
				t.Fatal(err)
			}
			back, err := ReadFrame(bufio.NewReader(&again))
			if err != nil || !bytes.Equal(back, body) {
				t.Fatalf("%q, %v", back, err)
			}
		}
	})
}
