package layout

// MostAlike is how many like parts in a row are worked with. It is far past any
// ceiling, and keeps the time and the memory that a spec takes within bounds.
const MostAlike = 10_000

// withinCounts refuses spacings that would make more parts than that.
func withinCounts(c *Ceiling) []Fault {
	var faults []Fault
	most := func(key, what string, run, each float64) {
		if run/each > MostAlike {
			faults = append(faults, Fault{key, c.sprintf("%v in %v makes more than %d %s, the maximum",
				length(each), length(run), MostAlike, what)})
		}
	}
	most("seam.spacing", "tenons in a seam", max(c.Panel.Arc.Get(), c.Panel.Length.Get()), c.Seam.Spacing.Get())
	if c.Rib.Lamination.Get() > 0 {
		most("rib.lamination", "laminations", c.Rib.Depth.Get(), c.Rib.Lamination.Get())
	}
	if f := c.Room.Framing; f.Spacing.Given() {
		most("room.framing.spacing", "members", max(c.Room.Width.Get(), c.Room.Length.Get()), f.Spacing.Get())
	}
	return faults
}
