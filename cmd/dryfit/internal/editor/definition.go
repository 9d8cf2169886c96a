package editor

import (
	"slices"
	"strings"

	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// definition is where what is named at a place stands: the leg, the fitting or
// the value whose key an acceptance gives, what its rule finds here and what
// standards set of it, the material that a firm has of its own. It waits for the
// review of the text, since findings are of one.
func (s *server) definition(p placeParams) (any, error) {
	d := s.documents[p.Document.URI]
	if d == nil {
		return nil, faulty(codeInvalidParams, "%s is not open", p.Document.URI)
	}
	if d.keys() == nil {
		return nil, nil
	}
	return later{d, func() any { return s.definedAt(d, p.Position) }}, nil
}

func (s *server) definedAt(d *document, p position) []location {
	f := finder{server: s, doc: d, text: outlineOf(d.text.text)}
	f.offset = d.text.offset(p)
	at := f.text.at(f.offset)
	word := f.word(at.word)
	path := defaulted(pattern(at.key))
	parts := spec.SplitKey(at.key)
	switch {
	case path == "accept.*.at" && at.role == aValue:
		f.key(upTo(word, f.offset-at.word.Start-1))
	case path == "accept.*.rule" && at.role == aValue:
		f.rule(word, f.valueOf(spec.Parent(at.key)+".at"))
	case path == "accept.holds.*" && at.role == aValue:
		f.set(word, at.word)
	case d.isStandards() && len(parts) > 1 && parts[0] == "severity":
		f.set(parts[1], at.word)
	case d.isStandards() && len(parts) > 1 && parts[0] == "limit":
		if r, _, ok := limitOf(s.Rules, parts[1]); ok {
			f.set(r.ID, at.word)
		}
	case (path == "skin.material" || strings.HasSuffix(path, ".species")) && at.role == aValue:
		f.material(word)
	}
	return f.found
}

// finder gathers places.
type finder struct {
	*server
	doc    *document
	text   *outline
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
		if r, ok := f.text.written(key); ok {
			f.here(r)
			return
		}
	}
}

// written is where a key is written: its name, or an element of a list, of which
// the first stands for all.
func (o *outline) written(key string) (spec.Range, bool) {
	for _, h := range o.headers {
		if h.key == key || h.key == key+".1" {
			return h.name, true
		}
	}
	for _, e := range o.entries {
		if i := slices.Index(e.keys, key); i >= 0 {
			return e.parts[i], true
		}
		if e.parts == nil && e.key == key {
			return e.value, true
		}
	}
	return spec.Range{}, false
}

// word is a text without its quotes.
func (f *finder) word(r spec.Range) string {
	return strings.Trim(f.doc.text.text[r.Start:r.End], `"'`)
}

// valueOf is the text of a key's value, "" where it has none.
func (f *finder) valueOf(key string) string {
	for _, e := range f.text.entries {
		if e.key == key {
			return f.word(e.value)
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
			if at, ok := f.text.written(key); ok {
				f.here(at)
			}
		}
	}
}

func (f *finder) findings(id, at string) {
	if f.doc.last.sheet == nil {
		return
	}
	for _, x := range f.doc.last.sheet.Findings {
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
	for _, h := range f.text.headers {
		if ofRule[h.key] && h.name != asking {
			f.here(h.name)
		}
	}
	for _, e := range f.text.entries {
		switch {
		case e.parts == nil && pattern(e.key) == "accept.holds.*" && f.word(e.value) == id && e.value != asking:
			f.here(e.value)
		case e.parts != nil && ofRule[e.key] && !holds(e.parts[len(e.parts)-1], f.offset):
			f.here(e.parts[len(e.parts)-1])
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
	for _, e := range f.text.entries {
		if pattern(e.key) == "material.*.name" && strings.EqualFold(f.word(e.value), name) {
			f.here(e.value)
		}
	}
	if at, ok := f.doc.standards().Material(name); ok {
		f.origin(at)
	}
}
