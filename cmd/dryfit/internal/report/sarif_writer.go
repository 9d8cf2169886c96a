package report

import (
	"io"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// SARIF writes a SARIF 2.1.0 log, a run for each set of standards. A run begins with its
// results, which are written as the specs are done, and ends with what is known at its
// end.
func SARIF(w io.Writer, r Report) Writer {
	_, index := sarifRules(r.Rules, "")
	l := &sarifWriter{jsonText: jsonText{to: w}, report: r, index: index}
	l.text("{\n  \"$schema\": \"https://json.schemastore.org/sarif-2.1.0.json\",\n  \"version\": \"2.1.0\",\n  \"runs\": [")
	return l
}

type sarifWriter struct {
	jsonText
	report  Report
	index   map[string]int // of each rule in the list of a run
	runs    int            // that were begun
	results int            // of the run
	notes   *jsonKept      // notifications of the run
	call    sarifInvocation
	docs    string // the first address of the docs in the run
}

func (l *sarifWriter) Begin(Run) error {
	l.next(&l.runs, 2)
	l.text("{\n      \"results\": [")
	l.results, l.docs, l.notes = 0, "", newJSONKept(6)
	l.call = sarifInvocation{Successful: true}
	return l.err
}

func (l *sarifWriter) Add(s *review.Assessment) error {
	uri := uriOf(l.report.InRepository(s.Path))
	for _, result := range l.report.sarifResults(s, uri, l.index) {
		l.next(&l.results, 4)
		l.value(4, result)
	}
	for _, note := range sarifNotes(s, uri, l.index) {
		l.notes.add(note)
	}
	if s.Verdict == engine.CouldNotCheck || s.Counts.Uncomputed > 0 {
		l.call.Successful = false
	}
	if l.docs == "" && s.Standards != nil {
		l.docs = s.Standards.Docs
	}
	return l.err
}

func (l *sarifWriter) End(run Run) error {
	l.end(l.results, 4)
	l.member(3, "invocations")
	l.text("[\n        ")
	l.open(4, l.call)
	l.member(5, "toolExecutionNotifications")
	l.list(l.notes)
	l.text("\n        }\n      ]")
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
		{"columnKind", "unicodeCodePoints"},
		{"properties", l.report.sarifProperties(run)},
	} {
		l.member(3, part.name)
		l.value(3, part.is)
	}
	l.text("\n    }")
	return l.err
}

func (l *sarifWriter) Close() error {
	l.end(l.runs, 2)
	l.text("\n}\n")
	return l.err
}
