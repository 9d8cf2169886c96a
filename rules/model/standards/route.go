package standards

import (
	"strings"

	"dryfit/spec"
)

// Route is the way from the shop's door on that a file gives: its legs come
// before those of every spec.
type Route struct {
	Legs   []any // each a table, as in a spec's tree
	Source string
	doc    *spec.Document
}

// Place is a place in a standards file.
type Place struct {
	Origin
	Start, End spec.Position
}

const routeKey = "default.route"

// LegKey is the key of a leg that standards give, by its number from 1.
func LegKey(n int) string { return spec.Key("default", "route", n) }

// OwnLeg reports whether a key is that of a leg that standards give, or in one.
func OwnLeg(key string) bool { return strings.HasPrefix(key, routeKey+".") }

// Route is that of the nearest file that has one; its legs are none where no file
// has.
func (s *Standards) Route() Route {
	if s.route == nil {
		return Route{}
	}
	return *s.route
}

// Rows are the legs as they hold, with the file and line of each.
func (r Route) Rows() []Default {
	var out []Default
	for i, table := range r.Legs {
		out = append(out, Default{Key: LegKey(i + 1), Value: table, Source: r.Source, Origin: r.place(LegKey(i + 1)).Origin})
	}
	return out
}

// Unnumbered is a key of a leg with the leg's name in place of its number.
func (r Route) Unnumbered(key string) string { return spec.Unnumbered(r.doc.Tree, key) }

// Place is where a key stands that is of a leg, or in one.
func (s *Standards) Place(key string) (Place, bool) {
	if s.route == nil || !OwnLeg(key) {
		return Place{}, false
	}
	return s.route.place(key), true
}

func (r Route) place(key string) Place {
	at := r.doc.Locate(key)
	start := r.doc.Position(at.Start)
	return Place{Origin: Origin{File: r.doc.Path, Line: start.Line}, Start: start, End: r.doc.Position(at.End)}
}

// readRoute takes the legs of a file that satisfies its schema.
func (r *reader) readRoute() {
	table, _ := r.table("default")
	if legs := list(table["route"]); len(legs) > 0 {
		r.layer.route = &Route{Legs: legs, Source: r.layer.Name, doc: r.doc}
	}
}
