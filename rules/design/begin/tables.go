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
			{"depth", l(c.depth - c.skin), "the rib's less the skin, which lies on it between the ribs", false},
			{"joint", `{ kind = "", thickness = "", width = "", embedment = "" }`, "at its ends: tenon; or dowel, screw, with count and diameter", true},
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
		title, note = "Untitled ceiling", confirm+"what the drawings call it"
	}
	return table{name: "project", lines: []line{
		{"title", quoted(title), note, false},
		{"sheet", quoted(""), "of the drawing, if there is one yet", true},
		{"units", quoted(units), "that reports print in; the spec may mix both", false},
		{"engineer", quoted(""), "of record for the hanging; empty: it is referred", false},
	}}
}

func room(w Wanted, c choice, l func(float64) string, s sizes) table {
	sizes := []line{
		{"width", l(c.width), confirm + "wall to wall across the span", false},
		{"length", l(c.length), confirm + "wall to wall along the vault", false},
		{"height", l(c.height), confirm + "floor to springing; a panel is tipped down in it", false},
	}
	above := line{"above", l(s.above), confirm + "clear, from the back of the crown to the framing", false}
	loose := line{"tolerance", l(s.loose), confirm + "plus or minus, on width and length", false}
	if r := w.Room; r != nil {
		sizes = []line{
			{"width", quoted(r.Width), "wall to wall across the span", false},
			{"length", quoted(r.Length), "wall to wall along the vault", false},
			{"height", quoted(r.Height), "floor to springing", false},
		}
	}
	if w.Survey != nil {
		sizes[0].note, sizes[1].note = "halfway between the least and the greatest measured", "the same"
		loose.note = "what the readings are off by, with their accuracy"
		if c.above > 0 {
			above = line{"above", l(c.above), "from the back of the crown to the framing, as measured", false}
		}
	}
	return table{name: "room", about: "The room as built. The vault needs a gap at every wall: it is worked from the tolerances below, from how " +
		"the wood moves, and at the near end from the run that the last panel takes to slide home.", lines: append(sizes, []line{
		{"use", `"public"`, confirm + "what the room is for, which decides how high it has to be: dwelling, public", false},
		above,
		loose,
		{"entry", `"end"`, confirm + "where one first sees the vault: end, side", false},
		{"access", `""`, "who can get above to fix the straps: above, none", true},
		{"framing", `{ spacing = "", runs = "", offset = "", member = "", species = "" }`, "what the straps are fixed to", true},
	}...)}
}

func vault(w Wanted, c choice, l func(float64) string, f figures) table {
	worked := ""
	if w.Room != nil {
		worked = "the greatest that the room leaves; "
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
		around += "; odd, so that a coffer lies at the crown"
	}
	along := f.say("a module of %s; %.2f to one", func(c *layout.Ceiling) []any {
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
		{"ends", `"half"`, "half ribs at the ends of the vault: all panels alike", false},
		{"reveal", `{ width = ` + l(s.reveal[0]) + `, depth = ` + l(s.reveal[1]) + `, at = "seam" }`, confirm + "the shadow groove", false},
	}}
}

func panels(c choice, l func(float64) string, f figures, s sizes) table {
	return table{name: "panels", lines: []line{
		{"along", strconv.Itoa(c.along), confirm + f.say("one for each coffer along, %s each", func(c *layout.Ceiling) []any { return []any{quantity.Mass(c.Panel.Mass.Get())} }), false},
		{"around", "1", confirm + "2 where an arch is too large to bring in one piece", false},
		{"tolerance", l(c.panel), confirm + "plus or minus, on a panel's length and width", false},
		{"form", l(s.form), confirm + "plus or minus, on the rise, off the shop's form", false},
	}}
}

func rib(w Wanted, c choice, l func(float64) string, f figures, s sizes) table {
	strip := f.say("%.4g strips", func(c *layout.Ceiling) []any { return []any{c.Laminations()} })
	if f.ceiling != nil && !math.IsInf(f.ceiling.Vault.TightestRadius.Get(), 1) {
		strip += f.say("; the tightest radius is %.0f times one", func(c *layout.Ceiling) []any {
			return []any{c.Vault.TightestRadius.Get() / c.Rib.Lamination.Get()}
		})
	}
	t := table{name: "rib", lines: []line{
		given("species", w.Species, species, "the wood"),
		{"cut", `"mixed"`, confirm + "how the strips are sawn: vertical, flat, mixed", false},
		given("construction", w.Construction, laminated, "or sawn, solid"),
		{"width", l(s.width), "a rib at a seam is two halves", false},
		{"depth", l(c.depth), confirm + "deep enough for its runs between straps", false},
	}}
	if w.Construction == "" || w.Construction == laminated {
		t.lines = append(t.lines, line{"lamination", l(c.strip), confirm + strip, false})
	}
	return t
}

