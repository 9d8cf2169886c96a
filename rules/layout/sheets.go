package layout

import "math"

// Sheets is how one panel's skin is cut from stock sheets: pieces end on rails
// around the arc and on ribs along the axis, as far as the sheet reaches.
type Sheets struct {
	Developed  float64 // length of the skin around, on its near face
	Module     float64 // between rails, on its near face
	Bay        float64 // along the axis, of what one sheet has to cover
	PerSheet   int     // modules around that one sheet reaches over; 0: not even one
	Around     int     // pieces around
	Along      int     // pieces along
	FitsAlong  bool    // a bay is no longer than the sheet's straight edge
	PanelCount int     // stock sheets for one panel, all layers, uncut rests not used again
}

// onEdge lets a module that is as long as the sheet, but for round-off, fit.
const onEdge = 1e-9

// SkinSheets works out the sheets of one panel.
func (c *Ceiling) SkinSheets() Sheets {
	bent, straight := c.Skin.Sheet.Bent.Get(), c.Skin.Sheet.Straight.Get()
	outer, err := c.Vault.Intrados.Get().Between(0, c.Panel.Arc.Get()).Offset(c.Skin.Setback.Get())
	if err != nil {
		panic(err) // outward never folds
	}
	s := Sheets{Developed: outer.Length()}
	modules := float64(c.Grid.Around.Get()) / float64(c.Panel.Around.Get())
	s.Module = s.Developed / modules
	s.PerSheet = int(math.Floor(bent/s.Module + onEdge))
	s.Around = int(math.Ceil(modules/float64(max(1, s.PerSheet)) - onEdge))

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
	return (room - c.Vault.Width.Get() - c.Panel.Tolerance.Get() - c.Panel.Form.Get()*c.Vault.Spread.Get()) / 2
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
