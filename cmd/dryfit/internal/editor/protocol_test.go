package editor

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"dryfit/cmd/dryfit/internal/editor/wire"
	"dryfit/rules/review"
)

func (c *client) body(text string) {
	var b bytes.Buffer
	require.NoError(c.t, wire.WriteFrame(&b, []byte(text)))
	c.raw(b.String())
}

// The codes are those of JSON-RPC 2.0, section 5.1, and of the protocol's
// ErrorCodes and LSPErrorCodes.
func TestFaultyMessages(t *testing.T) {
	e := connect(t, options())
	for _, c := range []struct {
		body, id string
		code     int
	}{
		{`{"jsonrpc":"2.0","id":1,"method":"textDocument/hover","params":{}}`, "1", -32002},
		{`{"jsonrpc":"2.0","id":"s","method":"shutdown"}`, `"s"`, -32002},
		{`{`, "null", -32700},
		{"\xff\xfe", "null", -32700},
		{``, "null", -32700},
		{`[]`, "null", -32600},
		{`[{"jsonrpc":"2.0","id":1,"method":"shutdown"}]`, "null", -32600},
		{`7`, "null", -32600},
		{`{"id":3,"method":"x"}`, "3", -32600},
		{`{"jsonrpc":"1.0","id":3,"method":"x"}`, "3", -32600},
		{`{"jsonrpc":"2.0","id":4}`, "4", -32600},
		{`{"jsonrpc":"2.0","id":{},"method":"x"}`, "null", -32600},
		{`{"jsonrpc":"2.0","id":true,"method":"x"}`, "null", -32600},
		{`{"jsonrpc":"2.0","id":5,"method":7}`, "5", -32600},
	} {
		e.body(c.body)
		m := e.await(c.body, func(m reply) bool { return m.Method == "" })
		require.NotNil(t, m.Error, c.body)
		assert.Equal(t, c.code, m.Error.Code, c.body)
		assert.Equal(t, c.id, string(m.ID), c.body)
		assert.Nil(t, m.Result, c.body)
	}
	e.notify("textDocument/didOpen", fields{}) // before initialize: dropped
	e.greet(everything)
	for _, c := range []struct {
		method string
		params any
		code   int
	}{
		{"initialize", fields{}, -32600},
		{"textDocument/rename", fields{}, -32601},
		{"textDocument/hover", []int{1}, -32602},
		{"textDocument/hover", at("file:///not-open.ceiling.toml", position{}), -32602},
		{"textDocument/completion", at("file:///not-open.ceiling.toml", position{}), -32602},
		{"textDocument/definition", at("file:///not-open.ceiling.toml", position{}), -32602},
		{"textDocument/documentSymbol", at("file:///not-open.ceiling.toml", position{}), -32602},
		{"textDocument/codeAction", at("file:///not-open.ceiling.toml", position{}), -32602},
	} {
		m := e.answer(e.ask(c.method, c.params))
		require.NotNil(t, m.Error, c.method)
		assert.Equal(t, c.code, m.Error.Code, c.method)
	}
	// Notifications are never answered, whatever is wrong with them.
	e.notify("$/setTrace", fields{"value": "off"})
	e.notify("workspace/unknown", nil)
	e.notify("textDocument/didChange", fields{"textDocument": fields{"uri": "file:///x.ceiling.toml"}})
	e.notify("textDocument/didOpen", "what")
	e.notify("$/cancelRequest", fields{"id": 99})
	e.body(`{"jsonrpc":"2.0","id":"watch-standards","result":null}`)
	e.body(`{"jsonrpc":"2.0","id":"watch-standards","error":{"code":1,"message":"no"}}`)
	e.leave()
	for _, m := range e.kept {
		assert.Equal(t, "client/registerCapability", m.Method, "%s", m.raw)
	}
	assert.Len(t, e.kept, 1)
}

