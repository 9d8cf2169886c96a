package editor

import (
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/spec"
)

// ofNotChecked is a figure that could not be computed though its inputs are there.
func ofNotChecked(d *document, n engine.NotChecked) diagnostic {
	return diagnostic{
		Range:    d.text.shown(d.text.fromDocument(d.last.assessment.Document.Locate(n.Key))),
		Severity: asError, Code: n.Rule.ID, Source: source,
		Message: show.Safe(report.Said(n.Key, "could not be computed: "+n.Why)),
	}
}

// ofProblem is a fault of a file.
func ofProblem(text lined, p spec.Problem) diagnostic {
	return diagnostic{
		Range: text.shown(text.fromDocument(p.Range)), Severity: asError, Code: p.Rule, Source: source,
		Message: show.Safe(report.Said(p.Key, p.Message)),
	}
}

func (s *server) ofFinding(d *document, f engine.Finding) diagnostic {
	out := diagnostic{
		Range:    d.text.shown(d.text.fromDocument(f.Range)),
		Severity: severities[f.Severity], Code: f.Rule.ID, Source: source,
	}
	word := f.Severity.String()
	if f.Severity == engine.Refer {
		word = "referred"
	}
	lines := []string{word + ": " + report.Said(f.At, f.Text)}
	if !f.Origin.BuiltIn() {
		lines = append(lines, "in the standards, "+report.Place(f))
	}
	if f.Passes != nil {
		lines = append(lines, "passes with "+f.Passes.Key+" = "+show.Written(f.Passes.Value))
	}
	if basis := report.BasisOf(f); basis != "" {
		lines = append(lines, "basis: "+basis)
	}
	if a := f.Accepted; a != nil {
		out.Severity = asHint
		lines = append(lines, "accepted: "+a.Reason+", by "+a.By+", until "+a.Until)
	}
	for i, l := range lines {
		lines[i] = show.Safe(l)
	}
	out.Message = strings.Join(lines, "\n")
	if !s.client.Capabilities.TextDocument.Publish.Related {
		return out
	}
	for _, key := range f.Related {
		at, ok := d.last.assessment.Document.ValueRange(key)
		if !ok {
			at, ok = d.last.assessment.Document.KeyRange(key)
		}
		if ok {
			out.Related = append(out.Related, related{
				Location: location{URI: d.uri, Range: d.text.span(d.text.fromDocument(at))},
				Message:  show.Safe(key) + " takes part",
			})
		}
	}
	return out
}
