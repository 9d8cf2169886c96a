package layout

import (
	"dryfit/rules/kernel/timber"
)

// Member is the section of a rib or a rail.
type Member struct {
	Species    timber.Species
	Cut        timber.Cut
	Width      float64 // along the axis for a rib, around the arc for a rail
	Depth      float64 // across the curve, from the intrados
	Lamination float64 // thickness of one strip of a laminated rib, else 0
}

// Skin is the bent sheet.
type Skin struct {
	Material  timber.Sheet
	Thickness float64 // of one layer
	Layers    int
	Setback   float64 // from the intrados to the near face
	LongBent  bool    // the sheet's long edge goes around the arc
	Around    bool    // the straight edge runs around, so that nothing can bend
	Between   bool    // between the ribs, or let into them, and not behind
}

// Total is the thickness of all layers.
func (s Skin) Total() float64 { return s.Thickness * float64(s.Layers) }

// LeastRadius is the least radius that the material allows the skin, on the
// face toward the room.
func (s Skin) LeastRadius() (float64, error) {
	return s.Material.LeastRadius(s.Thickness, s.LongBent)
}

// BentEdge names the edge of the sheet that goes around the arc.
func (s Skin) BentEdge() string {
	if s.LongBent {
		return "long"
	}
	return "short"
}

func resolveMembers(c *Ceiling) []Fault {
	var faults []Fault
	sp := c.Spec
	species := func(name, key string) timber.Species {
		s, err := c.standards.Species(name)
		if err != nil {
			faults = append(faults, Fault{Key: key, Text: err.Error()})
		}
		return s
	}

	c.Skin = Skin{
		Thickness: float64(*sp.Skin.Thickness), Layers: *sp.Skin.Layers,
		Around: sp.Skin.Straight == "around", LongBent: sp.Skin.Sheet.Bent >= sp.Skin.Sheet.Straight,
	}
	sheet, err := c.standards.Sheet(sp.Skin.Material)
	if err != nil {
		faults = append(faults, Fault{Key: "skin.material", Text: err.Error()})
	}
	c.Skin.Material = sheet

	c.Rib = Member{
		Species: species(sp.Rib.Species, "rib.species"), Cut: cuts[sp.Rib.Cut],
		Width: float64(sp.Rib.Width), Depth: float64(sp.Rib.Depth),
	}
	if sp.Rib.Construction == "laminated" {
		c.Rib.Lamination = float64(*sp.Rib.Lamination)
	}

	const asRib = "common practice: as the rib"
	c.Rail = Member{
		Species: species(c.text(sp.Rail.Species, "rail.species", sp.Rib.Species, asRib), "rail.species"),
		Cut:     cuts[sp.Rail.Cut],
		Width:   c.length(sp.Rail.Width, "rail.width", c.Rib.Width, asRib),
		Depth:   c.length(sp.Rail.Depth, "rail.depth", c.Rib.Depth-c.Skin.Total(), "common practice: rib less skin"),
	}
	if c.Rail.Depth <= 0 {
		faults = append(faults, Fault{Key: "rib.depth", Text: c.sprintf(
			"the rib is %v deep and the skin %v thick, which leaves no depth for the rail; state rail.depth",
			length(c.Rib.Depth), length(c.Skin.Total()))})
	}
	c.Skin.Setback = c.length(sp.Skin.Setback, "skin.setback", c.Rail.Depth, "common practice: the rail's depth")
	c.Skin.Between = c.Skin.Setback < c.Rib.Depth
	return faults
}

var cuts = map[string]timber.Cut{
	"vertical": timber.VerticalGrain,
	"flat":     timber.FlatGrain,
	"mixed":    timber.MixedGrain,
}
