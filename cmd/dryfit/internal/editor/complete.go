package editor

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/spec"
)

// complete lists what may be written at a place. It goes by the text as it is,
// whether or not that is TOML at the moment.
func (s *server) complete(p placeParams) (any, error) {
	d, err := s.at(p.Document.URI)
	if err != nil {
		return nil, err
	}
	out := []completion{}
	if d.keys() == nil {
		return out, nil
	}
	c := completer{rules: s.Rules, doc: d, keys: d.keys(), text: outline.Of(d.text.text), offset: d.text.offset(p.Position)}
	c.Site = c.text.At(c.offset)
	switch c.Role {
	case outline.AHeader:
		c.headers(false)
	case outline.AKey:
		c.names()
		if c.Site.Header {
			c.headers(true)
		}
	case outline.AValue:
		c.values()
	}
	return append(out, c.list...), nil
}

// completer gathers what may be written at one place.
type completer struct {
	rules []*engine.Rule
	doc   *document
	keys  *vocabulary
	text  *outline.Outline
	outline.Site
	offset int
	list   []completion
}

// add adds one thing to write in the place of the word.
func (c *completer) add(item completion, word spec.Range, text string) {
	item.Edit = textEdit{Range: c.doc.text.span(word), NewText: text}
	item.SortText = fmt.Sprintf("%04d", len(c.list))
	c.list = append(c.list, item)
}

// names adds the keys of the table that are not there yet.
func (c *completer) names() {
	table := pattern(c.In)
	taken, kind := c.taken(), c.legKind()
	for _, p := range c.keys.list {
		name, direct := child(table, p.Path)
		heads := c.keys.tabular(p) && (c.In == "" || c.Site.Header && p.Type == "array") // better with a header of its own
		if !direct || heads || taken[spec.SplitKey(name)[0]] || c.keys.barred[table+"="+kind][name] {
			continue
		}
		text := name
		if !c.Equals {
			text += " = "
		}
		filter := name
		if !strings.HasPrefix(c.text.Text[c.Word.Start:c.Word.End], `"`) {
			filter = strings.Trim(name, `"`)
		}
		c.add(completion{
			Label: name, Kind: kindProperty, Detail: p.Title, FilterText: filter, Documentation: c.about(p.Path),
		}, c.Word, text)
	}
}

// taken are the names that the table has, but for the word that is being
// written.
func (c *completer) taken() map[string]bool {
	out := map[string]bool{}
	note := func(key string) {
		if inside, ok := strings.CutPrefix(key, c.In); ok && (c.In == "" || strings.HasPrefix(inside, ".")) {
			out[spec.SplitKey(strings.TrimPrefix(inside, "."))[0]] = true
		}
	}
	for _, e := range c.text.Entries {
		for i, part := range e.Parts {
			if part != c.Word {
				note(e.Keys[i])
			}
		}
	}
	for _, h := range c.text.Headers {
		note(h.Key)
	}
	return out
}

// legKind is the kind of the table, which decides what other keys it has.
func (c *completer) legKind() string {
	for _, e := range c.text.Entries {
		if e.Key == outline.Under(c.In, "kind") {
			return strings.Trim(c.text.Text[e.Value.Start:e.Value.End], `"'`)
		}
	}
	return ""
}

// headers adds the tables that are not there yet, and the arrays of tables.
func (c *completer) headers(brackets bool) {
	there := map[string]bool{}
	for _, part := range c.text.Parts {
		there[part.Key] = true
	}
	for _, p := range c.keys.list {
		if !c.keys.tabular(p) || strings.Contains(p.Path, "*") {
			continue
		}
		array := p.Type == "array"
		if !array && there[p.Path] && p.Path != c.Key || !brackets && array != c.Element {
			continue
		}
		if brackets && strings.Contains(p.Path, `"`) { // better in the table of its kind
			continue
		}
		open, shut := "[", "]"
		if array {
			open, shut = "[[", "]]"
		}
		text := open + p.Path + shut
		if !brackets {
			text = p.Path + strings.TrimPrefix(shut, c.shut())
		}
		c.add(completion{
			Label: open + p.Path + shut, Kind: kindModule, Detail: p.Title, FilterText: p.Path, Documentation: c.about(p.Path),
		}, c.Word, text)
	}
}

