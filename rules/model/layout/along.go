package layout

import (
	"math"
)

// RibCount is how many ribs, whole and half, each piece of the arch has in the whole
// vault.
func (c *Ceiling) RibCount() (full, half int) {
	panels := c.Panel.Along.Get()
	full, half = panels*max(0, int(math.Round(c.Panel.Modules.Get()))-1), 2*panels
	if !c.Grid.HalfEnds.Get() {
		full, half = full+2, half-2
	}
	return full, half
}

// RibAt is where along the axis the middle of a rib lies, from the near end of
// the vault: rib 0 is at that end, rib Grid.Along at the far one. The gaps at
// the seams before it are counted, and half of its own.
func (c *Ceiling) RibAt(i int) float64 {
	x := float64(i) * c.Grid.ModuleAlong.Get()
	if !c.Grid.HalfEnds.Get() {
		x += c.Rib.Width.Get() / 2
	}
	seams := float64(c.seamsBefore(i))
	if c.SeamAt(i) {
		seams += 0.5
	}
	return x + c.Seam.Gap.Get()*seams
}

// SeamLine is where along the axis the k-th seam from the near end lies, whether
// a rib is there or not.
func (c *Ceiling) SeamLine(k int) float64 {
	x := float64(k)*c.Panel.Length.Get() + (float64(k)-0.5)*c.Seam.Gap.Get()
	if !c.Grid.HalfEnds.Get() {
		x += c.Rib.Width.Get() / 2
	}
	return x
}

// SeamAt reports whether two panels meet at a rib.
func (c *Ceiling) SeamAt(i int) bool {
	panels := float64(i) / c.Panel.Modules.Get()
	return i > 0 && i < c.Grid.Along.Get() && math.Abs(panels-math.Round(panels)) < spacingSlack
}

// seamsBefore counts the seams that are nearer than a rib.
func (c *Ceiling) seamsBefore(i int) int {
	return max(0, int(math.Ceil(float64(i)/c.Panel.Modules.Get()-spacingSlack))-1)
}

// NearGap is what is left between the near end wall and the vault as designed:
// the last gap, or without a first gap half of what the room is longer.
func (c *Ceiling) NearGap() float64 {
	spare := c.Room.Length.Get() - c.BuiltLength()
	if gap := c.Close.FirstGap; gap.Given() {
		return spare - gap.Get()
	}
	return spare / 2
}

// EdgeRib is one of the two ribs of a panel that straps are fixed to.
type EdgeRib struct {
	Near, Far float64 // its faces along the axis, from the near end wall
	Last      bool    // of its panel: the coffer lies on its near side
}

// EdgeRibs are those of the whole row, from the near end: halves at the seams,
// whole where the vault's ends are.
func (c *Ceiling) EdgeRibs() []EdgeRib {
	var out []EdgeRib
	near, width := c.NearGap(), c.Rib.Width.Get()
	panels := c.Panel.Along.Get()
	for k := range panels {
		start, end := c.PanelAlong(k)
		first, last := width/2, width/2
		if k == 0 && !c.Grid.HalfEnds.Get() {
			first = width
		}
		if k == panels-1 && !c.Grid.HalfEnds.Get() {
			last = width
		}
		out = append(out,
			EdgeRib{Near: near + start, Far: near + start + first},
			EdgeRib{Near: near + end - last, Far: near + end, Last: true})
	}
	return out
}

// PanelAlong is where the k-th panel from the near end lies along the axis, from 0
// and from that end of the vault.
func (c *Ceiling) PanelAlong(k int) (near, far float64) {
	half := c.Seam.Gap.Get() / 2
	far = c.BuiltLength()
	if k > 0 {
		near = c.SeamLine(k) + half
	}
	if k < c.Panel.Along.Get()-1 {
		far = c.SeamLine(k+1) - half
	}
	return near, far
}

// StrapLine is where along the axis the middle of a strap's thickness, or of its
// width on the rib's back, comes up from the rib. It needs strap.fixing.
func (c *Ceiling) StrapLine(r EdgeRib) float64 {
	half := c.Strap.Thickness.Get() / 2
	coffer, seam := r.Far+half, r.Near+half
	if r.Last {
		coffer, seam = r.Near-half, r.Far-half
	}
	switch c.Strap.Fixing.Bottom.Get() {
	case "side":
		return coffer
	case "seam":
		return seam
	default:
		return (r.Near + r.Far) / 2
	}
}