func TestEndings(t *testing.T) {
	t.Run("exit without shutdown", func(t *testing.T) {
		e := connect(t, options()).greet(nil)
		e.notify("exit", nil)
		assert.ErrorIs(t, e.end(), ErrNoShutdown)
	})
	t.Run("exit before initialize", func(t *testing.T) {
		e := connect(t, options())
		e.notify("exit", nil)
		assert.ErrorIs(t, e.end(), ErrNoShutdown)
	})
	t.Run("the stream ends", func(t *testing.T) {
		e := connect(t, options()).greet(nil)
		e.hangUp()
		assert.ErrorIs(t, e.end(), ErrNoShutdown)
	})
	t.Run("after shutdown only exit", func(t *testing.T) {
		e := connect(t, options()).greet(nil)
		e.answer(e.ask("shutdown", nil))
		m := e.answer(e.ask("textDocument/hover", at(uri, position{})))
		require.NotNil(t, m.Error)
		assert.Equal(t, -32600, m.Error.Code)
		e.open(uri, "dryfit = 1\n")
		e.notify("exit", nil)
		assert.NoError(t, e.end())
	})
	t.Run("interrupted", func(t *testing.T) {
		ctx, stop := context.WithCancel(t.Context())
		in, to := io.Pipe()
		defer to.Close()
		stop()
		assert.ErrorIs(t, Serve(ctx, in, io.Discard, options()), context.Canceled)
	})
	t.Run("the editor reads no more", func(t *testing.T) {
		in, to := io.Pipe()
		from, out := io.Pipe()
		from.Close()
		go wire.WriteFrame(to, []byte(`{"jsonrpc":"2.0","id":1,"method":"initialize","params":{}}`))
		assert.ErrorIs(t, Serve(t.Context(), in, out, options()), io.ErrClosedPipe)
	})
}

// Where nobody knows the next message's start, the server says so and ends.
func TestBadFraming(t *testing.T) {
	e := connect(t, options()).greet(nil)
	e.raw("Content-Length: many\r\n\r\n{}")
	m := e.await("an error", func(m reply) bool { return m.Error != nil })
	assert.Equal(t, -32700, m.Error.Code)
	assert.Equal(t, "null", string(m.ID))
	var broken *wire.FrameError
	assert.ErrorAs(t, e.end(), &broken)
}

// A message that is too big is passed over, and the next one is read.
func TestTooBig(t *testing.T) {
	e := connect(t, options()).greet(nil)
	e.raw("Content-Length: 33554433\r\n\r\n")
	for range 32 {
		e.raw(strings.Repeat(" ", 1<<20))
	}
	e.raw(" ")
	m := e.await("an error", func(m reply) bool { return m.Error != nil })
	assert.Equal(t, -32600, m.Error.Code)
	assert.Contains(t, m.Error.Message, "33554433 bytes")
	e.leave()
}

// held is a client of the demo, whose review ends when the channel is closed.
func held(t *testing.T) (*client, chan<- struct{}) {
	hold := make(chan struct{})
	o := options()
	o.Standards = func(string) Found { <-hold; return builtIn("") }
	e := connect(t, o).greet(everything)
	e.open(uri, demo(t))
	return e, hold
}

// A request that waits for a review can be cancelled; so can one that has been
// answered, without effect.
func TestCancel(t *testing.T) {
	e, hold := held(t)
	first, second := e.ask("textDocument/hover", at(uri, position{1, 1})), e.ask("textDocument/hover", at(uri, position{1, 1}))
	e.notify("$/cancelRequest", fields{"id": first})
	m := e.answer(first)
	require.NotNil(t, m.Error)
	assert.Equal(t, -32800, m.Error.Code)
	close(hold)
	assert.Nil(t, e.answer(second).Error)
	e.notify("$/cancelRequest", fields{"id": second})
	e.leave()
}

// What waits for the review of a text that is closed is answered.
func TestCloseWhileWaiting(t *testing.T) {
	e, hold := held(t)
	id := e.ask("textDocument/codeAction", fields{"textDocument": fields{"uri": uri}, "range": span{}, "context": fields{}})
	e.notify("textDocument/didClose", fields{"textDocument": fields{"uri": uri}})
	assert.Equal(t, "null", string(e.answer(id).Result))
	close(hold)
	e.leave()
	assert.Len(t, e.kept, 2, "the registration, and the clearing of what was found")
}

// The text may come in parts, though it is not asked for.
func TestEditsOfARange(t *testing.T) {
	e := connect(t, options()).greet(everything)
	e.open(uri, demo(t))
	e.found(uri, 1)
	from := placeOf(t, demo(t), `"6mm"`, 0)
	e.notify("textDocument/didChange", fields{
		"textDocument": fields{"uri": uri, "version": 2},
		"contentChanges": []fields{
			{"range": span{from, placeOf(t, demo(t), `"6mm"`, 5)}, "text": `"4mm"`},
			{"range": span{position{from.Line, from.Character + 1}, position{from.Line, from.Character + 2}}, "text": `40`},
		},
	})
	want := strings.Replace(demo(t), `lamination   = "6mm"`, `lamination   = "40mm"`, 1)
	bent := ofCode(e.found(uri, 2), "bend.lamination")
	require.Len(t, bent, 1)
	assert.Equal(t, span{placeOf(t, want, `"40mm"`, 0), placeOf(t, want, `"40mm"`, 6)}, bent[0].Range)
	e.leave()
}

