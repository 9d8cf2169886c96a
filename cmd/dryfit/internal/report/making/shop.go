// Package making writes what the shop and the crew work from: the takeoff, the
// shop's lists, and the raising plan.
package making

import (
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/result/shop"
	"dryfit/rules/review"
)

// ShopKind is what the figures of a package of a shop are known by: a folder with
// a file of it is one.
const ShopKind = "dryfit shop"

// ShopIndex is the name of that file.
const ShopIndex = "shop.json"

// Shop is the package of one spec that a shop cuts by.
type Shop struct {
	Assessment *review.Assessment
	Seal       report.Seal
	Shop       *shop.Shop
	Files      []string // of the package, by name
}

// The warnings of a package.
const (
	NotForCutting = "NOT FOR CUTTING"
	NotReleased   = "The hanging is referred and not released. Do not bore strap holes before the release."
)

// Fails reports whether the check of the spec fails it.
func (s Shop) Fails() bool { return s.Assessment.Verdict == engine.Failed }

// Referred reports whether the hanging is.
func (s Shop) Referred() bool {
	for _, f := range s.Assessment.Findings {
		if f.Severity == engine.Refer && strings.HasPrefix(f.Rule.ID, "strap.") {
			return true
		}
	}
	return false
}

// Warnings are what each file of the package says, one with holes of straps more.
func (s Shop) Warnings(holes bool) (out []string) {
	if s.Fails() {
		out = append(out, NotForCutting+": the check fails the spec.")
	}
	if holes && s.Referred() {
		out = append(out, NotReleased)
	}
	return out
}

// left are the lists that are not computed, and why.
func (s Shop) left() (out []string) {
	if err := s.Shop.Sheets.Get().Err; err != nil {
		out = append(out, "sheets: "+err.Error())
	}
	if err := s.Shop.Marks.Get().Err; err != nil {
		out = append(out, "marks: "+err.Error())
	}
	return out
}

// ShopJSON writes all figures as one document, in SI.
func ShopJSON(w io.Writer, s Shop) error {
	holes := s.Shop.Count.Get().Holes > 0
	p := s.Assessment.Project
	out := struct {
		Package    string                `json:"package"`
		Version    string                `json:"version"`
		On         string                `json:"on"`
		Strict     bool                  `json:"strict"`
		Spec       report.Digest         `json:"spec"`
		Standards  []report.Digest       `json:"standards"`
		Title      string                `json:"title"`
		Sheet      string                `json:"sheet"`
		Revision   string                `json:"revision"`
		Verdict    string                `json:"verdict"`
		ForCutting bool                  `json:"for_cutting"`
		Left       []string              `json:"not_computed,omitempty"`
		Warnings   []string              `json:"warnings"`
		Figures    map[string]any        `json:"figures"`
		Assumed    []report.JSONAssumed  `json:"assumed"`
		Shop       []report.JSONAssumed  `json:"shop"`
		Loosened   []report.JSONLoosened `json:"loosened"`
		Files      []string              `json:"files"`
	}{
		Package: ShopKind, Version: s.Seal.Version, On: s.Seal.On, Strict: s.Seal.Strict, Spec: s.Seal.Spec, Standards: s.Seal.Standards,
		Title: p.Title.Get(), Sheet: p.Sheet.Get(), Revision: p.Revision.Get(), Verdict: s.Assessment.Verdict.String(),
		ForCutting: !s.Fails(), Left: s.left(), Warnings: append([]string{}, s.Warnings(holes)...),
		Figures: shopFigures(s.Assessment.Ceiling, s.Shop), Assumed: []report.JSONAssumed{}, Shop: []report.JSONAssumed{}, Loosened: report.LoosenedJSON(s.Assessment.Loosened), Files: s.Files,
	}
	for _, a := range s.Assessment.Assumed {
		out.Assumed = append(out.Assumed, report.AssumedJSON(a))
	}
	for _, d := range s.Assessment.Ceiling.Bench().Settings() {
		out.Shop = append(out.Shop, report.JSONAssumed{Key: d.Key, Value: d.Value, Source: d.Source, File: d.Origin.File, Line: d.Origin.Line})
	}
	return show.WriteJSON(w, out)
}