// shut is the closing brackets that stand after the word.
func (c *completer) shut() string {
	rest := c.text.Text[c.Word.End:]
	return rest[:len(rest)-len(strings.TrimLeft(rest, "]"))]
}

func (c *completer) about(path string) *markup {
	if c.doc.isStandards() {
		m := inMarkdown(c.keys.meaning(path))
		return &m
	}
	text := meaning(path, c.doc.standards())
	if ids := wanting(path, c.rules); len(ids) > 0 && !c.keys.at[path].Required {
		text += "\nWithout it not checked: " + codes(ids) + ".\n"
	}
	m := inMarkdown(text)
	return &m
}

// values adds what may be written as the value of a key.
func (c *completer) values() {
	word, ok := c.valueWord()
	if !ok {
		return
	}
	add := func(kind int, value any, detail string, about *markup) {
		text := example(value)
		c.add(completion{Label: show.Safe(text), Kind: kind, Detail: show.Safe(detail), FilterText: text, Documentation: about}, word, text)
	}
	path := pattern(c.Key)
	if c.doc.isStandards() {
		c.builtIn(path, add)
		path = defaulted(path)
	}
	if c.named(path, add) {
		return
	}
	p, known := c.keys.at[pattern(c.Key)]
	switch {
	case len(p.Enum) > 0:
		for _, word := range p.Enum {
			add(kindEnum, word, "", nil)
		}
	case p.Type == "boolean":
		add(kindEnum, true, "", nil)
		add(kindEnum, false, "", nil)
	case known:
		for _, e := range p.Examples {
			add(kindValue, e, "example", nil)
		}
	default:
		c.elements(pattern(c.Key), add)
	}
}

// adder adds a value, with its kind, a word on it and help.
type adder func(kind int, value any, detail string, about *markup)

// named adds what has a name: species, materials, rules and keys. It reports
// whether the value is such a name.
func (c *completer) named(path string, add adder) bool {
	std := c.doc.standards()
	list, detail := []string{}, ""
	switch {
	case strings.HasSuffix(path, ".species"):
		list, detail = std.SpeciesNames(), "species"
	case path == "skin.material":
		list, detail = std.SheetNames(), "sheet material"
	case path == "accept.*.at":
		list, detail = c.found(), "something is found there"
	case path == "accept.*.rule" || path == "accept.holds.*":
		for _, r := range c.rules {
			if r.Severity != engine.Refer {
				m := inMarkdown(aboutRule(r))
				add(kindEnum, r.ID, r.Title, &m)
			}
		}
	default:
		return false
	}
	for _, v := range list {
		add(kindEnum, v, detail, nil)
	}
	return true
}

// elements adds examples of the elements of an array.
func (c *completer) elements(path string, add adder) {
	list, ok := strings.CutSuffix(path, ".*")
	for _, e := range c.keys.at[list].Examples {
		parts, _ := e.([]any)
		for i, v := range parts {
			if ok && !slices.Contains(parts[:i], v) {
				add(kindValue, v, "example", nil)
			}
		}
	}
}

// found are the keys that something was found at when the text could last be
// worked out: while an acceptance is being written, it can't.
func (c *completer) found() []string {
	var out []string
	if c.doc.good == nil {
		return nil
	}
	for _, f := range c.doc.good.Findings {
		if f.Severity != engine.Refer && f.At != "" && !slices.Contains(out, f.At) {
			out = append(out, show.Safe(f.At))
		}
	}
	return out
}

// valueWord is what a completion takes the place of: the value as it stands, or
// what is left of the cursor where its quotes are not closed.
func (c *completer) valueWord() (spec.Range, bool) {
	word := c.Word
	text := c.text.Text[word.Start:word.End]
	quoted := strings.HasPrefix(text, `"`) || strings.HasPrefix(text, "'")
	open := quoted && (len(text) < 2 || text[len(text)-1] != text[0])
	if open || strings.Contains(text, "=") {
		word.End = max(c.offset, word.Start)
	}
	inside := strings.HasPrefix(text, "[") || strings.HasPrefix(text, "{")
	return word, !inside && !strings.ContainsAny(c.text.Text[word.Start:word.End], "\r\n")
}
