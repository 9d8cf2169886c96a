package editor

import (
	"dryfit/cmd/dryfit/internal/editor/outline"
	"dryfit/spec"
)

// symbols is the outline of a text: its tables, with the keys in them. It needs
// no review, and goes by the text as it is.
func (s *server) symbols(p documentParams) (any, error) {
	d, err := s.at(p.Document.URI)
	if err != nil {
		return nil, err
	}
	list := []symbol{}
	if d.keys() != nil {
		list = newSymbolizer(d).all()
	}
	if s.client.Capabilities.TextDocument.Symbols.Hierarchical {
		return list, nil
	}
	return flat(d.uri, "", list), nil
}

// symbolizer makes symbols of an outline.
type symbolizer struct {
	*outline.Outline
	lines *follower
	keys  *vocabulary
	// entriesOf are the entries of each container, and valueAt the container that
	// a value is, by where it begins.
	entriesOf map[int][]outline.Entry
	valueAt   map[int]int
}

func newSymbolizer(d *document) symbolizer {
	o := symbolizer{outline.Of(d.text.text), &follower{lined: d.text}, d.keys(), map[int][]outline.Entry{}, map[int]int{}}
	for _, e := range o.Entries {
		o.entriesOf[e.In] = append(o.entriesOf[e.In], e)
	}
	for i, c := range o.Parts {
		if c.Kind != outline.Table {
			o.valueAt[c.Inside.Start-1] = i
		}
	}
	return o
}

// all are the keys before the first header, and the tables.
func (o symbolizer) all() []symbol {
	list, in := o.in(0), 0
	for _, h := range o.Headers {
		for in++; o.Parts[in].Kind != outline.Table; in++ { // each header opens the next table
		}
		line := o.lines.lineOf(h.Name.Start)
		whole := spec.Range{Start: o.lines.starts[line], End: o.lines.lineEnd(line)}
		if entries := o.entriesOf[in]; len(entries) > 0 {
			whole.End = max(whole.End, entries[len(entries)-1].Whole().End)
		}
		if h.Name.Start < h.Name.End {
			list = append(list, o.symbol(h.Key, o.about(h.Key, in), symbolObject, whole, h.Name, o.in(in)))
		}
	}
	return list
}

// in are the keys of a table, or those elements of an array that have keys or
// elements themselves.
func (o symbolizer) in(container int) []symbol {
	list := []symbol{}
	for _, e := range o.entriesOf[container] {
		inside, holds := o.valueAt[e.Value.Start]
		name, selection := e.Name(o.Text)
		if e.Parts == nil && !holds || selection.Start == selection.End {
			continue
		}
		if !holds {
			written := o.Text[e.Value.Start:e.Value.End]
			list = append(list, o.symbol(name, firstOf(written), kindOf(written), e.Whole(), selection, nil))
			continue
		}
		kind := symbolObject
		if o.Parts[inside].Kind == outline.Array {
			kind = symbolArray
		}
		list = append(list, o.symbol(name, o.about(e.Key, inside), kind, e.Whole(), selection, o.in(inside)))
	}
	return list
}

// flat lists symbols for a client that takes no tree.
func flat(uri, within string, list []symbol) []flatSymbol {
	out := []flatSymbol{}
	for _, s := range list {
		out = append(out, flatSymbol{Name: s.Name, Kind: s.Kind, Location: location{uri, s.Range}, Within: within})
		out = append(out, flat(uri, s.Name, s.Children)...)
	}
	return out
}
