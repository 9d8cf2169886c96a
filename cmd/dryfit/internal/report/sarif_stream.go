package report

import (
	"bytes"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// SARIFLog writes a SARIF 2.1.0 log as the specs are done: of each spec nothing is kept but
// what it notifies of. A run begins with its results and ends with what is known at its end.
type SARIFLog struct {
	to      io.Writer
	report  Report
	index   map[string]int // of each rule in the list of a run
	runs    int            // that were begun
	open    bool           // a run is
	results int            // of that
	call    sarifInvocation
	docs    string // the first address of the docs in the run
	err     error  // of the first write that failed
}

// NewSARIFLog begins a log.
func NewSARIFLog(w io.Writer, r Report) *SARIFLog {
	_, index := sarifRules(r.Rules, "")
	l := &SARIFLog{to: w, report: r, index: index}
	l.text("{\n  \"$schema\": \"https://json.schemastore.org/sarif-2.1.0.json\",\n  \"version\": \"2.1.0\",\n  \"runs\": [")
	return l
}

// Add writes the results of a spec of the run.
func (l *SARIFLog) Add(s *review.Assessment) error {
	l.begin()
	uri := uriOf(l.report.InRepository(s.Path))
	for _, result := range l.report.sarifResults(s, uri, l.index) {
		l.next(&l.results, "\n        ")
		l.value(4, result)
	}
	l.call.Notifications = append(l.call.Notifications, sarifNotes(s, uri, l.index)...)
	if s.Verdict == engine.CouldNotCheck || s.Counts.Uncomputed > 0 {
		l.call.Successful = false
	}
	if l.docs == "" && s.Standards != nil {
		l.docs = s.Standards.Docs
	}
	return l.err
}

// EndRun ends the run, of which the counts and the verdict of each spec are enough.
func (l *SARIFLog) EndRun(run Run) error {
	l.begin()
	if l.results > 0 {
		l.text("\n      ")
	}
	l.text("]")
	list, _ := sarifRules(l.report.Rules, l.docs)
	driver := sarifDriver{
		Name: "dryfit", FullName: "dryfit, checks of specifications of shop-built wood ceilings", Version: l.report.Version,
		SemanticVersion: semantic(l.report.Version), Information: l.docs, Rules: list,
	}
	for _, part := range []struct {
		name string
		is   any
	}{
		{"tool", sarifTool{driver}},
		{"automationDetails", sarifAutomation{"dryfit/" + automation(run) + "/"}},
		{"invocations", []sarifInvocation{l.call}},
		{"columnKind", "unicodeCodePoints"},
		{"properties", l.report.sarifProperties(run)},
	} {
		l.text(",\n      \"" + part.name + "\": ")
		l.value(3, part.is)
	}
	l.text("\n    }")
	l.open = false
	return l.err
}

// Close ends the log.
func (l *SARIFLog) Close() error {
	if l.runs > 0 {
		l.text("\n  ")
	}
	l.text("]\n}\n")
	return l.err
}

// begin begins a run, if none is open.
func (l *SARIFLog) begin() {
	if l.open {
		return
	}
	l.next(&l.runs, "\n    ")
	l.text("{\n      \"results\": [")
	l.open, l.results, l.docs = true, 0, ""
	l.call = sarifInvocation{Successful: true, Notifications: []sarifNotification{}}
}

// next writes what is before an element of a list that has so many.
func (l *SARIFLog) next(elements *int, indent string) {
	if *elements > 0 {
		l.text(",")
	}
	*elements++
	l.text(indent)
}

// value writes a value whose lines are indented by so many levels.
func (l *SARIFLog) value(depth int, v any) {
	var b bytes.Buffer
	e := show.NewEncoder(&b)
	e.SetIndent(strings.Repeat("  ", depth), "  ")
	if err := e.Encode(v); err != nil && l.err == nil {
		l.err = err
	}
	l.text(strings.TrimSuffix(b.String(), "\n"))
}

func (l *SARIFLog) text(s string) {
	if l.err == nil {
		_, l.err = io.WriteString(l.to, s)
	}
}
