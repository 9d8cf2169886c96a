package editor

import (
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
)

// actions are the changes that would pass, of what is found in a range. Where
// the text is newer than its review they wait for it.
func (s *server) actions(p actionParams) (any, error) {
	d := s.documents[p.Document.URI]
	if d == nil {
		return nil, faulty(codeInvalidParams, "%s is not open", p.Document.URI)
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
	if d.last.sheet == nil {
		return out
	}
	for _, f := range d.last.sheet.Findings {
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
