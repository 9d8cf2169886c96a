package layout

import (
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

// Grid is the coffers.
type Grid struct {
	Around, Along             int
	ModuleAround, ModuleAlong float64
	HalfEnds                  bool // the ribs at the vault's ends are halves
	Reveal                    *Reveal
}

// Reveal is the groove of each side of a member, or of a seam.
type Reveal struct {
	Width, Depth float64
	At           string // "seam", "sides", "layers"
}

// Panel is one shop-built unit, the heaviest of them where they differ.
type Panel struct {
	Along, Around, Count int
	Modules              float64 // along, in one panel; whole where the seams fall on ribs
	Length, EndLength    float64 // of an inner panel, of one at an end of the vault
	Width, Height        float64 // of its box as hung
	Arc                  float64 // of its intrados
	Mass                 float64
	Centre               curve.Point // of mass
	Outline              Region      // its section, skin included
	Tolerance, Form      float64
	Pieces               []Piece
}

// Climate is the moisture content of the wood, fractions.
type Climate struct {
	Shop, Dry, Wet float64
}

// Seam is the field joints.
type Seam struct {
	Count         int // seams around the arc
	TenonsInSeam  int // in one of them: in each piece of the arch as many
	EdgeSeams     int // seams along the axis, between the pieces of an arch
	TenonsInEdge  int
	Tenons        int // in all
	Tenon         quantityTenon
	Gap           float64
	Spacing, Edge float64
}

type quantityTenon struct{ Thickness, Width, Length float64 }

func resolveGrid(c *Ceiling) []Fault {
	g, p := c.Spec.Grid, c.Spec.Panels
	c.Grid = Grid{Around: g.Around, Along: g.Along, HalfEnds: g.Ends == "half"}
	c.Grid.ModuleAround = c.Vault.Arc / float64(g.Around)
	along := c.Vault.Length
	if !c.Grid.HalfEnds {
		along -= c.Rib.Width
	}
	c.Grid.ModuleAlong = along / float64(g.Along)
	if c.Grid.ModuleAlong <= c.Rib.Width {
		return []Fault{{"grid.along", c.sprintf("%d modules in %v are %v each, which the rib's width of %v fills",
			g.Along, length(c.Vault.Length), length(c.Grid.ModuleAlong), length(c.Rib.Width))}}
	}
	if c.Grid.ModuleAround <= c.Rail.Width {
		return []Fault{{"grid.around", c.sprintf("%d modules around %v of arc are %v each, which the rail's width of %v fills",
			g.Around, length(c.Vault.Arc), length(c.Grid.ModuleAround), length(c.Rail.Width))}}
	}
	if r := g.Reveal; r != nil && r.Width != nil && r.Depth != nil {
		c.Grid.Reveal = &Reveal{float64(*r.Width), float64(*r.Depth), r.At}
	}

	panels := g.Along
	if p.Along != nil {
		panels = *p.Along
	} else {
		c.assume("panels.along", int64(panels), "common practice: a panel for each module along")
	}
	c.Panel = Panel{
		Along: panels, Around: *p.Around, Count: panels * *p.Around,
		Modules:   float64(g.Along) / float64(panels),
		Tolerance: float64(*p.Tolerance), Form: float64(*p.Form),
		Arc: c.Vault.Arc / float64(*p.Around),
	}
	c.Panel.Length = c.Panel.Modules * c.Grid.ModuleAlong
	c.Panel.EndLength = c.Panel.Length
	if !c.Grid.HalfEnds {
		c.Panel.EndLength += c.Rib.Width / 2 * float64(c.vaultEnds())
	}
	return nil
}

// vaultEnds is at how many of its sides an end panel is at an end of the vault.
func (c *Ceiling) vaultEnds() int {
	if c.Panel.Along == 1 {
		return 2
	}
	return 1
}

func resolveClimate(c *Ceiling) []Fault {
	var faults []Fault
	moisture := func(key string, t quantity.Temperature, h quantity.Share) float64 {
		m, err := timber.EMC(float64(t), float64(h))
		if err != nil {
			faults = append(faults, Fault{key, err.Error()})
		}
		return m
	}
	sp := c.Spec.Climate
	c.Climate = Climate{
		Shop: moisture("climate.shop", sp.Shop.Temperature, sp.Shop.Humidity),
		Dry:  moisture("climate.dry", sp.Dry.Temperature, sp.Dry.Humidity),
		Wet:  moisture("climate.wet", sp.Wet.Temperature, sp.Wet.Humidity),
	}
	return faults
}

// resolveSeam counts the field joints.
func resolveSeam(c *Ceiling) []Fault {
	sp := c.Spec.Seam
	s := Seam{
		Gap: float64(*sp.Gap), Spacing: float64(*sp.Spacing), Edge: float64(*sp.Edge),
		Tenon: quantityTenon{float64(sp.Tenon.Thickness), float64(sp.Tenon.Width), float64(sp.Tenon.Length)},
		Count: c.Panel.Along - 1, EdgeSeams: (c.Panel.Around - 1) * c.Panel.Along,
	}
	s.TenonsInSeam = c.Panel.Around * tenons(c.Panel.Arc, s)
	s.TenonsInEdge = tenons(c.Panel.Length, s)
	s.Tenons = s.Count*s.TenonsInSeam + s.EdgeSeams*s.TenonsInEdge
	c.Seam = s
	return nil
}

// tenons is how many a seam of a length has: one at each end and no more than
// the spacing between. A seam too short for two has one.
func tenons(seam float64, s Seam) int {
	between := seam - 2*s.Edge
	if between <= 0 {
		return 1
	}
	return int(math.Ceil(between/s.Spacing-spacingSlack)) + 1
}

// TenonStations are the distances of the tenons from one end of a seam of a
// length. They lie alike from both ends, so that the mortises of the two panels
// mirror and one template cuts both.
func (c *Ceiling) TenonStations(seam float64) []float64 {
	n := tenons(seam, c.Seam)
	if n == 1 {
		return []float64{seam / 2}
	}
	out := make([]float64, n)
	for i := range out {
		out[i] = c.Seam.Edge + float64(i)*(seam-2*c.Seam.Edge)/float64(n-1)
	}
	return out
}

// spacingSlack keeps round-off from adding a tenon where the spacing divides
// the seam evenly.
const spacingSlack = 1e-9
