package layout

import "math"

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
