package editor

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// message is a request, a notification or a response of JSON-RPC 2.0.
type message struct {
	Version string          `json:"jsonrpc"`
	ID      json.RawMessage `json:"id,omitempty"` // absent in a notification
	Method  string          `json:"method,omitempty"`
	Params  json.RawMessage `json:"params,omitempty"`
	Result  json.RawMessage `json:"result,omitempty"`
	Error   *rpcError       `json:"error,omitempty"`
}

// The error codes of JSON-RPC and of the protocol that are used.
const (
	codeParse          = -32700
	codeInvalidRequest = -32600
	codeNoMethod       = -32601
	codeInvalidParams  = -32602
	codeInternal       = -32603
	codeNotInitialized = -32002
	codeCancelled      = -32800
)

// rpcError is an error as it is answered.
type rpcError struct {
	Code    int    `json:"code"`
	Message string `json:"message"`
}

// Error is the message, which the editor shows.
func (e *rpcError) Error() string { return e.Message }

func faulty(code int, format string, args ...any) *rpcError {
	return &rpcError{Code: code, Message: fmt.Sprintf(format, args...)}
}

// readMessage takes the body of a frame apart. What is wrong with it is an
// error to answer; the id is that of the message where it could be read.
func readMessage(body []byte) (message, *rpcError) {
	var m message
	if !json.Valid(body) {
		return m, faulty(codeParse, "the message is not JSON")
	}
	if err := json.Unmarshal(body, &m); err != nil {
		var only struct {
			ID json.RawMessage `json:"id"`
		}
		_ = json.Unmarshal(body, &only) // an array of messages has none
		id, _ := idOf(only.ID)
		return message{ID: id}, faulty(codeInvalidRequest, "the message is not a request: %v", err)
	}
	id, ok := idOf(m.ID)
	m.ID = id
	switch {
	case m.Version != "2.0":
		return m, faulty(codeInvalidRequest, "the message is not of JSON-RPC 2.0")
	case !ok:
		return m, faulty(codeInvalidRequest, "the id is neither a number nor a text")
	case m.Method == "" && m.Result == nil && m.Error == nil:
		return m, faulty(codeInvalidRequest, "the message has no method")
	}
	return m, nil
}

// idOf is an id without blanks, which must be a number or a text.
func idOf(raw json.RawMessage) (json.RawMessage, bool) {
	raw = bytes.TrimSpace(raw)
	if len(raw) == 0 {
		return nil, true
	}
	if c := raw[0]; c == '"' || c == '-' || '0' <= c && c <= '9' {
		return raw, true
	}
	return nil, string(raw) == "null"
}

// response is the answer to a request, of which one of result and error is set.
type response struct {
	Version string          `json:"jsonrpc"`
	ID      json.RawMessage `json:"id"`
	Result  *any            `json:"result,omitempty"`
	Error   *rpcError       `json:"error,omitempty"`
}

// outgoing is a notification of ours, or a request where it has an id.
type outgoing struct {
	Version string `json:"jsonrpc"`
	ID      string `json:"id,omitempty"`
	Method  string `json:"method"`
	Params  any    `json:"params"`
}
