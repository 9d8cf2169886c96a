package editor

import (
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// definition is where what is named at a place stands: the leg, the fitting or
// the value whose key an acceptance gives, what its rule finds here and what
// standards set of it, the material that a firm has of its own. It waits for the
// review of the text, since findings are of one.
func (s *server) definition(p placeParams) (any, error) {
	d, err := s.at(p.Document.URI)
	if err != nil {
		return nil, err
	}
	if d.keys() == nil {
		return nil, nil
	}
	return later{d, func() any { return s.definedAt(d, p.Position) }}, nil
}

func (s *server) definedAt(d *document, p position) []location {
	f := finder{server: s, doc: d, text: outline.Of(d.text.text)}
	f.offset = d.text.offset(p)
	at := f.text.At(f.offset)
	word := f.word(at.Word)
	path := defaulted(pattern(at.Key))
	parts := spec.SplitKey(at.Key)
	switch {
	case path == "accept.*.at" && at.Role == outline.AValue:
		f.key(upTo(word, f.offset-at.Word.Start-1))
	case path == "accept.*.rule" && at.Role == outline.AValue:
		f.rule(word, f.valueOf(spec.Parent(at.Key)+".at"))
	case path == "accept.holds.*" && at.Role == outline.AValue:
		f.set(word, at.Word)
	case d.isStandards() && len(parts) > 1 && parts[0] == "severity":
		f.set(parts[1], at.Word)
	case d.isStandards() && len(parts) > 1 && parts[0] == "limit":
		if r, _, ok := limitOf(s.Rules, parts[1]); ok {
			f.set(r.ID, at.Word)
		}
	case (path == "skin.material" || strings.HasSuffix(path, ".species")) && at.Role == outline.AValue:
		f.material(word)
	}
	return f.found
}

// finder gathers places.
type finder struct {
	*server
	doc    *document
	text   *outline.Outline
	offset int
	found  []location
}

func (f *finder) add(l location) {
	if !slices.Contains(f.found, l) {
		f.found = append(f.found, l)
	}
}

func (f *finder) here(r spec.Range) { f.add(location{f.doc.uri, f.doc.text.span(r)}) }

// origin adds a line of a standards file, if it is one of another file.
func (f *finder) origin(o standards.Origin) {
	if o.BuiltIn() || f.doc.isStandards() && samePath(o.File, f.doc.path) {
		return
	}
	start := position{Line: o.Line - 1}
	f.add(location{uriOf(o.File), span{start, start}})
}

// upTo is a key up to the name that an offset in it is in. The name of a list
// takes the number after it along.
func upTo(key string, offset int) string {
	parts, end := strings.Split(key, "."), -1
	for i, part := range parts {
		end += 1 + len(part)
		if offset > end {
			continue
		}
		key = strings.Join(parts[:i+1], ".")
		if i+1 < len(parts) && strings.Trim(parts[i+1], "0123456789") == "" {
			key += "." + parts[i+1]
		}
		return key
	}
	return key
}

// key adds where a key is written, or else the table that it would be in.
func (f *finder) key(key string) {
	for ; key != ""; key = spec.Parent(key) {
		if r, ok := f.text.Written(key); ok {
			f.here(r)
			return
		}
	}
}

// word is a text without its quotes.
func (f *finder) word(r spec.Range) string {
	return strings.Trim(f.doc.text.text[r.Start:r.End], `"'`)
}

// valueOf is the text of a key's value, "" where it has none.
func (f *finder) valueOf(key string) string {
	for _, e := range f.text.Entries {
		if e.Key == key {
			return f.word(e.Value)
		}
	}
	return ""
}

// rule adds what a rule finds in a spec, at one key or else at all, and what
// standards set of it. Where there is neither, it adds the keys that the rule
// needs.
func (f *finder) rule(id, at string) {
	f.findings(id, at)
	if len(f.found) == 0 {
		f.findings(id, "")
	}
	f.inForce(id)
	if r := ruleOf(f.Rules, id); r != nil && len(f.found) == 0 {
		for _, key := range r.Needs {
			if at, ok := f.text.Written(key); ok {
				f.here(at)
			}
		}
	}
}

func (f *finder) findings(id, at string) {
	if f.doc.last.assessment == nil {
		return
	}
	for _, x := range f.doc.last.assessment.Findings {
		if x.Rule.ID == id && (at == "" || x.At == at) {
			f.add(location{f.doc.uri, f.doc.text.shown(f.doc.text.fromDocument(x.Range))})
		}
	}
}

// set adds what a standards file sets of a rule, but for the place that asks,
// and then what other files do.
func (f *finder) set(id string, asking spec.Range) {
	ofRule := map[string]bool{spec.Key("severity", id): true}
	if r := ruleOf(f.Rules, id); r != nil {
		for _, l := range r.Limits {
			ofRule[spec.Key("limit", r.Full(l.Key))] = true
		}
	}
	for _, h := range f.text.Headers {
		if ofRule[h.Key] && h.Name != asking {
			f.here(h.Name)
		}
	}
	for _, e := range f.text.Entries {
		switch {
		case e.Parts == nil && pattern(e.Key) == "accept.holds.*" && f.word(e.Value) == id && e.Value != asking:
			f.here(e.Value)
		case e.Parts != nil && ofRule[e.Key] && !outline.Holds(e.Parts[len(e.Parts)-1], f.offset):
			f.here(e.Parts[len(e.Parts)-1])
		}
	}
	f.inForce(id)
}

// inForce adds what standards files set of a rule.
func (f *finder) inForce(id string) {
	std, r := f.doc.standards(), ruleOf(f.Rules, id)
	if r == nil {
		return
	}
	for _, l := range r.Limits {
		if set, ok := std.Limit(r.Full(l.Key)); ok {
			f.origin(set.Origin)
		}
	}
	if set, ok := std.Severity(id); ok {
		f.origin(set.Origin)
	}
	if at, ok := std.MayAcceptHold(id); ok {
		f.origin(at)
	}
}

// material adds where a firm has a material of its own.
func (f *finder) material(name string) {
	for _, e := range f.text.Entries {
		if pattern(e.Key) == "material.*.name" && strings.EqualFold(f.word(e.Value), name) {
			f.here(e.Value)
		}
	}
	if at, ok := f.doc.standards().Material(name); ok {
		f.origin(at)
	}
}
