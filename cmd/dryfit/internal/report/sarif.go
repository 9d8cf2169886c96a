package report

import (
	"net/url"
	"path"
	"regexp"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
	"dryfit/spec"
)

// levels are what a severity is called in a log. What is referred is a note that
// nobody may suppress.
var levels = map[engine.Severity]string{
	engine.Hold: "error", engine.Query: "warning", engine.Note: "note", engine.Refer: "note",
}

// sarifProperties are the date, the verdict, and what of the run is new.
func (r Report) sarifProperties(run Run) map[string]any {
	bag := map[string]any{"judgedOn": r.On, "verdict": run.Verdict().String()}
	if r.Against != "" {
		bag["against"] = show.Safe(r.Against)
		bag["new"], bag["alreadyThere"] = run.Counts().Since()
	}
	return bag
}

// sarifBaseline are the words for what a result is to the baseline.
var sarifBaseline = map[engine.Baseline]string{engine.New: "new", engine.AlreadyThere: "unchanged"}

func (r Report) sarifResults(s *review.Assessment, uri string, index map[string]int) []sarifResult {
	var out []sarifResult
	for _, e := range Entries(s) {
		at, e := r.fileOf(s, e)
		text := e.Said()
		if e.Passes != "" {
			text += " Passes with " + e.Passes + "."
		}
		result := sarifResult{
			RuleID: e.Rule, RuleIndex: index[e.Rule], Level: levels[e.severity], Message: sarifText{sarifPlain(text)},
			Locations:    []sarifLocation{{Physical: sarifPhysical{sarifArtifact{uriOf(at)}, regionOf(e.Start, e.end)}, Logical: logical(e.Key)}},
			Related:      sarifRelated(s, e, uri),
			Fingerprints: map[string]string{"dryfitFinding/v1": e.print},
			Baseline:     sarifBaseline[e.baseline],
			Bag:          map[string]any{"severity": e.severity.String()},
		}
		if e.offer != nil {
			result.Fixes = sarifFixes(s.Document, *e.offer, uri)
		}
		if e.Accepted != "" {
			result.Suppressions = []sarifSuppression{{"inSource", "accepted", show.Safe(e.Accepted), acceptedAt(s.Document, e, uri)}}
		}
		if e.Basis != "" {
			result.Bag["basis"] = show.Safe(e.Basis)
		}
		out = append(out, result)
	}
	return out
}

// logical is the key, as the place in the spec that stays when lines move.
func logical(key string) []sarifLogical {
	if key == "" {
		return nil
	}
	return []sarifLogical{{show.Safe(key), "member"}}
}

// sarifRelated are the related keys that are written in the file.
func sarifRelated(s *review.Assessment, e Entry, uri string) []sarifLocation {
	var out []sarifLocation
	for _, key := range e.related {
		at, ok := s.Document.ValueRange(key)
		if !ok {
			continue
		}
		out = append(out, sarifLocation{
			ID:       len(out) + 1,
			Physical: sarifPhysical{sarifArtifact{uri}, regionOf(s.Document.Position(at.Start), s.Document.Position(at.End))},
			Message:  &sarifText{sarifPlain(key)},
		})
	}
	return out
}

func regionOf(start, end spec.Position) *sarifRegion {
	if end.Line < start.Line || end.Line == start.Line && end.Column < start.Column {
		end = start
	}
	return &sarifRegion{start.Line, start.Column, end.Line, end.Column}
}

// sarifNotes are what the standards loosen, and the rules that were not checked,
// with why.
func sarifNotes(s *review.Assessment, uri string, index map[string]int) []sarifNotification {
	var out []sarifNotification
	for _, l := range s.Loosened {
		out = append(out, sarifNotification{
			Level: "warning", Locations: []sarifLocation{{Physical: sarifPhysical{Artifact: sarifArtifact{uri}}}}, Message: sarifText{sarifPlain(loosening(l))},
		})
	}
	for _, l := range Lacking(s.NotChecked) {
		n := sarifNotification{
			Level: "note", Locations: []sarifLocation{{Physical: sarifPhysical{Artifact: sarifArtifact{uri}}}},
			Message: sarifText{sarifPlain("not checked: " + strings.Join(l.Rules, ", ") + ": " + l.Said())},
		}
		if l.failed && !l.before {
			n.Level = "error"
		}
		if i, ok := index[l.Rules[0]]; ok && len(l.Rules) == 1 {
			n.Rule = &sarifReference{l.Rules[0], i}
		}
		out = append(out, n)
	}
	return out
}

// placeholder is what a message would take for the place of an argument.
var placeholder = regexp.MustCompile(`\{(\d+)\}`)

// brackets begin no link.
var brackets = strings.NewReplacer("[", `\[`, "]", `\]`)

// sarifPlain is text as a plain message has it: no bracket begins a link, no
// brace a placeholder.
func sarifPlain(s string) string {
	s = brackets.Replace(show.Safe(s))
	return placeholder.ReplaceAllString(s, "{{$1}}")
}

// uriOf is a path as a relative reference, percent-encoded.
func uriOf(name string) string {
	if path.IsAbs(name) {
		return (&url.URL{Scheme: "file", Path: name}).String()
	}
	return (&url.URL{Path: name}).String()
}

// automation names the standards of a run, so that runs of one log differ.
func automation(run Run) string {
	if len(run.Standards) == 0 {
		return "built-in"
	}
	return url.PathEscape(strings.Join(run.Standards, "+"))
}

var semver = regexp.MustCompile(`^v?(\d+\.\d+\.\d+(?:-[0-9A-Za-z.-]+)?)$`)

// semantic is the version where it is one by the semantic scheme.
func semantic(version string) string {
	if m := semver.FindStringSubmatch(version); m != nil {
		return m[1]
	}
	return ""
}
