package report

import (
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// The parts of a JUnit report that are written: a suite for each file of each
// run, a case for each rule. No attribute stands on the root, and the order of
// the parts is the one that the readers agree on.
type (
	junitSuite struct {
		XMLName    xml.Name        `xml:"testsuite"`
		Name       string          `xml:"name,attr"`
		Timestamp  string          `xml:"timestamp,attr"`
		Hostname   string          `xml:"hostname,attr"`
		Tests      int             `xml:"tests,attr"`
		Failures   int             `xml:"failures,attr"`
		Errors     int             `xml:"errors,attr"`
		Skipped    int             `xml:"skipped,attr"`
		Time       string          `xml:"time,attr"`
		Package    string          `xml:"package,attr"`
		ID         int             `xml:"id,attr"`
		Properties []junitProperty `xml:"properties>property"`
		Cases      []junitCase     `xml:"testcase"`
		Out        string          `xml:"system-out"`
		Err        string          `xml:"system-err"`
	}
	junitProperty struct {
		Name  string `xml:"name,attr"`
		Value string `xml:"value,attr"`
	}
	junitCase struct {
		Name    string        `xml:"name,attr"`
		Class   string        `xml:"classname,attr"`
		Time    string        `xml:"time,attr"`
		Skipped *junitSkipped `xml:"skipped"`
		Error   *junitFault   `xml:"error"`
		Failure *junitFault   `xml:"failure"`
	}
	junitSkipped struct {
		Text string `xml:",chardata"`
	}
	junitFault struct {
		Message string `xml:"message,attr"`
		Type    string `xml:"type,attr"`
		Text    string `xml:",chardata"`
	}
)

// JUnit writes a test report: a rule that holds a spec, or under strict queries
// it, is a failure; a file that could not be checked, and a figure that could not
// be computed, is an error; a rule that was not checked is skipped, with its
// reason. What the standards loosen, notes, queries that do not fail, accepted and referred items, and what
// the baseline had, are the suite's output.
func JUnit(w io.Writer, r Report) Writer {
	j := &junitWriter{to: w, report: r, xml: xml.NewEncoder(w)}
	j.xml.Indent("", "  ")
	if _, j.err = io.WriteString(w, xml.Header); j.err == nil {
		j.err = j.xml.EncodeToken(junitRoot)
	}
	return j
}

type junitWriter struct {
	to     io.Writer
	report Report
	xml    *xml.Encoder
	err    error // of its beginning
	run    Run
	suites int
}

// junitRoot is above all suites.
var junitRoot = xml.StartElement{Name: xml.Name{Local: "testsuites"}}

func (j *junitWriter) Begin(run Run) error {
	j.run = run
	return j.err
}

func (j *junitWriter) Add(s *review.Assessment) error {
	suite := j.report.junitSuite(j.run, s, j.suites)
	j.suites++
	return j.xml.Encode(suite)
}

func (*junitWriter) End(Run) error { return nil }

func (j *junitWriter) Close() error {
	if err := j.xml.EncodeToken(junitRoot.End()); err != nil {
		return err
	}
	if err := j.xml.Flush(); err != nil {
		return err
	}
	_, err := io.WriteString(j.to, "\n")
	return err
}

func (r Report) junitSuite(run Run, s *review.Assessment, id int) junitSuite {
	suite := junitSuite{
		Name: show.Safe(s.Path), Timestamp: r.On + "T00:00:00", Hostname: "localhost", Time: "0", Package: "dryfit", ID: id,
		Properties: []junitProperty{
			{"standards", show.Safe(s.Standards.Name)}, {"verdict", s.Verdict.String()}, {"judged on", r.On},
		},
	}
	if len(run.Standards) > 0 {
		suite.Properties = append(suite.Properties, junitProperty{"standards files", show.Safe(strings.Join(run.Standards, ", "))})
	}
	suite.Properties = append(suite.Properties, r.junitBaseline(s)...)
	all := Entries(s)
	if len(s.Problems) > 0 {
		suite.Cases = []junitCase{{Name: "file", Class: "file", Time: "0", Error: fault(all, "could not be checked")}}
	} else {
		suite.Cases = r.junitCases(s, all)
	}
	var said []string
	for _, e := range all {
		if len(s.Problems) == 0 && !e.fails(r.Strict) {
			said = append(said, junitLine(e))
		}
	}
	suite.Out = strings.Join(append(Loosenings(s.Loosened), said...), "\n")
	for _, c := range suite.Cases {
		suite.Tests++
		switch {
		case c.Error != nil:
			suite.Errors++
		case c.Failure != nil:
			suite.Failures++
		case c.Skipped != nil:
			suite.Skipped++
		}
	}
	return suite
}

// junitBaseline names the baseline, and what of the suite is new and what is not.
func (r Report) junitBaseline(s *review.Assessment) []junitProperty {
	if r.Against == "" {
		return nil
	}
	fresh, before := s.Counts.Since()
	return []junitProperty{
		{"baseline", show.Safe(r.Against)}, {engine.New.String(), strconv.Itoa(fresh)}, {engine.AlreadyThere.String(), strconv.Itoa(before)},
	}
}

// junitCases are one for each rule. One that fails keeps what it could not
// check elsewhere in the spec.
func (r Report) junitCases(s *review.Assessment, all []Entry) []junitCase {
	failing := map[string][]Entry{}
	for _, e := range all {
		if e.fails(r.Strict) {
			failing[e.Rule] = append(failing[e.Rule], e)
		}
	}
	unchecked := map[string][]engine.NotChecked{}
	for _, n := range s.NotChecked {
		unchecked[n.Rule.ID] = append(unchecked[n.Rule.ID], n)
	}
	var out []junitCase
	for _, rule := range r.Rules {
		c := junitCase{Name: rule.ID + ": " + rule.Title, Class: "dryfit." + strings.Split(rule.ID, ".")[0], Time: "0"}
		first, without := reasons(unchecked[rule.ID])
		switch found := failing[rule.ID]; {
		case len(found) > 0:
			c.Failure = fault(found, found[0].severity.String())
			c.Failure.Text = strings.Join(append([]string{c.Failure.Text}, without...), "\n")
		case first.failed && !first.before:
			c.Error = &junitFault{Message: show.Safe(first.why), Type: "could not be computed", Text: strings.Join(without, "\n")}
		case len(without) > 0:
			c.Skipped = &junitSkipped{strings.Join(without, "\n")}
		}
		out = append(out, c)
	}
	return out
}

// reasons are why a rule has no outcome, and the first of them; a figure that
// failed comes before a key that is missing.
func reasons(list []engine.NotChecked) (first reason, said []string) {
	for i, l := range Lacking(list) {
		said = append(said, show.Safe("not checked: "+l.Said()))
		if i == 0 || l.failed && !l.before && (!first.failed || first.before) {
			first = l.reason
		}
	}
	return first, said
}

func fault(list []Entry, kind string) *junitFault {
	lines := make([]string, len(list))
	for i, e := range list {
		lines[i] = junitLine(e)
	}
	return &junitFault{Message: show.Safe(list[0].Said()), Type: kind, Text: strings.Join(lines, "\n")}
}

func junitLine(e Entry) string {
	place := positionText(e.Start)
	if !e.origin.BuiltIn() {
		place = e.Line()
	}
	line := fmt.Sprintf("%s %s, %s%s: %s", e.severity, e.Rule, place, e.since(), e.Said())
	if e.Passes != "" {
		line += " Passes with " + e.Passes + "."
	}
	if e.Accepted != "" {
		line += " Accepted: " + e.Accepted + "."
	}
	return show.Safe(line)
}
