package editor

import (
	"slices"

	"dryfit/rules/engine"
	"dryfit/spec"
)

// source is what diagnostics say they come from.
const source = "dryfit"

var severities = map[engine.Severity]int{
	engine.Hold: asError, engine.Query: asWarning, engine.Note: asInformation, engine.Refer: asInformation,
}

// diagnostics are those of the last review of a document. Rules that were not
// checked for want of a key are none: a spec that is being begun lacks most
// keys, and help on a key names the rules that want it.
func (s *server) diagnostics(d *document) []diagnostic {
	out := []diagnostic{}
	if d.last.panicked != nil {
		return append(out, diagnostic{
			Range: d.text.shown(spec.Range{}), Severity: asError, Code: "internal", Source: source,
			Message: "the text was not checked because of an internal error; the server's standard error has the details",
		})
	}
	for _, p := range d.last.problems {
		out = append(out, ofProblem(d.text, p))
	}
	if d.last.assessment == nil {
		return out
	}
	for _, p := range d.last.assessment.Problems {
		out = append(out, ofProblem(d.text, p))
	}
	for _, f := range d.last.assessment.Findings {
		out = append(out, s.ofFinding(d, f))
	}
	for _, n := range d.last.assessment.NotChecked {
		if n.Failed {
			out = append(out, ofNotChecked(d, n))
		}
	}
	return out
}

// showBroken publishes what is wrong with the standards that open specs are
// under, at the files themselves, and clears what is mended. A file that is
// open itself has diagnostics of its own text.
func (s *server) showBroken() {
	now := map[string]bool{}
	var order []string
	for _, uri := range s.order {
		for _, b := range s.documents[uri].last.found.Broken {
			file := uriOf(b.Path)
			if now[file] || s.isOpen(b.Path) {
				continue
			}
			now[file] = true
			order = append(order, file)
			text := newLined(string(b.Source), s.bytes)
			list := []diagnostic{}
			for _, p := range b.Problems {
				list = append(list, ofProblem(text, p))
			}
			s.notify("textDocument/publishDiagnostics", publishParams{URI: file, Diagnostics: list})
		}
	}
	var mended []string
	for file := range s.shown {
		if !now[file] {
			mended = append(mended, file)
		}
	}
	slices.Sort(mended)
	for _, file := range mended {
		delete(s.shown, file)
		if path, _ := pathOf(file); !s.isOpen(path) {
			s.notify("textDocument/publishDiagnostics", publishParams{URI: file, Diagnostics: []diagnostic{}})
		}
	}
	for _, file := range order {
		s.shown[file] = true
	}
}

func (s *server) isOpen(path string) bool {
	for _, d := range s.documents {
		if d.path != "" && samePath(d.path, path) {
			return true
		}
	}
	return false
}
