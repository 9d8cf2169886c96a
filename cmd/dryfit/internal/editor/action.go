package editor

import (
	"slices"
	"strings"
	"unicode/utf8"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/spec"
	"dryfit/spec/edit"
)

// actions are the changes that would pass, of what is found in a range. Where
// the text is newer than its review they wait for it.
func (s *server) actions(p actionParams) (any, error) {
	d, err := s.at(p.Document.URI)
	if err != nil {
		return nil, err
	}
	asked := len(p.Context.Only) == 0 || slices.ContainsFunc(p.Context.Only, func(kind string) bool {
		return kind == "" || kind == quickFix
	})
	if !asked || s.client.Capabilities.TextDocument.CodeAction.Literal == nil {
		return []codeAction{}, nil // a client of old takes only commands, and there are none
	}
	return later{d, func() any { return s.changesIn(d, p.Range) }}, nil
}

func (s *server) changesIn(d *document, in span) []codeAction {
	out := []codeAction{}
	if d.last.assessment == nil {
		return out
	}
	for _, f := range d.last.assessment.Findings {
		if f.Passes == nil {
			continue
		}
		shows := s.ofFinding(d, f)
		if !shows.Range.touches(in) {
			continue
		}
		if action, ok := s.action(d, f, shows); ok {
			out = append(out, action)
		}
	}
	return out
}

// action is the change that was tried under all rules.
func (s *server) action(d *document, f engine.Finding, shows diagnostic) (codeAction, bool) {
	c, ok := set(d.text.text, f.Passes.Key, f.Passes.Value)
	if !ok {
		return codeAction{}, false
	}
	edits := []textEdit{{Range: d.text.span(c.at), NewText: c.text}}
	action := codeAction{
		Title: show.Safe("Set " + f.Passes.Key + " = " + strings.TrimSpace(show.Written(f.Passes.Value)) + ", which passes"),
		Kind:  quickFix, Diagnostics: []diagnostic{shows}, Preferred: true,
	}
	if s.client.Capabilities.Workspace.WorkspaceEdit.DocumentChanges {
		edit := documentEdit{Edits: edits}
		edit.Document.URI, edit.Document.Version = d.uri, d.version
		action.Edit.DocumentChanges = []documentEdit{edit}
	} else {
		action.Edit.Changes = map[string][]textEdit{d.uri: edits}
	}
	return action, true
}

// change puts a text in the place of a range of bytes.
type change struct {
	at   spec.Range
	text string
}

// set is the change of a spec's text that gives a key a value. It reports false
// where that can't be done in place.
func set(text, key string, value any) (change, bool) {
	changed, err := edit.Apply([]byte(text), []edit.Change{{Key: key, Value: value}})
	if err != nil {
		return change{}, false
	}
	return between(text, string(changed)), true
}

// between is the least change that makes one text of another, in whole
// characters.
func between(from, to string) change {
	start := 0
	for start < min(len(from), len(to)) && from[start] == to[start] {
		start++
	}
	for start > 0 && start < len(from) && !utf8.RuneStart(from[start]) {
		start--
	}
	end := 0
	for end < min(len(from), len(to))-start && from[len(from)-1-end] == to[len(to)-1-end] {
		end++
	}
	for end > 0 && !utf8.RuneStart(from[len(from)-end]) {
		end--
	}
	return change{spec.Range{Start: start, End: len(from) - end}, to[start : len(to)-end]}
}
