package editor

import (
	"encoding/json"
	"errors"

	"dryfit/cmd/dryfit/internal/editor/wire"
)

// later is the result of a request that needs the review of a document's newest
// text.
type later struct {
	document *document
	result   func() any
}

// requests are answered; notifications are not.
var (
	requests = map[string]func(*server, json.RawMessage) (any, error){
		"shutdown":                    func(s *server, _ json.RawMessage) (any, error) { s.phase = closing; return nil, nil },
		"textDocument/hover":          with((*server).hover),
		"textDocument/completion":     with((*server).complete),
		"textDocument/codeAction":     with((*server).actions),
		"textDocument/documentSymbol": with((*server).symbols),
		"textDocument/definition":     with((*server).definition),
	}
	notifications = map[string]func(*server, json.RawMessage) (any, error){
		"initialized":                     func(s *server, _ json.RawMessage) (any, error) { s.watch(); return nil, nil },
		"$/cancelRequest":                 with((*server).cancel),
		"textDocument/didOpen":            with((*server).opened),
		"textDocument/didChange":          with((*server).changed),
		"textDocument/didClose":           with((*server).closed),
		"textDocument/didSave":            func(s *server, _ json.RawMessage) (any, error) { s.reviewAll(); return nil, nil },
		"workspace/didChangeWatchedFiles": func(s *server, _ json.RawMessage) (any, error) { s.reviewAll(); return nil, nil },
	}
)

// with reads the parameters of a method.
func with[P any](handle func(*server, P) (any, error)) func(*server, json.RawMessage) (any, error) {
	return func(s *server, raw json.RawMessage) (any, error) {
		var p P
		if err := json.Unmarshal(raw, &p); err != nil {
			return nil, wire.Faulty(wire.CodeInvalidParams, "parameters: %v", err)
		}
		return handle(s, p)
	}
}

func (s *server) dispatch(m wire.Message) {
	if m.ID == nil {
		s.notified(m)
		return
	}
	result, err := s.requested(m)
	var fault *wire.Error
	wait, waits := result.(later)
	switch {
	case errors.As(err, &fault):
		s.answer(m.ID, nil, fault)
	case waits && !wait.document.current():
		wait.document.waiting = append(wait.document.waiting, waiting{m.ID, m.Method, wait.result})
	case waits:
		s.answer(m.ID, wait.result(), nil)
	default:
		s.answer(m.ID, result, nil)
	}
}

func (s *server) requested(m wire.Message) (any, error) {
	switch {
	case m.Method == "initialize" && s.phase == starting:
		return with((*server).initialize)(s, m.Params)
	case s.phase == starting:
		return nil, wire.Faulty(wire.CodeNotInitialized, "%s before initialize", m.Method)
	case m.Method == "initialize":
		return nil, wire.Faulty(wire.CodeInvalidRequest, "initialize comes once")
	case s.phase == closing:
		return nil, wire.Faulty(wire.CodeInvalidRequest, "%s after shutdown", m.Method)
	}
	handle, ok := requests[m.Method]
	if !ok {
		return nil, wire.Faulty(wire.CodeNoMethod, "there is no method %q", m.Method)
	}
	return handle(s, m.Params)
}

func (s *server) notified(m wire.Message) {
	if m.Method == "exit" {
		s.exiting = true
		return
	}
	handle, ok := notifications[m.Method]
	if !ok || s.phase != running {
		return
	}
	if _, err := handle(s, m.Params); err != nil {
		s.log("%s: %v", m.Method, err)
	}
}
