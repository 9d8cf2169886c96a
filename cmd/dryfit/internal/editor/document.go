package editor

import (
	"encoding/json"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strings"
	"time"

	"dryfit/cmd/dryfit/internal/editor/wire"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// document is a text that the client has open.
type document struct {
	uri, path string // the path is "" for one that is no file
	version   int
	text      lined

	wanted   int // counts what calls for a review; it goes up with each edit
	reviewed int // that the last outcome is of
	due      time.Time
	last     outcome
	good     *review.Assessment // of the last text that could be worked out
	figures  []figure.Figure
	waiting  []waiting
}

// waiting is a request that is answered after a review.
type waiting struct {
	id     json.RawMessage
	method string
	result func() any
}

// outcome is what a review found.
type outcome struct {
	uri        string
	wanted     int
	version    int
	assessment *review.Assessment // nil of standards, and where the review broke off
	// problems are those of a standards file.
	problems []spec.Problem
	found    Found
	panicked any
	stack    []byte
}

// current reports whether the newest text has been reviewed.
func (d *document) current() bool { return d.wanted == d.reviewed }

// extension is what the name of a spec ends in.
const extension = ".ceiling.toml"

func (d *document) isStandards() bool { return filepath.Base(d.path) == standards.FileName }

// isSpec reports whether the text is a spec, as a text that is not saved may
// be. Other files an editor may well send: it knows only that they are TOML.
func (d *document) isSpec() bool { return d.path == "" || strings.HasSuffix(d.path, extension) }

// keys is the vocabulary of the text, nil of one that is neither a spec nor a
// standards file.
func (d *document) keys() *vocabulary {
	switch {
	case d.isSpec():
		return specKeys()
	case d.isStandards():
		return standardsKeys()
	default:
		return nil
	}
}

func (s *server) opened(p openParams) (any, error) {
	d := &document{uri: p.Document.URI, version: p.Document.Version, text: newLined(p.Document.Text, s.bytes)}
	d.path, _ = pathOf(d.uri)
	if had := s.documents[d.uri]; had != nil {
		s.dismiss(had)
	} else {
		s.order = append(s.order, d.uri)
	}
	s.documents[d.uri] = d
	if d.isSpec() || d.isStandards() {
		d.wanted = 1
	}
	return nil, nil
}

// at is the open text of that address. The protocol lets a client ask only for such.
func (s *server) at(uri string) (*document, error) {
	if d := s.documents[uri]; d != nil {
		return d, nil
	}
	return nil, wire.Faulty(wire.CodeInvalidParams, "%s is not open", uri)
}

func (s *server) changed(p changeParams) (any, error) {
	d, err := s.at(p.Document.URI)
	if err != nil {
		return nil, err
	}
	for _, c := range p.Changes {
		text := c.Text
		if r := c.Range; r != nil { // not asked for, but plain enough
			from, to := d.text.offset(r.Start), d.text.offset(r.End)
			text = d.text.text[:from] + c.Text + d.text.text[max(from, to):]
		}
		d.text = newLined(text, s.bytes)
	}
	d.version = p.Document.Version
	if d.isSpec() || d.isStandards() {
		d.wanted++
		d.due = time.Now().Add(s.Quiet)
	}
	return nil, nil
}

func (s *server) closed(p documentParams) (any, error) {
	d, err := s.at(p.Document.URI)
	if err != nil {
		return nil, err
	}
	s.dismiss(d)
	delete(s.documents, d.uri)
	s.order = slices.DeleteFunc(s.order, func(uri string) bool { return uri == d.uri })
	s.notify("textDocument/publishDiagnostics", publishParams{URI: d.uri, Diagnostics: []diagnostic{}})
	s.showBroken()
	return nil, nil
}

// dismiss answers what waits for a text that is gone.
func (s *server) dismiss(d *document) {
	for _, w := range d.waiting {
		s.answer(w.id, nil, nil)
	}
	d.waiting = nil
}

// reviewAll reviews every text again, as where a file of standards may have
// changed.
func (s *server) reviewAll() {
	for _, uri := range s.order {
		if d := s.documents[uri]; d.isSpec() || d.isStandards() {
			d.wanted++
		}
	}
}

// begin starts the next review that is due, or sets the time of it.
func (s *server) begin() {
	if s.busy {
		return
	}
	now := time.Now()
	var next time.Time
	for _, uri := range s.order {
		d := s.documents[uri]
		if d.current() {
			continue
		}
		if !d.due.After(now) || len(d.waiting) > 0 {
			s.busy = true
			go s.review(d.job())
			return
		}
		if next.IsZero() || d.due.Before(next) {
			next = d.due
		}
	}
	if !next.IsZero() {
		s.timer.Reset(next.Sub(now))
	}
}

// job is what a review needs of a document, which the loop goes on changing.
type job struct {
	uri, path, text string
	standards       bool
	wanted, version int
}

func (d *document) job() job {
	return job{
		uri: d.uri, path: d.path, text: d.text.text, standards: d.isStandards(), wanted: d.wanted, version: d.version,
	}
}

// review runs beside the loop, and reads of the server only its options and
// folder, which no longer change, and what the reviews before solved and decided, which
// it adds to.
func (s *server) review(j job) {
	o := outcome{uri: j.uri, wanted: j.wanted, version: j.version}
	defer func() {
		if p := recover(); p != nil {
			o.panicked, o.stack, o.assessment = p, debug.Stack(), nil
		}
		s.done <- o
	}()
	o.found = s.Standards(s.folderOf(j))
	if j.standards {
		_, o.problems = catalog.ReadStandards(filepath.ToSlash(j.path), []byte(j.text))
		return
	}
	s.decided = s.decided.Next()
	options := review.Options{
		Rules: s.Rules, Standards: o.found.Standards, On: s.Today(), Offers: true, Frames: s.solved,
		Search: carrying.Search{Memory: s.decided}, Like: s.said,
	}
	if o.found.Standards == nil {
		options.Standards = standards.BuiltIn()
		o.assessment = review.Unreadable(j.path, "its standards can't be read", options)
		if len(o.found.Broken) > 0 {
			o.assessment = review.Unreadable(j.path, "its standards, "+o.found.Broken[0].Path+", can't be read", options)
		}
		return
	}
	o.assessment = review.Spec(j.path, []byte(j.text), options)
	if o.assessment.Said != nil {
		s.said = o.assessment.Said
	}
}

// folderOf is where the standards of a text are looked for.
func (s *server) folderOf(j job) string {
	switch {
	case j.path != "":
		return filepath.Dir(j.path)
	case s.folder != "":
		return s.folder
	default:
		return "."
	}
}

// finish takes the outcome of a review, publishes it and answers what waited
// for it. One of a text that has changed since is dropped.
func (s *server) finish(o outcome) {
	d := s.documents[o.uri]
	if d == nil || d.wanted != o.wanted {
		return
	}
	d.reviewed, d.last = o.wanted, o
	if o.panicked != nil {
		s.logPanic("review "+o.uri, o.panicked, o.stack)
	}
	if o.assessment != nil && o.assessment.Ceiling != nil {
		d.good, d.figures = o.assessment, nil
	}
	s.guarded("publish", nil, func() {
		s.notify("textDocument/publishDiagnostics", publishParams{
			URI: d.uri, Version: &d.version, Diagnostics: s.diagnostics(d),
		})
		s.showBroken()
	})
	list := d.waiting
	d.waiting = nil
	for _, w := range list {
		s.guarded(w.method, w.id, func() { s.answer(w.id, w.result(), nil) })
	}
}
