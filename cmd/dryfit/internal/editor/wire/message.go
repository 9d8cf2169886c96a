// Package wire reads and writes the messages of JSON-RPC 2.0 in the frames of the
// Language Server Protocol.
package wire

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// Message is a request, a notification or a response of JSON-RPC 2.0.
type Message struct {
	Version string          `json:"jsonrpc"`
	ID      json.RawMessage `json:"id,omitempty"` // absent in a notification
	Method  string          `json:"method,omitempty"`
	Params  json.RawMessage `json:"params,omitempty"`
	Result  json.RawMessage `json:"result,omitempty"`
	Error   *Error          `json:"error,omitempty"`
}

// The error codes of JSON-RPC and of the protocol that are used.
const (
	CodeParse          = -32700
	CodeInvalidRequest = -32600
	CodeNoMethod       = -32601
	CodeInvalidParams  = -32602
	CodeInternal       = -32603
	CodeNotInitialized = -32002
	CodeCancelled      = -32800
)

// Error is an error as it is answered.
type Error struct {
	Code    int    `json:"code"`
	Message string `json:"message"`
}

// Error is the message, which the editor shows.
func (e *Error) Error() string { return e.Message }

// Faulty is an error of a code.
func Faulty(code int, format string, args ...any) *Error {
	return &Error{Code: code, Message: fmt.Sprintf(format, args...)}
}

// ReadMessage takes the body of a frame apart. What is wrong with it is an
// error to answer; the id is that of the message where it could be read.
func ReadMessage(body []byte) (Message, *Error) {
	var m Message
	if !json.Valid(body) {
		return m, Faulty(CodeParse, "the message is not JSON")
	}
	if err := json.Unmarshal(body, &m); err != nil {
		var only struct {
			ID json.RawMessage `json:"id"`
		}
		_ = json.Unmarshal(body, &only) // an array of messages has none
		id, _ := IDOf(only.ID)
		return Message{ID: id}, Faulty(CodeInvalidRequest, "the message is not a request: %v", err)
	}
	id, ok := IDOf(m.ID)
	m.ID = id
	switch {
	case m.Version != "2.0":
		return m, Faulty(CodeInvalidRequest, "the message is not of JSON-RPC 2.0")
	case !ok:
		return m, Faulty(CodeInvalidRequest, "the id is neither a number nor a text")
	case m.Method == "" && m.Result == nil && m.Error == nil:
		return m, Faulty(CodeInvalidRequest, "the message has no method")
	}
	return m, nil
}

// IDOf is an id without blanks, which must be a number or a text.
func IDOf(raw json.RawMessage) (json.RawMessage, bool) {
	raw = bytes.TrimSpace(raw)
	if len(raw) == 0 {
		return nil, true
	}
	if c := raw[0]; c == '"' || c == '-' || '0' <= c && c <= '9' {
		return raw, true
	}
	return nil, string(raw) == "null"
}

// Response is the answer to a request, of which one of result and error is set.
type Response struct {
	Version string          `json:"jsonrpc"`
	ID      json.RawMessage `json:"id"`
	Result  *any            `json:"result,omitempty"`
	Error   *Error          `json:"error,omitempty"`
}

// Outgoing is a notification of ours, or a request where it has an id.
type Outgoing struct {
	Version string `json:"jsonrpc"`
	ID      string `json:"id,omitempty"`
	Method  string `json:"method"`
	Params  any    `json:"params"`
}
