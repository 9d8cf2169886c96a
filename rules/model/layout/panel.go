package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Grid is the coffers.
type Grid struct {
	Around, Along             Count
	ModuleAround, ModuleAlong Number
	HalfEnds                  Flag // the ribs at the vault's ends are halves
	Reveal                    Reveal
}

// Reveal is the groove of each side of a member, or of a seam.
type Reveal struct {
	Width, Depth Number
	At           Word // "seam", "sides", "layers"
}

// Given reports whether the groove has its two sizes.
func (r Reveal) Given() bool { return r.Width.Given() && r.Depth.Given() }

// Leaves is what the groove leaves of a member: between the two grooves of its
// sides, or beside the one that a seam halves, and above them. Layers set back
// are no groove.
func (r Reveal) Leaves(m Member) (beside, above float64) {
	beside, above = m.Width.Get(), m.Depth.Get()
	if !r.Given() || r.At.Get() == "layers" {
		return beside, above
	}
	if r.At.Get() == "sides" {
		beside -= r.Width.Get()
	}
	return beside - r.Width.Get(), above - r.Depth.Get()
}

// Cuts reports whether there is a groove in a member. One that would leave
// nothing of it is none: what can't be made is not taken off its weight.
func (r Reveal) Cuts(m Member) bool {
	if !r.Given() || r.At.Get() == "layers" {
		return false
	}
	beside, above := r.Leaves(m)
	return beside > 0 && above > 0
}

// Panel is one shop-built unit, the heaviest of them where they differ.
type Panel struct {
	Along, Around, Count Count
	Modules              Number                     // along, in one panel; whole where the seams fall on ribs
	Length, EndLength    Number                     // of an inner panel, of one at an end of the vault
	Width, Height        Number                     // of its box as hung
	Arc                  Number                     // of its intrados
	Mass, Most           Number                     // of the densities as tabulated, and at the upper end of their spread
	Centre               record.Value[curve.Point]  // of mass
	Outline              record.Value[curve.Region] // its section, skin included
	Tolerance, Form      Number
	Pieces               record.Value[[]Piece]
	Parts                record.Value[[]Part] // of an arch, each with its own weight

	arch record.Value[[]weighed] // its pieces from the left
}

// Heavier is how many times its nominal mass the panel may weigh, from 1, and with
// it each force of its own weight.
func (p Panel) Heavier() float64 { return p.Most.Get() / p.Mass.Get() }

// Seam is the field joints.
type Seam struct {
	Count         Count // seams around the arc
	TenonsInSeam  Count // in one of them: in each piece of the arch as many
	EdgeSeams     Count // seams along the axis, between the pieces of an arch
	TenonsInEdge  Count
	Tenons        Count // in all
	Tenon         Tenon
	Gap           Number
	Spacing, Edge Number
	Mortise       Word
	Tolerance     Number
}

// Tenon is a loose tenon.
type Tenon struct{ Thickness, Width, Length Number }

func resolveGrid(c *Ceiling) []Fault {
	s, g := c.spec.Grid, &c.Grid
	ends := stated(c, s.Ends)
	*g = Grid{
		Around: stated(c, s.Around), Along: stated(c, s.Along),
		HalfEnds: named(c, ends.Key(), func() bool { return ends.Get() == "half" }),
		Reveal:   Reveal{si(c, s.Reveal.Width), si(c, s.Reveal.Depth), stated(c, s.Reveal.At)},
	}
	g.ModuleAround = named(c, "grid.module-around", func() float64 { return c.Vault.Arc.Get() / float64(g.Around.Get()) })
	g.ModuleAlong = named(c, "grid.module-along", func() float64 {
		along := c.Vault.Length.Get()
		if !g.HalfEnds.Get() {
			along -= c.Rib.Width.Get()
		}
		return along / float64(g.Along.Get())
	})
	if g.ModuleAlong.Get() <= c.Rib.Width.Get() {
		return []Fault{{"grid.along", c.sprintf("%d modules in %v are %v each, which the rib's width of %v fills",
			g.Along.Get(), length(c.Vault.Length.Get()), length(g.ModuleAlong.Get()), length(c.Rib.Width.Get()))}}
	}
	if g.ModuleAround.Get() <= c.Rail.Width.Get() {
		return []Fault{{"grid.around", c.sprintf("%d modules around %v of arc are %v each, which the rail's width of %v fills",
			g.Around.Get(), length(c.Vault.Arc.Get()), length(g.ModuleAround.Get()), length(c.Rail.Width.Get()))}}
	}
	c.takePanels()
	return nil
}

