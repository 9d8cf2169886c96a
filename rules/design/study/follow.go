package study

import (
	"maps"
	"math"
	"slices"
	"strings"

	"dryfit/rules/model/layout"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// follow is a change that has to follow another, where the spec ties the two
// and the study does not vary the key itself.
type follow struct {
	key   string
	after []string
	// tied reports whether the spec ties them; nil: it always does. Otherwise
	// is said where it does not and one of after is varied.
	tied      func(base *state) bool
	otherwise string
	value     func(base, now *state) any
	unless    string // a key that is varied itself: there is nothing to say
	says      string // {over} is what the key keeps beyond the first of after
}

// followsAll are all changes that follow, each after those that it may hang on.
// A key that the spec leaves out follows by its default. A line without a value
// says what stays.
var followsAll = []follow{
	{
		key: "panels.along", after: []string{"grid.along"}, tied: same("panels.along", "grid.along"),
		otherwise: "panels.along stays as it is stated",
		value:     as("grid.along"), says: "panels.along follows grid.along",
	},
	{key: "rail.species", after: []string{"rib.species"}, tied: same("rail.species", "rib.species"), value: as("rib.species"), says: "rail.species follows rib.species"},
	{key: "rail.width", after: []string{"rib.width"}, tied: same("rail.width", "rib.width"), value: as("rib.width"), says: "rail.width follows rib.width"},
	{
		key: "rail.depth", after: []string{"rib.depth", "skin.material", "skin.thickness", "skin.layers"},
		tied:  func(b *state) bool { return math.Abs(b.length("rail.depth")-b.ribLessSkin()) < sameSize },
		value: func(_, now *state) any { return now.text(now.ribLessSkin()) },
		says:  "rail.depth follows rib.depth, less the skin",
	},
	{key: "skin.setback", after: []string{"rail.depth"}, tied: same("skin.setback", "rail.depth"), value: as("rail.depth"), says: "skin.setback follows rail.depth"},
	{key: "room.width", after: []string{"vault.span"}, value: beyond("room.width", "vault.span"), says: "room.width keeps its {over} beyond vault.span"},
	{key: "room.length", after: []string{"vault.length"}, value: beyond("room.length", "vault.length"), says: "room.length keeps its {over} beyond vault.length"},
	{after: []string{"vault.rise", "vault.radius"}, unless: "room.above", says: "room.above stays, so the framing rises with the vault"},
}

// sameSize is how near two lengths are to be one: a tenth of a millimetre.
const sameSize = 1e-4

func same(a, b string) func(*state) bool {
	return func(s *state) bool {
		if s.raw(a) == s.raw(b) {
			return true
		}
		return lengths[a] != nil && math.Abs(s.length(a)-s.length(b)) < sameSize
	}
}

func as(key string) func(base, now *state) any {
	return func(_, now *state) any { return now.raw(key) }
}

func beyond(key, after string) func(base, now *state) any {
	return func(base, now *state) any {
		return now.text(base.length(key) - base.length(after) + now.length(after))
	}
}

// lengths are the resolved lengths of the keys above, for where the tree leaves
// them to a default.
var lengths = map[string]func(*layout.Ceiling) float64{
	"vault.span":     func(c *layout.Ceiling) float64 { return c.Vault.Span.Get() },
	"vault.length":   func(c *layout.Ceiling) float64 { return c.Vault.Length.Get() },
	"room.width":     func(c *layout.Ceiling) float64 { return c.Room.Width.Get() },
	"room.length":    func(c *layout.Ceiling) float64 { return c.Room.Length.Get() },
	"rib.width":      func(c *layout.Ceiling) float64 { return c.Rib.Width.Get() },
	"rib.depth":      func(c *layout.Ceiling) float64 { return c.Rib.Depth.Get() },
	"rail.width":     func(c *layout.Ceiling) float64 { return c.Rail.Width.Get() },
	"rail.depth":     func(c *layout.Ceiling) float64 { return c.Rail.Depth.Get() },
	"skin.thickness": func(c *layout.Ceiling) float64 { return c.Skin.Thickness.Get() },
	"skin.setback":   func(c *layout.Ceiling) float64 { return c.Skin.Setback.Get() },
}

// state is a tree with what the base has for the keys that it leaves out.
type state struct {
	tree map[string]any
	base *layout.Ceiling
}

// raw is a value as the tree has it, or as the base resolves it.
func (s *state) raw(key string) any {
	if v, ok := spec.Lookup(s.tree, key); ok {
		return v
	}
	switch key {
	case "panels.along":
		return int64(s.base.Panel.Along.Get())
	case "rail.species":
		return s.base.Rail.Species.Get().Name
	case "skin.material":
		return s.base.Skin.Material.Get().Name
	case "skin.layers":
		return int64(s.base.Skin.Layers.Get())
	}
	if lengths[key] != nil {
		return s.text(s.length(key))
	}
	return nil
}

func (s *state) length(key string) float64 {
	if v, ok := spec.Lookup(s.tree, key); ok {
		text, _ := v.(string)
		if q, err := quantity.Parse(quantity.Metre, text); err == nil {
			return q.SI
		}
	}
	return lengths[key](s.base)
}

func (s *state) ribLessSkin() float64 {
	layers, _ := s.raw("skin.layers").(int64)
	name, _ := s.raw("skin.material").(string)
	return s.length("rib.depth") - float64(layers)*layout.SoldThickness(name, s.length("skin.thickness"))
}

func (s *state) text(m float64) string { return lengthText(m, s.base.Units == quantity.Imperial) }

// follow decides what follows, and says it.
func (s *Study) follow() {
	base := &state{s.Base.Document.Tree, s.Base.Ceiling}
	changed := map[string]bool{}
	for _, d := range s.Vary {
		changed[d.Key] = true
	}
	after := func(keys []string) bool { return slices.ContainsFunc(keys, func(k string) bool { return changed[k] }) }
	// Dimensions that follow from others, where the spec gives more than the
	// profile needs, would contradict every change.
	for _, f := range base.base.Vault.Shape().Follows {
		_, written := spec.Lookup(base.tree, f.Key)
		_, given := spec.Lookup(base.tree, f.Beside)
		if !s.varies("vault.profile") && written && given && !s.varies(f.Key) && after(f.From) {
			s.drops = append(s.drops, f.Key)
			s.Says = append(s.Says, f.Key+" follows from the rest of the profile")
		}
	}
	for i := range followsAll {
		f := &followsAll[i]
		if !after(f.after) || s.varies(f.key) || s.varies(f.unless) {
			continue
		}
		_, written := spec.Lookup(base.tree, f.key)
		switch {
		case f.value == nil:
		case f.tied != nil && !f.tied(base), !written && base.base.Has(f.key): // the standards state it
			if f.otherwise != "" {
				s.Says = append(s.Says, f.otherwise)
			}
			continue
		default:
			changed[f.key] = true
			s.follows = append(s.follows, f)
		}
		s.Says = append(s.Says, base.say(f))
	}
}

func (s *state) say(f *follow) string {
	if !strings.Contains(f.says, "{over}") {
		return f.says
	}
	over := s.length(f.key) - s.length(f.after[0])
	return strings.ReplaceAll(f.says, "{over}", s.base.Units.Format(quantity.Length(over).Value()))
}

// followed is a tree with what follows in it. A key that the spec leaves out
// to its default stays out, once those after it have read it.
func (s *Study) followed(tree map[string]any) map[string]any {
	base := &state{s.Base.Document.Tree, s.Base.Ceiling}
	now := &state{tree, s.Base.Ceiling}
	var out []string
	for _, f := range s.follows {
		if _, written := spec.Lookup(base.tree, f.key); !written {
			out = append(out, f.key)
		}
		now.tree, _ = spec.With(now.tree, f.key, f.value(base, now))
	}
	for _, key := range out {
		now.tree = without(now.tree, key)
		table, _, _ := strings.Cut(key, ".")
		if in, ok := now.tree[table].(map[string]any); ok && len(in) == 0 && base.tree[table] == nil {
			delete(now.tree, table) // of the copy that without has made
		}
	}
	return now.tree
}

// without is a tree without a key of one of its tables; the tree itself is left
// as it was.
func without(tree map[string]any, key string) map[string]any {
	table, name, _ := strings.Cut(key, ".")
	in, ok := tree[table].(map[string]any)
	if !ok {
		return tree
	}
	out := maps.Clone(tree)
	in = maps.Clone(in)
	delete(in, name)
	out[table] = in
	return out
}
