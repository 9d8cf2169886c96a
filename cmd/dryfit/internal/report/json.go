package report

import (
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

// The document that JSON writes. Its schema is published with the others.
type (
	jsonReport struct { // and its runs
		Version string `json:"version"`
		On      string `json:"on"`
		Against string `json:"against,omitempty"` // the baseline
		Verdict string `json:"verdict"`
	}
	jsonRun struct { // and its files
		Standards []string      `json:"standards"`
		Verdict   string        `json:"verdict"`
		Counts    JSONCounts    `json:"counts"`
		Baseline  *jsonBaseline `json:"baseline,omitempty"`
	}
	jsonFile struct {
		Path       string           `json:"path"`
		Title      string           `json:"title,omitempty"`
		Sheet      string           `json:"sheet,omitempty"`
		Revision   string           `json:"revision,omitempty"`
		Verdict    string           `json:"verdict"`
		Counts     JSONCounts       `json:"counts"`
		Baseline   *jsonBaseline    `json:"baseline,omitempty"`
		Findings   []JSONFinding    `json:"findings"`
		NotChecked []jsonNotChecked `json:"not_checked"`
		Awaited    []jsonAwaited    `json:"awaited"` // most awaited first, three at most
		Assumed    []JSONAssumed    `json:"assumed"`
		Standards  []string         `json:"standards"`
		Loosened   []JSONLoosened   `json:"loosened"`
	}
	JSONCounts struct {
		Held       int `json:"hold"`
		Queried    int `json:"query"`
		Noted      int `json:"note"`
		Referred   int `json:"refer"`
		Accepted   int `json:"accepted"`
		NotChecked int `json:"not_checked"`
		Uncomputed int `json:"not_computed"`
		Assumed    int `json:"assumed"`
		Unreadable int `json:"unreadable"`
		// Families have a rule that was not checked.
		Families []string `json:"families"`
	}
	jsonBaseline struct { // of the holds, queries and figures not computed
		New    int `json:"new"`
		Before int `json:"already_there"`
	}
	JSONFinding struct {
		Rule      string           `json:"rule"`
		Severity  string           `json:"severity"`
		Key       string           `json:"key"`
		File      string           `json:"file,omitempty"` // of the standards, where the place is there
		Line      int              `json:"line"`
		Column    int              `json:"column"`
		EndLine   int              `json:"end_line"`
		EndColumn int              `json:"end_column"`
		Message   string           `json:"message"`
		Measured  *show.JSONNumber `json:"measured,omitempty"`
		Limit     *show.JSONNumber `json:"limit,omitempty"`
		Unit      string           `json:"unit,omitempty"`
		LimitName string           `json:"limit_name,omitempty"`
		Basis     string           `json:"basis,omitempty"`
		Related   []string         `json:"related,omitempty"`
		Passes    *jsonSetting     `json:"passes_with,omitempty"`
		Accepted  *jsonAccepted    `json:"accepted,omitempty"`
		Baseline  string           `json:"baseline,omitempty"` // "new" or "already there"
	}
	jsonAccepted struct {
		Reason string `json:"reason"`
		By     string `json:"by"`
		Until  string `json:"until"`
	}
	JSONLoosened struct {
		Name    string `json:"name"`
		Used    string `json:"used"`
		BuiltIn string `json:"built_in"`
		Source  string `json:"source"`
		File    string `json:"file"`
		Line    int    `json:"line"`
	}
	jsonSetting struct {
		Key   string `json:"key"`
		Value any    `json:"value"`
	}
	jsonNotChecked struct {
		Rule     string `json:"rule"`
		Needs    string `json:"needs"`
		Why      string `json:"why,omitempty"`
		Failed   bool   `json:"failed,omitempty"`
		Baseline string `json:"baseline,omitempty"`
	}
	jsonAwaited struct {
		Key   string   `json:"key"`
		Rules []string `json:"rules"`
	}
	JSONAssumed struct {
		Key    string `json:"key"`
		Value  any    `json:"value"`
		Source string `json:"source"`
		File   string `json:"file,omitempty"`
		Line   int    `json:"line,omitempty"`
	}
)

func fileJSON(s *review.Assessment) jsonFile {
	f := jsonFile{
		Path: s.Path, Verdict: s.Verdict.String(), Counts: CountsJSON(s.Counts), Baseline: baselineJSON(s.Counts),
		Findings: []JSONFinding{}, NotChecked: []jsonNotChecked{}, Awaited: []jsonAwaited{}, Assumed: []JSONAssumed{},
		Standards: append([]string{}, s.Standards.Files...),
	}
	if p := s.Project; p != nil {
		f.Title, f.Sheet, f.Revision = p.Title.Get(), p.Sheet.Get(), p.Revision.Get()
	}
	for _, p := range s.Problems {
		f.Findings = append(f.Findings, problemJSON(p, faultsAre(s).String()))
	}
	for _, found := range s.Findings {
		f.Findings = append(f.Findings, FindingJSON(found))
	}
	for _, n := range s.NotChecked {
		f.NotChecked = append(f.NotChecked, notCheckedJSON(n, s.Counts.Before.Compared))
	}
	for _, a := range s.Awaited {
		f.Awaited = append(f.Awaited, awaitedJSON(a))
	}
	for _, a := range s.Assumed {
		f.Assumed = append(f.Assumed, AssumedJSON(a))
	}
	f.Loosened = LoosenedJSON(s.Loosened)
	return f
}

func problemJSON(p spec.Problem, baseline string) JSONFinding {
	return JSONFinding{
		Rule: p.Rule, Severity: problemSeverity.String(), Key: p.Key, Message: p.Message,
		Line: p.Position.Line, Column: p.Position.Column, EndLine: p.End.Line, EndColumn: p.End.Column,
		Baseline: baseline,
	}
}

// LoosenedJSON lists what standards loosen.
func LoosenedJSON(list []engine.Loosened) []JSONLoosened {
	out := []JSONLoosened{}
	for _, l := range list {
		out = append(out, JSONLoosened{l.Name, l.Used, l.BuiltIn, l.Source, l.Origin.File, l.Origin.Line})
	}
	return out
}

// FindingJSON is a finding as documents have it.
func FindingJSON(f engine.Finding) JSONFinding {
	j := JSONFinding{
		Rule: f.Rule.ID, Severity: f.Severity.String(), Key: f.At, Message: f.Text, File: f.Origin.File,
		Line: f.Start.Line, Column: f.Start.Column, EndLine: f.End.Line, EndColumn: f.End.Column,
		Measured: show.JSONNumberOf(f.Measured), Limit: show.JSONNumberOf(f.Bound.Value), LimitName: f.Bound.Name,
		Basis: basis(f), Related: f.Related, Baseline: f.Baseline.String(),
	}
	if f.Measured.Unit != 0 {
		j.Unit = f.Measured.Unit.String()
	}
	if f.Passes != nil {
		j.Passes = &jsonSetting{f.Passes.Key, f.Passes.Value}
	}
	if a := f.Accepted; a != nil {
		j.Accepted = &jsonAccepted{a.Reason, a.By, a.Until}
	}
	return j
}

// notCheckedJSON says of a figure that could not be computed whether the baseline
// could not either.
func notCheckedJSON(n engine.NotChecked, compared bool) jsonNotChecked {
	j := jsonNotChecked{Rule: n.Rule.ID, Needs: n.Key, Why: n.Why, Failed: n.Failed}
	switch {
	case n.Before:
		j.Baseline = engine.AlreadyThere.String()
	case n.Failed && compared:
		j.Baseline = engine.New.String()
	}
	return j
}

// CountsJSON is how many findings there are of each severity.
func CountsJSON(c engine.Counts) JSONCounts {
	return JSONCounts{
		Held: c.Held, Queried: c.Queried, Noted: c.Noted, Referred: c.Referred, Accepted: c.Accepted,
		NotChecked: c.NotChecked, Uncomputed: c.Uncomputed, Assumed: c.Assumed, Unreadable: c.Unreadable,
		Families: c.Families.Names(),
	}
}

func baselineJSON(c engine.Counts) *jsonBaseline {
	if !c.Before.Compared {
		return nil
	}
	fresh, before := c.Since()
	return &jsonBaseline{fresh, before}
}

func awaitedJSON(a review.Awaited) jsonAwaited {
	j := jsonAwaited{Key: a.Key}
	for _, r := range a.Rules {
		j.Rules = append(j.Rules, r.ID)
	}
	return j
}

// AssumedJSON is a value that was assumed, and where it comes from.
func AssumedJSON(a standards.Assumed) JSONAssumed {
	return JSONAssumed{Key: a.Key, Value: a.Value, Source: a.Source, File: a.Origin.File, Line: a.Origin.Line}
}
