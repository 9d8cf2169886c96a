package report

import (
	"io"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// The document that JSON writes. Its schema is published with the others.
type (
	jsonReport struct {
		Version string    `json:"version"`
		On      string    `json:"on"`
		Against string    `json:"against,omitempty"` // the baseline
		Verdict string    `json:"verdict"`
		Runs    []jsonRun `json:"runs"`
	}
	jsonRun struct {
		Standards []string      `json:"standards"`
		Verdict   string        `json:"verdict"`
		Counts    jsonCounts    `json:"counts"`
		Baseline  *jsonBaseline `json:"baseline,omitempty"`
		Files     []jsonFile    `json:"files"`
	}
	jsonFile struct {
		Path       string           `json:"path"`
		Title      string           `json:"title,omitempty"`
		Sheet      string           `json:"sheet,omitempty"`
		Revision   string           `json:"revision,omitempty"`
		Verdict    string           `json:"verdict"`
		Counts     jsonCounts       `json:"counts"`
		Baseline   *jsonBaseline    `json:"baseline,omitempty"`
		Findings   []jsonFinding    `json:"findings"`
		NotChecked []jsonNotChecked `json:"not_checked"`
		Awaited    []jsonAwaited    `json:"awaited"` // most awaited first, three at most
		Assumed    []jsonAssumed    `json:"assumed"`
		Standards  []string         `json:"standards"`
		Loosened   []jsonLoosened   `json:"loosened"`
	}
	jsonCounts struct {
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
	jsonFinding struct {
		Rule      string        `json:"rule"`
		Severity  string        `json:"severity"`
		Key       string        `json:"key"`
		Line      int           `json:"line"`
		Column    int           `json:"column"`
		EndLine   int           `json:"end_line"`
		EndColumn int           `json:"end_column"`
		Message   string        `json:"message"`
		Measured  *jsonNumber   `json:"measured,omitempty"`
		Limit     *jsonNumber   `json:"limit,omitempty"`
		Unit      string        `json:"unit,omitempty"`
		LimitName string        `json:"limit_name,omitempty"`
		Basis     string        `json:"basis,omitempty"`
		Related   []string      `json:"related,omitempty"`
		Passes    *jsonSetting  `json:"passes_with,omitempty"`
		Accepted  *jsonAccepted `json:"accepted,omitempty"`
		Baseline  string        `json:"baseline,omitempty"` // "new" or "already there"
	}
	jsonAccepted struct {
		Reason string `json:"reason"`
		By     string `json:"by"`
		Until  string `json:"until"`
	}
	jsonLoosened struct {
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
	jsonAssumed struct {
		Key    string `json:"key"`
		Value  any    `json:"value"`
		Source string `json:"source"`
		File   string `json:"file,omitempty"`
		Line   int    `json:"line,omitempty"`
	}
)

// JSON writes the report as one document.
func JSON(w io.Writer, r Report) error {
	out := jsonReport{Version: r.Version, On: r.On, Against: r.Against, Verdict: r.Verdict().String(), Runs: []jsonRun{}}
	for _, run := range r.Runs {
		j := jsonRun{
			Standards: append([]string{}, run.Standards...), Verdict: run.Verdict().String(),
			Counts: countsJSON(run.Counts()), Baseline: baselineJSON(run.Counts()), Files: []jsonFile{},
		}
		for _, s := range run.Sheets {
			j.Files = append(j.Files, fileJSON(s))
		}
		out.Runs = append(out.Runs, j)
	}
	return writeJSON(w, out)
}

func fileJSON(s *review.Sheet) jsonFile {
	f := jsonFile{
		Path: s.Path, Verdict: s.Verdict.String(), Counts: countsJSON(s.Counts), Baseline: baselineJSON(s.Counts),
		Findings: []jsonFinding{}, NotChecked: []jsonNotChecked{}, Awaited: []jsonAwaited{}, Assumed: []jsonAssumed{},
		Standards: append([]string{}, s.Standards.Files...),
	}
	if p := s.Project; p != nil {
		f.Title, f.Sheet, f.Revision = p.Title.Get(), p.Sheet.Get(), p.Revision.Get()
	}
	for _, p := range s.Problems {
		f.Findings = append(f.Findings, jsonFinding{
			Rule: p.Rule, Severity: problemSeverity.String(), Key: p.Key, Message: p.Message,
			Line: p.Position.Line, Column: p.Position.Column, EndLine: p.End.Line, EndColumn: p.End.Column,
			Baseline: faultsAre(s).String(),
		})
	}
	for _, found := range s.Findings {
		f.Findings = append(f.Findings, findingJSON(found))
	}
	for _, n := range s.NotChecked {
		f.NotChecked = append(f.NotChecked, notCheckedJSON(n, s.Counts.Before.Compared))
	}
	for _, a := range s.Awaited {
		f.Awaited = append(f.Awaited, awaitedJSON(a))
	}
	for _, a := range s.Assumed {
		f.Assumed = append(f.Assumed, assumedJSON(a))
	}
	f.Loosened = loosenedJSON(s.Loosened)
	return f
}

func loosenedJSON(list []engine.Loosened) []jsonLoosened {
	out := []jsonLoosened{}
	for _, l := range list {
		out = append(out, jsonLoosened{l.Name, l.Used, l.BuiltIn, l.Source, l.Origin.File, l.Origin.Line})
	}
	return out
}

func findingJSON(f engine.Finding) jsonFinding {
	j := jsonFinding{
		Rule: f.Rule.ID, Severity: f.Severity.String(), Key: f.At, Message: f.Text,
		Line: f.Start.Line, Column: f.Start.Column, EndLine: f.End.Line, EndColumn: f.End.Column,
		Measured: number(f.Measured), Limit: number(f.Bound.Value), LimitName: f.Bound.Name,
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

func countsJSON(c engine.Counts) jsonCounts {
	return jsonCounts{
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

func assumedJSON(a standards.Assumed) jsonAssumed {
	return jsonAssumed{Key: a.Key, Value: a.Value, Source: a.Source, File: a.Origin.File, Line: a.Origin.Line}
}
