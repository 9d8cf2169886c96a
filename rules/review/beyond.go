package review

import (
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
)

// beyondPublished lists what the standards say of the spec's materials that is past
// all that is published of wood, on the side where more passes: such a figure
// loosens every rule that reads it.
func beyondPublished(c *layout.Ceiling, std *standards.Standards) (out []engine.Loosened) {
	names := []string{c.Rib.Species.Get().Name, c.Rail.Species.Get().Name, c.Room.Framing.Species.Get(), c.Skin.Material.Get().Name}
	var said []string
	for _, name := range names {
		if slices.Contains(said, name) {
			continue
		}
		said = append(said, name)
		for _, b := range std.BeyondPublished(name) {
			end := "at least "
			if b.Above {
				end = "at most "
			}
			out = append(out, engine.Loosened{
				Name: b.Key, BuiltIn: end + c.Units.Limit(b.Published), Used: c.Units.Limit(b.Value),
				Source: "of " + b.Material + ", " + b.Source, Origin: b.Origin,
			})
		}
	}
	return out
}
