// Package layout resolves a ceiling once: its profile, grid, panels, pieces
// and masses, from the spec and the defaults for what the spec leaves out.
// Everything downstream reads what is resolved here and parses nothing; what
// it reads is recorded, down to the keys of the spec.
//
// Lengths are in m, masses in kg, angles in rad, moisture contents fractions.
// In a section y runs across the span from the left springing and z up from
// the springing; x runs along the vault from the near end wall.
package layout

import (
	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/standards"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// What a ceiling is made of: figures that note the keys that they come from as
// they are read.
type (
	// Number is a quantity in SI, or a ratio.
	Number = record.Value[float64]
	// Count is a whole number.
	Count = record.Value[int]
	// Word is a text.
	Word = record.Value[string]
	// Flag is true or false.
	Flag = record.Value[bool]
)

// Ceiling is one ceiling, resolved, for one goroutine.
type Ceiling struct {
	// Units are those that figures are printed in. They change no figure, and
	// reading them is not recorded.
	Units     quantity.System
	Assumed   []standards.Assumed
	Project   Project
	Room      Room
	Vault     Vault
	Grid      Grid
	Rib       RibMember
	RibLayers record.Value[[]Layer] // side by side through the rib's width
	Rail      Member
	RailJoint RailJoint
	Skin      Skin
	Climate   Climate
	Panel     Panel
	Seam      Seam
	Strap     Strap
	Ledger    Ledger
	Edge      Edge
	Close     Close
	Survey    Survey
	Finish    Finish
	Lift      Lift
	Crew      Crew
	Wrap      Wrap
	Route     record.Value[[]Leg]
	Fitting   record.Value[[]Fitting]
	Align     record.Value[[]Aligned]
	Accept    record.Value[[]Acceptance]

	rec       *record.Recorder
	spec      *spec.Spec
	own       *spec.Spec // the legs that the standards give, and nothing else
	tree      map[string]any
	standards *standards.Standards
	bench     *standards.Shop // of the standards, once it is asked for
	assumed   record.Set
}

// Fault is something that can't be resolved, at the key to be edited.
type Fault struct {
	Key, Text string
}

// Resolve works out the ceiling of a spec's tree that satisfies the schema.
// Where it can't, the faults say why and the ceiling is nil. Like is another
// ceiling or nil: where its standards are the same, what the two trees share is not read
// again.
func Resolve(tree map[string]any, std *standards.Standards, like *Ceiling) (*Ceiling, []Fault) {
	c, assumed, faults := read(tree, std, like)
	if len(faults) > 0 {
		return nil, faults
	}
	for _, a := range assumed {
		c.addAssumed(a)
	}
	if c.spec.Project.Units.Value(nil).Get() == "imperial" {
		c.Units = quantity.Imperial
	}
	c.takeInputs()
	c.takeSeam()
	for _, step := range []func(*Ceiling) []Fault{
		resolveMembers, resolveVault, resolveGrid, resolveClimate, withinCounts, resolvePanel, resolveSeam, resolveSurvey, resolveRoute,
	} {
		if faults := step(c); len(faults) > 0 {
			return nil, faults
		}
	}
	return c, nil
}

// read is a ceiling that has its spec, and nothing else yet.
func read(tree map[string]any, std *standards.Standards, like *Ceiling) (*Ceiling, []standards.Assumed, []Fault) {
	filled, assumed := std.Fill(tree)
	c := &Ceiling{Units: quantity.Metric, rec: &record.Recorder{}, tree: filled, standards: std}
	var err error
	if like != nil && like.standards == std {
		c.own = like.own
		c.spec, err = like.spec.Rebind(like.tree, filled)
	} else {
		if c.own, err = spec.Bind(map[string]any{"route": std.Route().Legs}); err != nil {
			return nil, nil, []Fault{{Key: "", Text: "default.route: " + err.Error()}}
		}
		c.spec, err = spec.Bind(filled)
	}
	if err != nil {
		return nil, nil, []Fault{{Key: "", Text: err.Error()}}
	}
	return c, assumed, nil
}

// Done is what costs most to work out of a ceiling, where it has been.
type Done struct {
	of     *Ceiling
	figure record.Done[curve.Region]
	arch   record.Done[[]weighed]
	parts  record.Done[[]Part]
}

// Done is what has been worked out by now, for many goroutines.
func (c *Ceiling) Done() Done {
	return Done{c, c.Vault.Figure.Done(), c.Panel.arch.Done(), c.Panel.Parts.Done()}
}

// Take takes what was worked out of another ceiling, where it comes from nothing in which
// the two differ.
func (c *Ceiling) Take(done Done) {
	differ := c.Differ(done.of)
	c.Vault.Figure.Take(done.figure, differ)
	c.Panel.arch.Take(done.arch, differ)
	c.Panel.Parts.Take(done.parts, differ)
}

// ShareSpec puts what a spec's tree has alike with that of the ceiling in its place, so that
// little is read again where the tree is resolved.
func (c *Ceiling) ShareSpec(tree map[string]any) { spec.Share(tree, c.tree) }

// Differ are the keys in which the specs of two ceilings differ, with their defaults, and
// those that only one of them assumes: all keys where the standards differ, or the units
// that they are printed in.
func (c *Ceiling) Differ(from *Ceiling) record.Set {
	if c.standards != from.standards || c.Units != from.Units {
		return record.Every()
	}
	return spec.Differ(c.tree, from.tree).Or(c.assumed.Without(from.assumed)).Or(from.assumed.Without(c.assumed))
}

// Derive is a figure that f works out of others. It is computed once, on first
// use, and comes from the keys that f reads.
func Derive[T any](c *Ceiling, f func() T) record.Value[T] { return record.Of(c.rec, f) }

// named is Derive for a figure that has a key.
func named[T any](c *Ceiling, key string, f func() T) record.Value[T] {
	return record.Named(c.rec, key, f)
}

// Recorded are the keys that are read while f runs.
func (c *Ceiling) Recorded(f func()) record.Set { return c.rec.During(f) }

// Note says that some keys are read.
func (c *Ceiling) Note(keys record.Set) { c.rec.NoteAll(keys) }

// Has reports whether the spec states a key, or the defaults do. Whether it does
// counts as read.
func (c *Ceiling) Has(key string) bool {
	if id, ok := spec.ID(key); ok {
		c.rec.Note(id)
	}
	_, ok := spec.Lookup(c.tree, key)
	return ok || key == "route" && len(c.standards.Route().Legs) > 0
}

// AssumedAt is what was assumed for a key, or for a table that it is in. Which
// of both counts as read.
func (c *Ceiling) AssumedAt(key string) (standards.Assumed, bool) {
	if id, ok := spec.ID(key); ok {
		c.rec.Note(id)
	}
	for _, a := range c.Assumed {
		if a.Key == key || len(key) > len(a.Key) && key[:len(a.Key)+1] == a.Key+"." {
			return a, true
		}
	}
	return standards.Assumed{}, false
}

// AssumedIn reports whether one of some keys was assumed.
func (c *Ceiling) AssumedIn(keys record.Set) bool { return !keys.And(c.assumed).Empty() }

func (c *Ceiling) addAssumed(a standards.Assumed) {
	c.Assumed = append(c.Assumed, a)
	c.assumed = c.assumed.Or(spec.IDs(a.Key))
}

// assume marks a figure that the layout itself supplies for an absent key.
func (c *Ceiling) assume(key string, value any, source string) {
	c.addAssumed(standards.Assumed{Key: key, Value: value, Source: source})
}

// restate changes what is said of a key that a default was put in for.
func (c *Ceiling) restate(key string, value any, why string) {
	for i, a := range c.Assumed {
		if a.Key == key && a.Value != value {
			c.Assumed[i].Value, c.Assumed[i].Source = value, a.Source+why
		}
	}
}

// otherwise is what a key states, or else what follows from other figures.
func otherwise[T any](c *Ceiling, stated record.Value[T], follows func() T) (v record.Value[T], assumed bool) {
	v = named(c, stated.Key(), func() T {
		if stated.Given() {
			return stated.Get()
		}
		return follows()
	})
	return v, !stated.Given()
}

// length is an optional length, or else what is assumed in its place.
func (c *Ceiling) length(stated Number, source string, follows func() float64) Number {
	v, assumed := otherwise(c, stated, follows)
	if assumed {
		c.assume(v.Key(), c.Units.Format(length(v.Get()).Value()), source)
	}
	return v
}

// text is an optional word, or else what is assumed in its place.
func (c *Ceiling) text(stated Word, source string, follows func() string) Word {
	v, assumed := otherwise(c, stated, follows)
	if assumed {
		c.assume(v.Key(), v.Get(), source)
	}
	return v
}

// Number is one that f works out of others, with the key that it has as a
// figure.
func (c *Ceiling) Number(key string, f func() float64) Number { return record.Named(c.rec, key, f) }

// Count is such a count.
func (c *Ceiling) Count(key string, f func() int) Count { return record.Named(c.rec, key, f) }
