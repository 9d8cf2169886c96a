package install

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

var liftApart = engine.Rule{
	ID:       "install.lift-apart",
	Title:    "no two lifts have one place, and no lift is under a seam within the arch",
	Why:      "A lift under a seam within the arch carries at most the end of one piece. Two lifts cannot stand in one place.",
	Severity: engine.Hold,
	Needs:    []string{"lift.stations"},
	Basis: engine.Basis{
		Formula: "e ≥ w/2",
		Symbols: []engine.Symbol{
			{Name: "e", Means: "distance from a lift to the nearer end of its piece, along the arc", Unit: "m"},
			{Name: "w", Means: "width of a strap, which stands for the width of a fork; 0 if strap.width is absent", Unit: "m"},
		},
		Valid:  "split arches; in arches of one piece, only two lifts at one station",
		Source: cite.Derivation("places along the arc"),
	},
	Check: checkLiftApart,
}

func checkLiftApart(p *engine.Pass) {
	c := p.Ceiling
	stations, arc := c.Lift.Stations.Get(), c.Panel.Arc.Get()
	for i, s := range stations {
		if off := min(s, 1-s) * arc; c.Panel.Around.Get() > 1 && c.OnSeam(off) {
			p.Report(engine.Finding{
				At: c.Lift.Stations.Place(i), Related: []string{"panels.around", "strap.width"},
				Text:     p.Textf("lift %d stands under the seam of two pieces of the arch, {measured} from the end of its piece", i+1),
				Measured: quantity.Length(off).Value(),
			})
		}
		if i > 0 && s == stations[i-1] {
			p.Report(engine.Finding{
				At: c.Lift.Stations.Place(i), Related: []string{c.Lift.Stations.Place(i - 1)},
				Text: p.Textf("lifts %d and %d have one station", i, i+1),
			})
		}
	}
}
