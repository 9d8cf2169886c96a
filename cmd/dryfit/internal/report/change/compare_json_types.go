package change

import (
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
)

// The document that compare writes as JSON. Its schema is published.
type (
	jsonComparison struct {
		Version    string           `json:"version"`
		On         string           `json:"on"`
		Threshold  show.JSONNumber  `json:"threshold"`
		Old        jsonSide         `json:"old"`
		New        jsonSide         `json:"new"`
		Keys       []jsonKeyChange  `json:"keys"`
		Rewritten  []string         `json:"rewritten"`
		Renumbered []jsonRenumbered `json:"renumbered"`
		Figures    []jsonMoved      `json:"figures"`
		Findings   []jsonTurn       `json:"findings"`
		NotChecked []jsonCoverage   `json:"not_checked"`
	}
	jsonSide struct {
		Path      string                `json:"path"`
		Title     string                `json:"title"`
		Revision  string                `json:"revision,omitempty"`
		Standards []string              `json:"standards"`
		Verdict   string                `json:"verdict"`
		Counts    report.JSONCounts     `json:"counts"`
		Loosened  []report.JSONLoosened `json:"loosened"`
	}
	jsonKeyChange struct {
		Change  string `json:"change"`
		Key     string `json:"key"`
		Name    string `json:"name,omitempty"`
		Old     any    `json:"old,omitempty"`
		New     any    `json:"new,omitempty"`
		Assumed any    `json:"assumed,omitempty"`
	}
	jsonRenumbered struct {
		Array     string `json:"array"`
		Name      string `json:"name,omitempty"`
		Old       int    `json:"old"`
		New       int    `json:"new"`
		Reordered bool   `json:"reordered"`
	}
	jsonMoved struct {
		Change  string           `json:"change"`
		Key     string           `json:"key"`
		Name    string           `json:"name"`
		Unit    string           `json:"unit"`
		Old     *show.JSONNumber `json:"old"`
		New     *show.JSONNumber `json:"new"`
		Crossed []string         `json:"crossed,omitempty"`
	}
	jsonTurn struct {
		Change    string              `json:"change"` // added, removed, changed
		Unchecked bool                `json:"unchecked,omitempty"`
		Old       *report.JSONFinding `json:"old,omitempty"`
		New       *report.JSONFinding `json:"new,omitempty"`
	}
	jsonCoverage struct {
		Change string `json:"change"`
		Rule   string `json:"rule"`
		Needs  string `json:"needs"`
		Why    string `json:"why,omitempty"`
		Failed bool   `json:"failed,omitempty"`
	}
)
