package layout

import (
	"math"

	"dryfit/rules/model/standards"
)

// SkinCuts is how one panel's skin is cut from stock sheets: pieces end on rails
// around the arc and on ribs along the axis, as far as the sheet reaches.
type SkinCuts struct {
	Developed  float64   // length of the skin around, on its near face, as its feet are cut
	Module     float64   // the longest between rails, or a rail and a foot, on its near face
	Bay        float64   // along the axis, of what one sheet has to cover
	FitsAround bool      // that module is no longer than the sheet's bent edge
	Joints     []float64 // along the intrados from the first end, the rails that pieces meet on
	Around     int       // pieces around
	Along      int       // pieces along
	FitsAlong  bool      // a bay is no longer than the sheet's straight edge
	PanelCount int       // pieces in one panel, all layers; takeoff lays those of all panels on sheets
}

// onEdge lets a module that is as long as the sheet, but for round-off, fit.
const onEdge = 1e-9

// SheetsAround cuts the skin of the k-th piece of an arch around, from nought, from its
// first end: each sheet as far as it reaches, and over one module at the least. Of what it
// gives, the sizes along the axis are nought; the joints are from the piece's own end.
func (c *Ceiling) SheetsAround(k int) SkinCuts {
	bent := c.Skin.Sheet.Bent.Get()
	marks := c.RailsWithin(c.part(k))
	var s SkinCuts
	reach := 0.0
	for j, from := range marks[:len(marks)-1] {
		module := c.Vault.Along(from, marks[j+1], c.Skin.Setback.Get())
		s.Developed += module
		s.Module = max(s.Module, module)
		if j > 0 && reach+module > bent+onEdge {
			s.Joints, reach = append(s.Joints, from-marks[0]), 0
		}
		reach += module
	}
	s.Around = len(s.Joints) + 1
	s.FitsAround = s.Module <= bent+onEdge
	return s
}

// RailsWithin are the ends of a piece of an arch, and the rails between them.
func (c *Ceiling) RailsWithin(s0, s1 float64) []float64 {
	marks := []float64{s0}
	arc, around := c.Vault.Arc.Get(), c.Grid.Around.Get()
	for j := 1; j < around; j++ {
		if s := arc * float64(j) / float64(around); s > s0+spacingSlack*arc && s < s1-spacingSlack*arc {
			marks = append(marks, s)
		}
	}
	return append(marks, s1)
}

// SkinSheets works out the sheets of one panel, of a split arch of the piece that
// takes the most.
func (c *Ceiling) SkinSheets() SkinCuts {
	straight := c.Skin.Sheet.Straight.Get()
	s := c.SheetsAround(0)
	for k := 1; k < c.Panel.Around.Get(); k++ {
		if o := c.SheetsAround(k); o.Around > s.Around || o.Around == s.Around && o.Module > s.Module+onEdge {
			s = o
		}
	}
	bays := max(1, int(math.Round(c.Panel.Modules.Get())))
	s.Bay = c.Grid.ModuleAlong.Get()
	if c.Skin.Between.Get() {
		s.Bay = c.Clear()
	}
	s.FitsAlong = s.Bay <= straight+onEdge
	perSheet := bays
	if c.Skin.Between.Get() {
		perSheet = 1
	} else if s.FitsAlong {
		perSheet = int(math.Floor(straight/c.Grid.ModuleAlong.Get() + onEdge))
	}
	s.Along = int(math.Ceil(float64(bays) / float64(max(1, perSheet))))
	s.PanelCount = s.Around * s.Along * c.Skin.Layers.Get()
	return s
}

// BuiltLength is that of all panels and the gaps at their seams.
func (c *Ceiling) BuiltLength() float64 {
	return c.Vault.Length.Get() + float64(c.Seam.Count.Get())*c.Seam.Gap.Get()
}

// SideGap is half of what the room at its tightest leaves beside the arch at
// its widest: its own tolerance, and its form's turned into width.
func (c *Ceiling) SideGap() float64 {
	room := c.Room.Width.Get() - c.Room.Tolerance.Get()
	return (room - c.WidestPanel()) / 2
}

// WidestSideGap is half of what the room at its widest leaves beside the arch
// at its narrowest.
func (c *Ceiling) WidestSideGap() float64 {
	room := c.Room.Width.Get() + c.Room.Tolerance.Get()
	return (room - c.Vault.Width.Get() + c.Panel.Tolerance.Get() + c.Panel.Form.Get()*c.Vault.Spread.Get()) / 2
}

// StripSlack is how far whole strips may be from a rib's depth and still make it
// up: planing takes as much.
const StripSlack = 0.0005

// Laminations is how many strips there are in a laminated rib's depth; 0 of
// another. It is whole where whole strips make up the depth, and else is not
// rounded: there is no such rib, and a count would hide it.
func (c *Ceiling) Laminations() float64 {
	strip, depth := c.Rib.Lamination.Get(), c.Rib.Depth.Get()
	if strip == 0 {
		return 0
	}
	if whole := math.Round(depth / strip); whole >= 1 && math.Abs(whole*strip-depth) <= StripSlack+1e-9 {
		return whole
	}
	return depth / strip
}

// Deeper is the least depth of a rib that is not under a factor of its own; of a
// laminated one a whole number of its strips.
func (c *Ceiling) Deeper(factor float64) float64 {
	depth, strip := factor*c.Rib.Depth.Get(), c.Rib.Lamination.Get()
	if strip == 0 {
		return depth
	}
	return strip * math.Ceil(depth/strip-spacingSlack)
}

// Limit is the figure in force for a rule's limit, by its full name and its built-in
// figure, in SI.
func (c *Ceiling) Limit(name string, builtIn float64) float64 {
	if set, ok := c.standards.Limit(name); ok {
		return set.Value.SI
	}
	return builtIn
}

// Bench is what the shop has, by the standards.
func (c *Ceiling) Bench() *standards.Shop {
	if c.bench == nil {
		c.bench = c.standards.Shop()
	}
	return c.bench
}