// The places are compared with the standard library's UTF-16, line by line as
// the protocol splits them.
func TestPositions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.RuneFrom([]rune("a=\"é𝄞🪵\n\r中\ufeff"))).Draw(t, "text")
		offset := rapid.IntRange(0, len(text)).Draw(t, "offset")
		for offset < len(text) && !utf8.RuneStart(text[offset]) {
			offset++
		}
		if offset > 0 && offset < len(text) && text[offset-1] == '\r' && text[offset] == '\n' {
			offset++ // no place is inside a line's end
		}
		lines := strings.Split(strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text[:offset]), "\n")
		last := lines[len(lines)-1]
		for _, bytes := range []bool{false, true} {
			want := position{Line: len(lines) - 1, Character: len(utf16.Encode([]rune(last)))}
			if bytes {
				want.Character = len(last)
			}
			l := newLined(text, bytes)
			if got := l.position(offset); got != want {
				t.Fatalf("%d: %v, want %v", offset, got, want)
			}
			if got := l.offset(want); got != offset {
				t.Fatalf("%v: %d, want %d", want, got, offset)
			}
		}
		anywhere := position{rapid.IntRange(-2, 9).Draw(t, "line"), rapid.IntRange(-2, 99).Draw(t, "character")}
		if got := newLined(text, false).offset(anywhere); got < 0 || got > len(text) || got < len(text) && !utf8.RuneStart(text[got]) {
			t.Fatalf("%v: %d is no place", anywhere, got)
		}
	})
}

// FuzzDispatch sends a server one message after its greeting. It answers what is
// a request, ends only when told, and what it writes is JSON-RPC.
func FuzzDispatch(f *testing.F) {
	for _, s := range []string{
		`{"jsonrpc":"2.0","id":1,"method":"textDocument/hover","params":{"textDocument":{"uri":"file:///a.ceiling.toml"},"position":{"line":3,"character":2}}}`,
		`{"jsonrpc":"2.0","id":1,"method":"textDocument/completion","params":{"textDocument":{"uri":"file:///a.ceiling.toml"},"position":{"line":-1,"character":-2}}}`,
		`{"jsonrpc":"2.0","id":1,"method":"textDocument/codeAction","params":{"textDocument":{"uri":"file:///a.ceiling.toml"},"range":{"start":{"line":0,"character":0},"end":{"line":900,"character":0}},"context":{}}}`,
		`{"jsonrpc":"2.0","method":"textDocument/didChange","params":{"textDocument":{"uri":"file:///a.ceiling.toml","version":2},"contentChanges":[{"range":{"start":{"line":9,"character":0},"end":{"line":3,"character":0}},"text":"x"}]}}`,
		`{"jsonrpc":"2.0","method":"textDocument/didOpen","params":{"textDocument":{"uri":"::%%","version":2,"text":"[rib\n"}}}`,
		`{"jsonrpc":"2.0","id":"x","method":"shutdown"}`, `{"jsonrpc":"2.0","method":"exit"}`, `[]`, `null`,
	} {
		f.Add([]byte(s))
	}
	text := demo(f)
	f.Fuzz(func(t *testing.T, body []byte) {
		var stream, out bytes.Buffer
		send := func(body []byte) { require.NoError(t, wire.WriteFrame(&stream, body)) }
		open, err := json.Marshal(fields{"jsonrpc": "2.0", "method": "textDocument/didOpen", "params": fields{
			"textDocument": fields{"uri": "file:///a.ceiling.toml", "version": 1, "text": text},
		}})
		require.NoError(t, err)
		send([]byte(`{"jsonrpc":"2.0","id":0,"method":"initialize","params":{}}`))
		send(open)
		send(body)
		log := &logged{}
		o := options()
		o.Rules, o.Log = o.Rules[:3], log
		o.Today = func() string { return review.Options{}.On }
		err = Serve(t.Context(), &stream, &out, o)
		if err != nil && !errors.Is(err, ErrNoShutdown) {
			t.Fatal(err)
		}
		if strings.Contains(log.text(), "goroutine") {
			t.Fatal(log.text())
		}
		r := bufio.NewReader(&out)
		for {
			body, err := wire.ReadFrame(r)
			if err == io.EOF {
				return
			}
			var m reply
			if err != nil || json.Unmarshal(body, &m) != nil || m.Method == "" && (m.Result == nil) == (m.Error == nil) {
				t.Fatalf("%v: %s", err, body)
			}
		}
	})
}