// takePanels divides the grid into panels.
func (c *Ceiling) takePanels() {
	s, p := c.spec.Panels, &c.Panel
	along, assumed := otherwise(c, stated(c, s.Along), c.Grid.Along.Get)
	if assumed {
		c.assume("panels.along", int64(along.Get()), "common practice: a panel for each module along")
	}
	*p = Panel{Along: along, Around: stated(c, s.Around), Tolerance: si(c, s.Tolerance), Form: si(c, s.Form)}
	p.Count = named(c, "panel.count", func() int { return p.Along.Get() * p.Around.Get() })
	p.Modules = Derive(c, func() float64 { return float64(c.Grid.Along.Get()) / float64(p.Along.Get()) })
	p.Arc = Derive(c, func() float64 { return c.Vault.Arc.Get() / float64(p.Around.Get()) })
	p.Length = named(c, "panel.length", func() float64 { return p.Modules.Get() * c.Grid.ModuleAlong.Get() })
	p.EndLength = named(c, "panel.end-length", func() float64 {
		if c.Grid.HalfEnds.Get() {
			return p.Length.Get()
		}
		return p.Length.Get() + c.Rib.Width.Get()/2*float64(c.VaultEnds())
	})
}

// VaultEnds is at how many of its sides an end panel is at an end of the vault.
func (c *Ceiling) VaultEnds() int {
	if c.Panel.Along.Get() == 1 {
		return 2
	}
	return 1
}

// resolveSeam counts the field joints.
func resolveSeam(c *Ceiling) []Fault {
	s, p := &c.Seam, c.Panel
	s.Count = Derive(c, func() int { return p.Along.Get() - 1 })
	s.EdgeSeams = Derive(c, func() int { return (p.Around.Get() - 1) * p.Along.Get() })
	s.TenonsInSeam = named(c, "joint.tenons-in-seam", func() int { return p.Around.Get() * c.tenons(p.Arc.Get()) })
	s.TenonsInEdge = named(c, "joint.tenons-in-edge", func() int { return c.tenons(p.Length.Get()) })
	s.Tenons = named(c, "joint.count", func() int {
		n := 0
		if seams := s.Count.Get(); seams > 0 {
			n += seams * s.TenonsInSeam.Get()
		}
		if seams := s.EdgeSeams.Get(); seams > 0 {
			n += seams * s.TenonsInEdge.Get()
		}
		return n
	})
	return nil
}

// takeSeam is what the spec says of a seam.
func (c *Ceiling) takeSeam() {
	s := c.spec.Seam
	c.Seam = Seam{
		Gap: si(c, s.Gap), Spacing: si(c, s.Spacing), Edge: si(c, s.Edge),
		Mortise: stated(c, s.Mortise), Tolerance: si(c, s.Tolerance),
		Tenon: Tenon{si(c, s.Tenon.Thickness), si(c, s.Tenon.Width), si(c, s.Tenon.Length)},
	}
}

// tenons is how many a seam of a length has: one at each end and no more than
// the spacing between. A seam too short for two has one.
func (c *Ceiling) tenons(seam float64) int {
	between := seam - 2*c.Seam.Edge.Get()
	if between <= 0 {
		return 1
	}
	return int(math.Ceil(between/c.Seam.Spacing.Get()-spacingSlack)) + 1
}

// MortiseAir is what two mortises are deeper, and wider where they are wide, than
// their tenon is long and wide: 1/16 in.
const MortiseAir = quantity.Inch / 16

// TenonStations are the distances of the tenons from one end of a seam of a
// length. They lie alike from both ends, so that the mortises of the two panels
// mirror and one template cuts both.
func (c *Ceiling) TenonStations(seam float64) []float64 {
	n := c.tenons(seam)
	if n == 1 {
		return []float64{seam / 2}
	}
	edge, out := c.Seam.Edge.Get(), make([]float64, n)
	for i := range out {
		out[i] = edge + float64(i)*(seam-2*edge)/float64(n-1)
	}
	return out
}

// spacingSlack keeps round-off from adding a tenon where the spacing divides
// the seam evenly.
const spacingSlack = 1e-9

// Ratio is the ratio of the module's longer side to its shorter side, from 1.
func (g Grid) Ratio() float64 {
	around, along := g.ModuleAround.Get(), g.ModuleAlong.Get()
	return max(around, along) / min(around, along)
}