func skin(w Wanted, c choice, l func(float64) string, s sizes) table {
	return table{name: "skin", lines: []line{
		given("material", w.Skin, skinMaterial, "what the supplier's bends to"),
		{"thickness", l(c.skin), "", false},
		{"straight", `"along"`, "the sheet's unbent edge", false},
		{"sheet", `{ straight = ` + l(s.sheet[0]) + `, bent = ` + l(s.sheet[1]) + ` }`, "", false},
		{"setback", l(c.depth - c.skin), "from the underside to its near face; the rail's depth", false},
		{"glue", `{ width = "", press = "", spacing = "" }`, "to the frame; press: clamps, staples, nails, bag", true},
	}}
}

func seam(l func(float64) string, s sizes) table {
	return table{name: "seam", about: "The field joints. They are the shop's to choose; these are in proportion to the rib.", lines: []line{
		{"tenon", `{ thickness = ` + l(s.tenon[0]) + `, width = ` + l(s.tenon[1]) + `, length = ` + l(s.tenon[2]) + ` }`, "", false},
		{"spacing", l(s.spacing), confirm + "greatest, from tenon to tenon", false},
		{"edge", l(s.edge), confirm + "the first tenon, from the rib's end", false},
		{"mortise", `"one snug, rest wide"`, "", false},
		{"gap", l(s.seam[0]), confirm + "of glue, as designed", false},
		{"tolerance", l(s.seam[1]), confirm + "plus or minus, on that", false},
	}}
}

func strap(c choice, l func(float64) string, s sizes) table {
	return table{name: "strap", about: "The hangers, on each edge rib of a panel. Where they are and how they share is worked out; what one may carry " +
		"is for a test report or an engineer to say, and is left for you to fill in.", lines: []line{
		{"stations", stations(c.stations), confirm + "shares of the arc", false},
		{"material", `"steel"`, confirm + "as bought", false},
		{"width", l(s.strap[0]), confirm + "as bought", false},
		{"thickness", l(s.strap[1]), confirm + "as bought", false},
		{"lap", l(s.lap), confirm + "on the rib and on the framing", false},
		{"setting", l(c.setting), confirm + "plus or minus, in its length as it is fixed", false},
		{"hung", `"shop"`, confirm + "state of the wood when hung; \"room\" once it has come to the room's air", false},
		{"fixing", `{ top = "", bottom = "" }`, "top: side, underside; bottom: side, back, seam", true},
		{"hole", `""`, "diameter, at the screws", true},
		{"screws", `{ count = 0, diameter = "", penetration = "" }`, "at one end", true},
		{"allowable", `{ load = "", source = "" }`, "never a guess: the load, and who stands behind it", true},
	}}
}

func closing(c choice, l func(float64) string, s sizes) []table {
	return []table{
		{name: "edge", lines: []line{{"cover", l(c.cover), confirm + "what the moulding at the walls can hide", false}}},
		{name: "close", lines: []line{
			{"first_gap", l(s.gap), confirm + "left at the far end wall, where the first panel goes", false},
			{"last", `"slide"`, confirm + "or drop: tenons set from above", false},
		}},
		{name: "finish", lines: []line{{"sides", `"all"`, confirm + "sealed on all faces alike, or on those seen", false}}},
		{name: "crew", lines: []line{
			{"people", strconv.Itoa(c.people), confirm + "who carry a panel", false},
			{"aids", `"dollies"`, confirm + "or none", false},
		}},
		{name: "lift", off: true, about: "The lifts that raise a panel, and where they stand under it.", lines: []line{
			{"units", "2", "", false},
			{"capacity", `""`, "of each, at its load centre", false},
			{"reach", `""`, "of the forks", false},
			{"stowed", `""`, "height of the forks when they are down", false},
			{"stations", `["25%", "75%"]`, "shares of the panel's own arc", false},
			{"saddle", "true", "shaped to the curve and padded", false},
			{"base", `{ along = "", across = "", heel = "" }`, "outline, and from its heel to the load centre", true},
		}},
		routeTable(),
	}
}

func routeTable() table {
	return table{
		name: "[route]", off: true, about: "The way in, leg by leg: vehicle, door, corridor, corner, stair, elevator. Each leg is a table like this one.", lines: []line{
			{"name", `""`, "what one calls it", false},
			{"kind", `"door"`, "", false},
			{"width", `""`, "clear, with the leaf open", false},
			{"height", `""`, "", false},
			{"wall", `""`, "depth of the opening", false},
			{"before", `""`, "clear depth on the side one comes from", false},
			{"after", `""`, "and beyond", false},
		},
	}
}
