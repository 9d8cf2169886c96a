package begin

import (
	"math"
	"strconv"

	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// What a draft takes until the designer says another.
const (
	species      = "white oak"
	laminated    = "laminated"
	skinMaterial = "bendable plywood"
)

// given is a line with the value that was asked for, or one to confirm.
func given(key, asked, chosen, note string) line {
	if asked != "" {
		return line{key, quoted(asked), "", false}
	}
	return line{key, quoted(chosen), confirm + note, false}
}

// tables are those of the spec, in the order in which a designer decides.
func tables(w Wanted, c choice, ceiling *layout.Ceiling, s sizes) []table {
	f := figures{ceiling}
	l := func(m float64) string { return quoted(s.written(m)) }
	out := []table{
		project(w),
		room(w, c, l, s),
		vault(w, c, l, f),
		gridOf(w, c, l, f, s),
		panels(c, l, f, s),
		rib(w, c, l, f, s),
		{name: "rail", lines: []line{
			given("species", w.Species, species, "as the rib"),
			{"width", l(s.width), "", false},
			{"depth", l(c.depth - c.skin), "the rib's depth less the skin, which lies on the rail between the ribs", false},
			{"joint", `{ kind = "", thickness = "", width = "", embedment = "" }`, "at its ends; kind: tenon, dowel, screw, glue; for dowels and screws a count and a diameter", true},
		}},
		skin(w, c, l, s),
		seam(l, s),
	}
	if len(c.stations) > 0 {
		out = append(out, strap(c, l, s))
	}
	return append(out, closing(c, l, s)...)
}

func project(w Wanted) table {
	units, title := "metric", w.Title
	if w.Units == quantity.Imperial {
		units = "imperial"
	}
	note := ""
	if title == "" {
		title, note = "Untitled ceiling", confirm+"the title on drawings"
	}
	return table{name: "project", lines: []line{
		{"title", quoted(title), note, false},
		{"sheet", quoted(""), "number of the drawing sheet", true},
		{"units", quoted(units), "of reports and drawings; the spec may mix both", false},
		{"engineer", quoted(""), "of record for the hanging; while it is empty, the hanging is referred", false},
	}}
}

func room(w Wanted, c choice, l func(float64) string, s sizes) table {
	sizes := []line{
		{"width", l(c.width), confirm + "wall to wall across the span", false},
		{"length", l(c.length), confirm + "wall to wall along the vault", false},
		{"height", l(c.height), confirm + "floor to springing; a panel is tipped down below it", false},
	}
	above := line{"above", l(s.above), confirm + "clear height, from the back of the crown to the framing", false}
	loose := line{"tolerance", l(s.loose), confirm + "of the width and the length, plus or minus", false}
	if r := w.Room; r != nil {
		sizes = []line{
			{"width", quoted(r.Width), "wall to wall across the span", false},
			{"length", quoted(r.Length), "wall to wall along the vault", false},
			{"height", quoted(r.Height), "floor to springing", false},
		}
	}
	if w.Survey != nil {
		sizes[0].note, sizes[1].note = "halfway between the least and the greatest reading", "halfway between the least and the greatest reading"
		loose.note = "covers all readings with their accuracy"
		if c.above > 0 {
			above = line{"above", l(c.above), "from the back of the crown to the framing, as measured", false}
		}
	}
	return table{name: "room", about: "The room as built. The vault needs a gap at every wall. The gap depends on the tolerances below, on the " +
		"movement of the wood and, at the near end, on the travel of the last panel.", lines: append(sizes, []line{
		{"use", `"public"`, confirm + "dwelling or public; determines the least height", false},
		above,
		loose,
		{"entry", `"end"`, confirm + "where people first see the vault: end, side", false},
		{"access", `""`, "to the tops of the straps once a panel is up: above, none", true},
		{"framing", `{ spacing = "", runs = "", offset = "", member = "", species = "" }`, "holds the tops of the straps; runs: across, along", true},
	}...)}
}

func vault(w Wanted, c choice, l func(float64) string, f figures) table {
	worked := ""
	if w.Room != nil {
		worked = "the greatest with which the vault fits the room; "
	}
	lines := []line{
		{"profile", quoted(w.Profile), "", false},
		{"span", quoted(w.Span), worked + "springing to springing, on the finished underside", false},
	}
	if w.Rise != "" {
		lines = append(lines, line{"rise", quoted(w.Rise), "springing to crown" + f.say("; the radius at the crown is %s", func(c *layout.Ceiling) []any {
			return []any{quantity.Length(c.Vault.Radius.Get())}
		}), false})
	}
	if c.haunch > 0 {
		lines = append(lines, line{"haunch_radius", l(c.haunch), confirm + "of the two side arcs", false})
	}
	return table{name: "vault", lines: append(lines, line{"length", quoted(w.Length), worked + "over all panels, without the gaps at the seams", false})}
}

func gridOf(w Wanted, c choice, l func(float64) string, f figures, s sizes) table {
	around := f.say("a module of %s", func(c *layout.Ceiling) []any { return []any{quantity.Length(c.Grid.ModuleAround.Get())} })
	if c.around%2 == 1 && around != "" {
		around += "; an odd number puts a coffer at the crown"
	}
	along := f.say("a module of %s; its ratio is %.2f", func(c *layout.Ceiling) []any {
		return []any{quantity.Length(c.Grid.ModuleAlong.Get()), c.Grid.Ratio()}
	})
	mark := func(given int) string {
		if given > 0 {
			return ""
		}
		return confirm
	}
	return table{name: "grid", lines: []line{
		{"around", strconv.Itoa(c.around), mark(w.Around) + around, false},
		{"along", strconv.Itoa(c.along), mark(w.Along) + along, false},
		{"ends", `"half"`, "half ribs at the ends of the vault, so all panels are alike", false},
		{"reveal", `{ width = ` + l(s.reveal[0]) + `, depth = ` + l(s.reveal[1]) + `, at = "seam" }`, confirm + "the shadow groove", false},
	}}
}

func panels(c choice, l func(float64) string, f figures, s sizes) table {
	return table{name: "panels", lines: []line{
		{"along", strconv.Itoa(c.along), confirm + f.say("one for each coffer along; a panel weighs %s", func(c *layout.Ceiling) []any { return []any{quantity.Mass(c.Panel.Mass.Get())} }), false},
		{"around", "1", confirm + "pieces of one arch; 2 if the route is too narrow for one piece", false},
		{"tolerance", l(c.panel), confirm + "of a panel's length and width, plus or minus", false},
		{"form", l(s.form), confirm + "of the rise, plus or minus, with the shop's form", false},
	}}
}

func rib(w Wanted, c choice, l func(float64) string, f figures, s sizes) table {
	strip := f.say("%.4g strips", func(c *layout.Ceiling) []any { return []any{c.Laminations()} })
	if f.ceiling != nil && !math.IsInf(f.ceiling.Vault.TightestRadius.Get(), 1) {
		strip += f.say("; the tightest radius is %.0f times the thickness of a strip", func(c *layout.Ceiling) []any {
			return []any{c.Vault.TightestRadius.Get() / c.Rib.Lamination.Get()}
		})
	}
	t := table{name: "rib", lines: []line{
		given("species", w.Species, species, "the wood"),
		{"cut", `"mixed"`, confirm + "grain of the strips: vertical, flat, mixed", false},
		given("construction", w.Construction, laminated, "laminated, sawn, solid"),
		{"width", l(s.width), "a rib at a seam is two halves", false},
		{"depth", l(c.depth), confirm + "deep enough for the distance between straps", false},
	}}
	if w.Construction == "" || w.Construction == laminated {
		t.lines = append(t.lines, line{"lamination", l(c.strip), confirm + strip, false})
	}
	return t
}

func skin(w Wanted, c choice, l func(float64) string, s sizes) table {
	return table{name: "skin", lines: []line{
		given("material", w.Skin, skinMaterial, "check the least bend radius that the supplier states"),
		{"thickness", l(c.skin), "", false},
		{"straight", `"along"`, "direction of the sheet's unbent edge", false},
		{"sheet", `{ straight = ` + l(s.sheet[0]) + `, bent = ` + l(s.sheet[1]) + ` }`, "", false},
		{"setback", l(c.depth - c.skin), "from the underside to the skin; the rail's depth", false},
		{"glue", `{ width = "", press = "", spacing = "" }`, "between skin and frame; press: clamps, staples, nails, bag", true},
	}}
}

func seam(l func(float64) string, s sizes) table {
	return table{name: "seam", about: "The field joints, in proportion to the rib. The shop may choose others.", lines: []line{
		{"tenon", `{ thickness = ` + l(s.tenon[0]) + `, width = ` + l(s.tenon[1]) + `, length = ` + l(s.tenon[2]) + ` }`, "", false},
		{"spacing", l(s.spacing), confirm + "greatest distance between tenons", false},
		{"edge", l(s.edge), confirm + "from the rib's end to the first tenon", false},
		{"mortise", `"one snug, rest wide"`, "", false},
		{"gap", l(s.seam[0]), confirm + "thickness of glue, as designed", false},
		{"tolerance", l(s.seam[1]), confirm + "of the gap, plus or minus", false},
	}}
}

func strap(c choice, l func(float64) string, s sizes) table {
	return table{name: "strap", about: "The straps on each edge rib of a panel. dryfit computes their places and their forces. The allowable load of a " +
		"strap comes from a test report or an engineer: you must supply it.", lines: []line{
		{"stations", stations(c.stations), confirm + "shares of the arc", false},
		{"material", `"steel"`, confirm + "as bought", false},
		{"width", l(s.strap[0]), confirm + "as bought", false},
		{"thickness", l(s.strap[1]), confirm + "as bought", false},
		{"lap", l(s.lap), confirm + "on the rib and on the framing", false},
		{"setting", l(c.setting), confirm + "of its length when it is fixed, plus or minus", false},
		{"hung", `"shop"`, confirm + "moisture of the wood when hung: shop, or room if it has adapted to the room's air", false},
		{"fixing", `{ top = "", bottom = "" }`, "top: side, underside; bottom: side, back, seam", true},
		{"hole", `""`, "diameter of the holes for the screws", true},
		{"screws", `{ count = 0, diameter = "", penetration = "" }`, "at one end", true},
		{"allowable", `{ load = "", source = "" }`, "allowable load, and the test report or the engineer it comes from", true},
	}}
}

func closing(c choice, l func(float64) string, s sizes) []table {
	return []table{
		{name: "edge", lines: []line{{"cover", l(c.cover), confirm + "the width that the moulding at the walls covers", false}}},
		{name: "close", lines: []line{
			{"first_gap", l(s.gap), confirm + "between the far end wall and the first panel", false},
			{"last", `"slide"`, confirm + "slide; or drop, with tenons set from above", false},
		}},
		{name: "finish", lines: []line{{"sides", `"all"`, confirm + "sealed faces: all, seen", false}}},
		{name: "crew", lines: []line{
			{"people", strconv.Itoa(c.people), confirm + "number of people who carry a panel", false},
			{"aids", `"dollies"`, confirm + "dollies or none", false},
		}},
		{name: "lift", off: true, about: "The lifts that raise a panel, and their places under it.", lines: []line{
			{"units", "2", "", false},
			{"capacity", `""`, "of each, at its load centre", false},
			{"reach", `""`, "of the forks", false},
			{"stowed", `""`, "height of the lowered forks", false},
			{"stations", `["25%", "75%"]`, "shares of the panel's arc", false},
			{"saddle", "true", "a padded saddle in the shape of the curve", false},
			{"base", `{ along = "", across = "", heel = "" }`, "outline of the base, and the distance from its heel to the load centre", true},
		}},
		routeTable(),
	}
}

func routeTable() table {
	return table{
		name: "[route]", off: true, about: "The route: one such table for each leg. Kinds of leg: vehicle, door, corridor, corner, stair, elevator.", lines: []line{
			{"name", `""`, "for findings and drawings", false},
			{"kind", `"door"`, "", false},
			{"width", `""`, "clear width with the leaf open", false},
			{"height", `""`, "", false},
			{"wall", `""`, "thickness of the wall", false},
			{"before", `""`, "clear depth in front of the door", false},
			{"after", `""`, "clear depth behind it", false},
		},
	}
}
