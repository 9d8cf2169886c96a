package plan

import "fmt"

// cofferRoom is how wide a coffer is on paper at least, in mm, to be numbered: where a line
// of the framing runs through it, a number has room beside that.
const cofferRoom = 15

// coffers numbers each coffer that has room for it: its place around from the left
// springing, and along from the near end.
func (d *planOf) coffers() {
	c := d.c
	for i := range c.Grid.Along.Get() {
		x0, x1 := c.RibAt(i)+c.Rib.Width.Get()/2, c.RibAt(i+1)-c.Rib.Width.Get()/2
		for j := range c.Grid.Around.Get() {
			from, to := float64(j)*c.Grid.ModuleAround.Get()+c.Rail.Width.Get()/2, float64(j+1)*c.Grid.ModuleAround.Get()-c.Rail.Width.Get()/2
			if to > from && d.v.Size(x1-x0) >= cofferRoom {
				d.b.Within(fmt.Sprintf("%d, %d", j+1, i+1), d.at(x0, d.across(from)), d.at(x1, d.across(to)))
			}
		}
	}
}
