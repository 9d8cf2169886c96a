package layout

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
