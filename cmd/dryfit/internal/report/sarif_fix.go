package report

import (
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/spec"
	"dryfit/spec/edit"
)

// sarifFixes is the change that was tried under all rules, as one that a reader
// can make: the regions of the file that it replaces. There is none where it
// can't be made in place.
func sarifFixes(doc *spec.Document, o engine.Offer, uri string) []sarifFix {
	if doc == nil {
		return nil
	}
	splices, err := edit.Splices(doc, edit.Change{Key: o.Key, Value: o.Value})
	if err != nil || len(splices) == 0 {
		return nil
	}
	change := sarifChange{Artifact: sarifArtifact{uri}}
	for _, s := range splices {
		if !show.IsSafe(lineEnds.Replace(s.Text)) {
			return nil
		}
		change.Replacements = append(change.Replacements, sarifReplacement{
			Deleted: *regionOf(doc.Position(s.Start), doc.Position(s.End)), Inserted: sarifText{s.Text},
		})
	}
	says := "Set " + o.Key + " = " + strings.TrimSpace(show.Written(o.Value)) + ", which passes."
	return []sarifFix{{sarifText{sarifPlain(says)}, []sarifChange{change}}}
}

// lineEnds are the control characters that a change of a file may have.
var lineEnds = strings.NewReplacer("\r", "", "\n", "", "\t", "")

// acceptedAt is the acceptance in the file; nil where the file is not kept.
func acceptedAt(doc *spec.Document, e Entry, uri string) *sarifLocation {
	if doc == nil {
		return nil
	}
	list, _ := doc.Tree["accept"].([]any)
	for i, item := range list {
		a, _ := item.(map[string]any)
		at, _ := a["at"].(string)
		if a["rule"] != e.acceptance.Rule || at != e.acceptance.At || a["reason"] != e.acceptance.Reason {
			continue
		}
		place := doc.Locate(spec.Key("accept", i+1))
		return &sarifLocation{Physical: sarifPhysical{sarifArtifact{uri}, regionOf(doc.Position(place.Start), doc.Position(place.End))}}
	}
	return nil
}
