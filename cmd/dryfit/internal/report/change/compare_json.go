package change

import (
	"io"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/compare"
	"dryfit/rules/engine"
	"dryfit/rules/model/figure"
	"dryfit/rules/review"
	"dryfit/spec/quantity"
)

// CompareJSON writes the comparison as one document, values in SI.
func CompareJSON(w io.Writer, c Comparison) error {
	out := jsonComparison{
		Version: c.Version, On: c.On, Threshold: show.JSONNumber(c.Threshold), Old: sideJSON(c.Old), New: sideJSON(c.New),
		Keys: []jsonKeyChange{}, Rewritten: append([]string{}, c.Rewritten...), Renumbered: []jsonRenumbered{},
		Figures: []jsonMoved{}, Findings: []jsonTurn{}, NotChecked: []jsonCoverage{},
	}
	for _, k := range c.Keys {
		out.Keys = append(out.Keys, jsonKeyChange{k.Kind.String(), k.Key, k.Name, k.Old, k.New, k.Assumed})
	}
	for _, r := range c.Renumbered {
		out.Renumbered = append(out.Renumbered, jsonRenumbered(r))
	}
	for _, f := range c.Figures {
		out.Figures = append(out.Figures, movedJSON(f))
	}
	for _, f := range c.Findings {
		out.Findings = append(out.Findings, jsonTurn{f.Kind.String(), f.Unchecked, maybeFinding(f.Old), maybeFinding(f.New)})
	}
	for _, n := range c.NotChecked {
		out.NotChecked = append(out.NotChecked, jsonCoverage{n.Kind.String(), n.Rule.ID, n.Needs, n.Why, n.Failed})
	}
	return show.WriteJSON(w, out)
}

func sideJSON(s *review.Assessment) jsonSide {
	p := s.Ceiling.Project
	return jsonSide{s.Path, p.Title.Get(), p.Revision.Get(), append([]string{}, s.Standards.Files...), s.Verdict.String(), report.CountsJSON(s.Counts), report.LoosenedJSON(s.Loosened)}
}

func movedJSON(f compare.FigureChange) jsonMoved {
	value := func(f *figure.Figure) quantity.Value {
		if f == nil {
			return quantity.Value{}
		}
		return f.Value
	}
	a, b := value(f.Old), value(f.New)
	unit := a.Unit
	if b.Unit != 0 {
		unit = b.Unit
	}
	return jsonMoved{f.Kind.String(), f.Key, f.Name, unit.String(), show.JSONNumberOf(a), show.JSONNumberOf(b), f.Crossed}
}

func maybeFinding(f *engine.Finding) *report.JSONFinding {
	if f == nil {
		return nil
	}
	j := report.FindingJSON(*f)
	return &j
}
