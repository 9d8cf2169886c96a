// Package editor is a server of the Language Server Protocol: what is found in a
// spec shows while it is being written, with what a key means, what may be
// written there and what would pass.
//
// One loop owns all state. It takes messages in their order; a review runs
// beside it, one at a time, on a text that does not change, and its outcome
// comes back to the loop.
package editor

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"time"

	"dryfit/cmd/dryfit/internal/editor/wire"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// Options is what a server works with.
type Options struct {
	Version string
	Rules   []*engine.Rule
	// Standards finds and reads the standards for the specs of a folder, anew
	// each time.
	Standards func(folder string) Found
	// Today is the date that acceptances are judged on.
	Today func() string
	// Quiet is how long a text must be left alone before it is reviewed.
	Quiet time.Duration
	Log   io.Writer // for what goes wrong in the server itself
}

// Found is the standards for a folder.
type Found struct {
	Standards *standards.Standards // nil where a file of them can't be taken
	Broken    []Broken
}

// Broken is a standards file that can't be taken.
type Broken struct {
	Path     string
	Source   []byte // nil where it can't be read
	Problems []spec.Problem
}

// ErrNoShutdown says that the client went without asking the server to shut
// down.
var ErrNoShutdown = errors.New("the editor left without a shutdown request")

// Serve speaks with one client until it exits. Its error is nil after a
// shutdown in good order.
func Serve(ctx context.Context, in io.Reader, out io.Writer, o Options) error {
	s := &server{
		Options: o, out: out, documents: map[string]*document{}, shown: map[string]bool{},
		done: make(chan outcome, 1), timer: time.NewTimer(time.Hour), solved: new(hanging.Memory), decided: carrying.NewMemory(),
	}
	defer s.timer.Stop()
	stop := make(chan struct{})
	defer close(stop)
	return s.loop(ctx, receive(in, stop))
}

// received is one frame, or the error that ended or interrupted the stream.
type received struct {
	body []byte
	err  error
}

// waitingMessages is how many messages are read ahead.
const waitingMessages = 64

func receive(in io.Reader, stop <-chan struct{}) <-chan received {
	frames := make(chan received, waitingMessages)
	go func() {
		defer close(frames)
		r := bufio.NewReader(in)
		for {
			body, err := wire.ReadFrame(r)
			select {
			case frames <- received{body, err}:
			case <-stop:
				return
			}
			var tooBig *wire.TooBigError
			if err != nil && !errors.As(err, &tooBig) {
				return
			}
		}
	}()
	return frames
}

// phase is how far the conversation has come.
type phase uint8

const (
	starting phase = iota
	running
	closing
)

type server struct {
	Options
	out     io.Writer
	failed  error // of writing
	phase   phase
	exiting bool
	client  initializeParams
	bytes   bool   // characters are bytes
	folder  string // of the workspace; "" for that of the process

	documents map[string]*document // by URI
	order     []string             // of opening
	shown     map[string]bool      // URIs of broken standards that are not open and have diagnostics
	busy      bool
	done      chan outcome
	timer     *time.Timer
	solved    *hanging.Memory   // by the reviews before: most changes leave the frame as it is
	decided   *carrying.Memory  // likewise: and most legs of the way in
	said      *engine.Precedent // in the review before: and most rules say the same again
}

func (s *server) loop(ctx context.Context, frames <-chan received) error {
	for !s.exiting && s.failed == nil {
		// Edits that have come are taken before a review is begun, so that it
		// is of the newest text.
		if len(frames) == 0 {
			s.begin()
		}
		select {
		case <-ctx.Done():
			return ctx.Err()
		case f, ok := <-frames:
			if !ok {
				return ErrNoShutdown
			}
			if err := s.take(f); err != nil {
				return err
			}
		case o := <-s.done:
			s.busy = false
			s.finish(o)
		case <-s.timer.C:
		}
	}
	return s.ended()
}

// ended is what there is to say of how the conversation ended.
func (s *server) ended() error {
	switch {
	case s.failed != nil:
		return fmt.Errorf("write to the editor: %w", s.failed)
	case s.phase != closing:
		return ErrNoShutdown
	default:
		return nil
	}
}

// take handles a frame. Its error ends the conversation.
func (s *server) take(f received) error {
	var broken *wire.FrameError
	var tooBig *wire.TooBigError
	switch {
	case errors.Is(f.err, io.EOF):
		return ErrNoShutdown
	case errors.As(f.err, &tooBig):
		s.answer(nil, nil, wire.Faulty(wire.CodeInvalidRequest, "%v", f.err))
		return nil
	case errors.As(f.err, &broken):
		s.answer(nil, nil, wire.Faulty(wire.CodeParse, "%v", f.err))
		return f.err
	case f.err != nil:
		return f.err
	}
	m, fault := wire.ReadMessage(f.body)
	if fault != nil {
		s.answer(m.ID, nil, fault)
		return nil
	}
	if m.Method == "" {
		return nil // the answer to a request of ours
	}
	s.guarded(m.Method, m.ID, func() { s.dispatch(m) })
	return nil
}

// guarded runs a part of the server. A panic in it is answered and logged, and
// the server goes on.
func (s *server) guarded(what string, id json.RawMessage, run func()) {
	defer func() {
		if p := recover(); p != nil {
			s.logPanic(what, p, debug.Stack())
			if id != nil {
				s.answer(id, nil, wire.Faulty(wire.CodeInternal, "an internal error; standard error has the details"))
			}
		}
	}()
	run()
}

func (s *server) log(format string, args ...any) {
	fmt.Fprintf(s.Log, "dryfit: %s\n", show.Safe(fmt.Sprintf(format, args...)))
}

func (s *server) logPanic(what string, p any, stack []byte) {
	s.log("%s: %v", what, p)
	fmt.Fprintf(s.Log, "%s\n", stack)
}

// answer responds to a request; one without an id is told of a message that
// had none to read.
func (s *server) answer(id json.RawMessage, result any, fault *wire.Error) {
	if id == nil {
		id = json.RawMessage("null")
	}
	r := wire.Response{Version: "2.0", ID: id, Error: fault}
	if fault == nil {
		r.Result = &result
	}
	s.write(r)
}

func (s *server) notify(method string, params any) {
	s.write(wire.Outgoing{Version: "2.0", Method: method, Params: params})
}

func (s *server) write(message any) {
	var body bytes.Buffer
	if err := show.NewEncoder(&body).Encode(message); err != nil {
		s.log("%v", err)
		return
	}
	if s.failed == nil {
		s.failed = wire.WriteFrame(s.out, bytes.TrimSpace(body.Bytes()))
	}
}
