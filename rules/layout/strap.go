package layout

import "fmt"

// LongestRun is the longest clear run of an arch's rib: between neighbouring
// straps, or twice the overhang past the last one. The name says which. It
// needs strap.stations.
func (c *Ceiling) LongestRun() (run float64, name string) {
	arc := c.Vault.Arc.Get()
	var stations []float64
	for _, s := range c.Strap.Stations.Get() {
		stations = append(stations, s*arc)
	}
	run, name = 2*stations[0], "twice the overhang past the first strap"
	for i := range stations[1:] {
		if r := stations[i+1] - stations[i]; r > run {
			run, name = r, fmt.Sprintf("the run from strap %d to strap %d", i+1, i+2)
		}
	}
	if r := 2 * (arc - stations[len(stations)-1]); r > run {
		run, name = r, "twice the overhang past the last strap"
	}
	return run, name
}

// EvenShare is the force on one strap, in N, if all that the arch hangs on
// carried alike. It needs strap.stations.
func (c *Ceiling) EvenShare() float64 {
	arch := c.Panel.Mass.Get() * float64(c.Panel.Around.Get())
	return arch * standardGravity / float64(2*len(c.Strap.Stations.Get()))
}

// LedgerReaches reports whether a ledger lies under the foot, with the room at
// its widest: one that does not bears nothing. It needs the ledger.
func (c *Ceiling) LedgerReaches() bool {
	return c.Ledger.Projection.Given() && c.Ledger.Projection.Get() > c.WidestGap()
}

// WidestGap is that between a wall and the springing, with the room at its
// widest and the vault in its middle.
func (c *Ceiling) WidestGap() float64 {
	room := c.Room.Width.Get() + c.Room.Tolerance.Get()
	return (room - c.Vault.Span.Get()) / 2
}
