package layout

import (
	"dryfit/spec"
)

// fittingPieces are the fittings of stated mass in a piece of an arch, of the
// panel along the vault whose fittings weigh most there. What one is behind the
// skin is not in the spec: it weighs in the middle of the skin's thickness.
func (c *Ceiling) fittingPieces(s0, s1 float64) []Piece {
	panels := make([][]Piece, c.Panel.Along.Get())
	masses, heaviest := make([]float64, len(panels)), 0
	for i, f := range c.Fitting.Get() {
		at := f.Coffer.Get()
		if !f.Mass.Given() || at[0] > c.Grid.Around.Get() || at[1] > c.Grid.Along.Get() {
			continue
		}
		s, panel, far := c.standing(f)
		if !c.Holds(s0, s1, s) {
			continue
		}
		panels[panel] = append(panels[panel], Piece{
			Kind: Let, Count: 1, Material: spec.Key("fitting", i+1), Mass: f.Mass.Get(), At: s, Share: far,
			Centre: c.Vault.Behind(s, c.Skin.Setback.Get()+c.Skin.Total()/2),
		})
		masses[panel] += f.Mass.Get()
		if masses[panel] > masses[heaviest] {
			heaviest = panel
		}
	}
	return toLoadedRib(panels[heaviest], masses[heaviest])
}

// standing is where a fitting stands: along the arc, in which panel along the
// vault, and the share of it that the panel's far edge rib bears.
func (c *Ceiling) standing(f Fitting) (s float64, panel int, far float64) {
	at := f.Coffer.Get()
	s = (float64(at[0])-0.5)*c.Grid.ModuleAround.Get() + f.At.Around.Get()
	x := (float64(at[1]) - 0.5 + f.At.Along.Get()/c.Grid.ModuleAlong.Get()) / c.Panel.Modules.Get()
	panel = min(max(int(x), 0), c.Panel.Along.Get()-1)
	return min(max(s, 0), c.Vault.Arc.Get()), panel, min(max(x-float64(panel), 0), 1)
}

// FittingPlace is where a fitting stands: along the arc, in which panel along the
// vault, and how far its middle is from the near edge of its bay, between rib faces,
// or of its panel, where the skin lies behind the ribs.
func (c *Ceiling) FittingPlace(f Fitting) (s float64, panel int, along float64) {
	s, panel, _ = c.standing(f)
	if c.Skin.Between.Get() {
		return s, panel, c.Clear()/2 + f.At.Along.Get()
	}
	along = (float64(f.Coffer.Get()[1])-0.5)*c.Grid.ModuleAlong.Get() + f.At.Along.Get() - float64(panel)*c.Panel.Length.Get()
	if panel == 0 && !c.Grid.HalfEnds.Get() {
		along += c.Rib.Width.Get() / 2
	}
	return s, panel, along
}

// toLoadedRib turns the far rib's shares into those of the edge rib that bears
// more.
func toLoadedRib(fittings []Piece, mass float64) []Piece {
	far := 0.0
	for _, p := range fittings {
		far += p.Share * p.Mass
	}
	if 2*far >= mass {
		return fittings
	}
	for i := range fittings {
		fittings[i].Share = 1 - fittings[i].Share
	}
	return fittings
}

// Unweighed are the numbers, in the spec, of the fittings whose mass is not
// stated.
func (c *Ceiling) Unweighed() []int {
	var out []int
	for i, f := range c.Fitting.Get() {
		if !f.Mass.Given() {
			out = append(out, i+1)
		}
	}
	return out
}
