package standards

import (
	"slices"
	"strconv"
	"strings"

	"dryfit/spec"
)

// Order is how a shop would rather change a spec: groups of keys and tables, the
// cheapest first.
type Order struct {
	Groups [][]string
	Source string
	Origin Origin
}

// AnyOther stands in an order for all keys that it does not name.
const AnyOther = "*"

// builtInOrder is the order where no file sets one.
var builtInOrder = Order{
	Source: "common practice",
	Groups: [][]string{
		{ // where things go: nothing else is made or bought
			"strap.stations", "close.first_gap", "seam.spacing", "seam.edge", "strap.screws.spacing", "strap.screws.edge",
			"lift.stations", "lift.saddle", "fitting.*.at", "ledger.fixed", "ledger.packed",
		},
		{AnyOther, "grid.reveal"}, // sizes
		{ // what the shop, its air and its stock have to be better at
			"panels.tolerance", "panels.form", "room.tolerance", "seam.tolerance", "seam.gap", "strap.setting", "climate",
			"rib.species", "rib.cut", "rib.construction", "rail.species", "rail.cut", "skin.material", "fitting.*.size",
		},
		{"grid", "panels", "close.last", "springing", "fitting.*.coffer"},                                                      // how the ceiling is divided and goes together
		{"vault", "room", "route", "strap.allowable", "lift.units", "lift.capacity", "lift.reach", "lift.stowed", "lift.base"}, // what the building gives
	},
}

// Order is the order in force.
func (s *Standards) Order() Order {
	if s.order != nil {
		return *s.order
	}
	return builtInOrder
}

// Place is the number of the group that a key is in, from 1: of the entry that
// names it most closely. What the order does not name comes last.
func (o Order) Place(key string) int {
	last, closest := len(o.Groups)+1, -1
	for i, group := range o.Groups {
		for _, entry := range group {
			if n := closeness(entry, key); n > closest {
				last, closest = i+1, n
			}
		}
	}
	return last
}

// closeness is how many parts of a key an entry of an order names; -1: none.
func closeness(entry, key string) int {
	if entry == AnyOther {
		return 0
	}
	named := 0
	for more := true; more; named++ {
		if key == "" {
			return -1
		}
		var name, part string
		name, entry, more = strings.Cut(entry, ".")
		part, key, _ = strings.Cut(key, ".")
		if name != part && (name != "*" || !isNumber(part)) {
			return -1
		}
	}
	return named
}

func isNumber(part string) bool {
	_, err := strconv.Atoi(part)
	return err == nil
}

// readOrder takes the order of a file. A key is in one group, or it would have
// two places.
func (r *reader) readOrder() {
	table, _ := r.table("remedy")
	groups, given := table["order"].([]any)
	if !given {
		return
	}
	o := &Order{Source: r.layer.Name, Origin: r.origin(spec.Key("remedy", "order"))}
	var named []string
	for i, g := range groups {
		var group []string
		for j, entry := range list(g) {
			name := entry.(string)
			if slices.Contains(named, name) {
				r.refuse(spec.Key("remedy", "order", i+1, j+1), "%s is named twice", name)
			}
			named, group = append(named, name), append(group, name)
		}
		o.Groups = append(o.Groups, group)
	}
	r.layer.order = o
}
