package editor

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/textproto"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/editor/wire"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
)

// client is an editor with a script. It reads frames with the standard
// library's reader of headers, and not with the server's own.
type client struct {
	t        *testing.T
	to       io.Writer
	hangUp   func()
	messages chan reply
	kept     []reply // notifications and requests that came while something else was awaited
	ended    chan error
	log      *logged
	id       int
}

// reply is a message from the server.
type reply struct {
	ID     json.RawMessage `json:"id"`
	Method string          `json:"method"`
	Params json.RawMessage `json:"params"`
	Result json.RawMessage `json:"result"`
	Error  *wire.Error     `json:"error"`
	raw    []byte
}

type logged struct {
	sync.Mutex
	bytes.Buffer
}

func (l *logged) Write(p []byte) (int, error) {
	l.Lock()
	defer l.Unlock()
	return l.Buffer.Write(p)
}

func (l *logged) text() string {
	l.Lock()
	defer l.Unlock()
	return l.String()
}

// builtIn are the standards where no file says otherwise.
func builtIn(string) Found { return Found{Standards: standards.BuiltIn()} }

func options() Options {
	return Options{
		Version: "test", Rules: catalog.Rules(), Standards: builtIn,
		Today: func() string { return "2026-11-25" }, Quiet: time.Millisecond,
	}
}

// connect starts a server and a client of it, which has not said a word yet.
func connect(t *testing.T, o Options) *client {
	in, to := io.Pipe()
	from, out := io.Pipe()
	c := &client{
		t: t, to: to, hangUp: func() { to.Close() }, messages: make(chan reply, 1000), ended: make(chan error, 1), log: &logged{},
	}
	o.Log = c.log
	go func() {
		err := Serve(context.Background(), in, out, o)
		out.Close()
		in.Close()
		c.ended <- err
	}()
	go c.listen(from)
	t.Cleanup(func() { to.Close() })
	return c
}

func (c *client) listen(from io.Reader) {
	r := bufio.NewReader(from)
	defer close(c.messages)
	for {
		head, err := textproto.NewReader(r).ReadMIMEHeader()
		if err != nil {
			return
		}
		n, err := strconv.Atoi(head.Get("Content-Length"))
		if err != nil {
			panic(err)
		}
		body := make([]byte, n)
		if _, err := io.ReadFull(r, body); err != nil {
			panic(err)
		}
		m := reply{raw: body}
		if err := json.Unmarshal(body, &m); err != nil {
			panic(err)
		}
		c.messages <- m
	}
}

// raw sends bytes as they are.
func (c *client) raw(text string) {
	_, err := io.WriteString(c.to, text)
	require.NoError(c.t, err)
}

func (c *client) send(message any) {
	body, err := json.Marshal(message)
	require.NoError(c.t, err)
	c.raw(fmt.Sprintf("Content-Length: %d\r\n\r\n%s", len(body), body))
}

type fields = map[string]any

func (c *client) notify(method string, params any) {
	c.send(fields{"jsonrpc": "2.0", "method": method, "params": params})
}

// ask sends a request and returns its id.
func (c *client) ask(method string, params any) int {
	c.id++
	c.send(fields{"jsonrpc": "2.0", "id": c.id, "method": method, "params": params})
	return c.id
}

// await reads until a message is the one, and keeps the others.
func (c *client) await(what string, is func(reply) bool) reply {
	c.t.Helper()
	for i, m := range c.kept {
		if is(m) {
			c.kept = append(c.kept[:i:i], c.kept[i+1:]...)
			return m
		}
	}
	for {
		select {
		case m, ok := <-c.messages:
			require.True(c.t, ok, "the server is gone, and %s has not come: %s", what, c.log.text())
			if is(m) {
				return m
			}
			c.kept = append(c.kept, m)
		case <-time.After(20 * time.Second):
			c.t.Fatalf("%s does not come; %s", what, c.log.text())
		}
	}
}

func (c *client) answer(id int) reply {
	c.t.Helper()
	return c.await(fmt.Sprintf("answer %d", id), func(m reply) bool { return m.Method == "" && string(m.ID) == strconv.Itoa(id) })
}

// request asks and reads the result into a value.
func request[R any](c *client, method string, params any) R {
	c.t.Helper()
	var r R
	m := c.answer(c.ask(method, params))
	require.Nil(c.t, m.Error, "%s: %v", method, m.Error)
	require.NoError(c.t, json.Unmarshal(m.Result, &r), "%s", m.Result)
	return r
}

// everything is a client that can do all that the server makes use of.
var everything = fields{
	"workspace": fields{
		"workspaceEdit":         fields{"documentChanges": true},
		"didChangeWatchedFiles": fields{"dynamicRegistration": true},
	},
	"textDocument": fields{
		"publishDiagnostics": fields{"relatedInformation": true},
		"codeAction":         fields{"codeActionLiteralSupport": fields{}},
	},
}

// greet goes through the beginning of a conversation.
func (c *client) greet(capabilities fields) *client {
	c.t.Helper()
	request[any](c, "initialize", fields{"processId": nil, "rootUri": nil, "capabilities": capabilities})
	c.notify("initialized", fields{})
	return c
}

func (c *client) open(uri, text string) {
	c.notify("textDocument/didOpen", fields{"textDocument": fields{"uri": uri, "languageId": "toml", "version": 1, "text": text}})
}

func (c *client) change(uri string, version int, text string) {
	c.notify("textDocument/didChange", fields{
		"textDocument":   fields{"uri": uri, "version": version},
		"contentChanges": []fields{{"text": text}},
	})
}

// found awaits the diagnostics of a version.
func (c *client) found(uri string, version int) []diagnostic {
	c.t.Helper()
	var p publishParams
	c.await(fmt.Sprintf("what is found in %s, version %d", uri, version), func(m reply) bool {
		p = publishParams{}
		return m.Method == "textDocument/publishDiagnostics" && json.Unmarshal(m.Params, &p) == nil &&
			p.URI == uri && (p.Version == nil || *p.Version == version)
	})
	return p.Diagnostics
}

// place is the position of a mark in a text, after some of it, in UTF-16.
func placeOf(t *testing.T, text, mark string, after int) position {
	at := strings.Index(text, mark)
	require.GreaterOrEqual(t, at, 0, "no %q", mark)
	return newLined(text, false).position(at + after)
}

func at(uri string, p position) fields {
	return fields{"textDocument": fields{"uri": uri}, "position": p}
}

// leave ends the conversation in good order.
func (c *client) leave() {
	c.t.Helper()
	m := c.answer(c.ask("shutdown", nil))
	require.Nil(c.t, m.Error)
	require.Equal(c.t, "null", string(m.Result))
	c.notify("exit", nil)
	require.NoError(c.t, c.end())
}

func (c *client) end() error {
	c.t.Helper()
	select {
	case err := <-c.ended:
		return err
	case <-time.After(20 * time.Second):
		c.t.Fatal("the server does not end")
		return nil
	}
}
