// Package layout resolves a ceiling once: its profile, grid, panels, pieces
// and masses, from the spec and the defaults for what the spec leaves out.
// Everything downstream reads what is resolved here and parses nothing.
//
// Lengths are in m, masses in kg, angles in rad, moisture contents fractions.
// In a section y runs across the span from the left springing and z up from
// the springing; x runs along the vault from the near end wall.
package layout

import (
	"dryfit/rules/standards"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// Ceiling is one ceiling, resolved.
type Ceiling struct {
	Spec      *spec.Spec // as written, with the defaults filled in
	Units     quantity.System
	Assumed   []standards.Assumed
	Vault     Vault
	Grid      Grid
	Rib       Member
	RibLayers []Layer // side by side through the rib's width
	Rail      Member
	Skin      Skin
	Climate   Climate
	Panel     Panel
	Seam      Seam

	tree      map[string]any
	standards *standards.Standards
}

// Fault is something that can't be resolved, at the key to be edited.
type Fault struct {
	Key, Text string
}

// Resolve works out the ceiling of a spec's tree that satisfies the schema.
// Where it can't, the faults say why and the ceiling is nil.
func Resolve(tree map[string]any, std *standards.Standards) (*Ceiling, []Fault) {
	filled, assumed := std.Fill(tree)
	s, err := spec.Bind(filled)
	if err != nil {
		return nil, []Fault{{Key: "", Text: err.Error()}}
	}
	c := &Ceiling{Spec: s, Units: quantity.Metric, Assumed: assumed, tree: filled, standards: std}
	if s.Project.Units == "imperial" {
		c.Units = quantity.Imperial
	}
	for _, step := range []func(*Ceiling) []Fault{
		resolveMembers, resolveVault, resolveGrid, resolveClimate, withinCounts, resolvePanel, resolveSeam,
	} {
		if faults := step(c); len(faults) > 0 {
			return nil, faults
		}
	}
	return c, nil
}

// Has reports whether the spec states a key, or the defaults do.
func (c *Ceiling) Has(key string) bool {
	_, ok := spec.Lookup(c.tree, key)
	return ok
}

// AssumedAt is what was assumed for a key, or for a table that it is in.
func (c *Ceiling) AssumedAt(key string) (standards.Assumed, bool) {
	for _, a := range c.Assumed {
		if a.Key == key || len(key) > len(a.Key) && key[:len(a.Key)+1] == a.Key+"." {
			return a, true
		}
	}
	return standards.Assumed{}, false
}

// assume marks a figure that the layout itself supplies for an absent key.
func (c *Ceiling) assume(key string, value any, source string) {
	c.Assumed = append(c.Assumed, standards.Assumed{Key: key, Value: value, Source: source})
}

// length is an optional length, or else what is assumed in its place.
func (c *Ceiling) length(given *quantity.Length, key string, otherwise float64, source string) float64 {
	if given != nil {
		return float64(*given)
	}
	c.assume(key, c.Units.Format(quantity.Length(otherwise).Value()), source)
	return otherwise
}

// text is an optional word, or else what is assumed in its place.
func (c *Ceiling) text(given, key, otherwise, source string) string {
	if given != "" {
		return given
	}
	c.assume(key, otherwise, source)
	return otherwise
}
