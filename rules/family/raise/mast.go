package raise

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var mast = engine.Rule{
	ID:       "raise.mast",
	Title:    "each lift's base reaches past the panel's mass centre, and its mast has room beside the panel that goes up last",
	Why:      "A lift tips over when its load is past the end of its base. A mast rises above its forks, and the panel or the wall can block it.",
	Severity: engine.Query,
	Needs:    []string{"lift.base", "lift.stations", "close.first_gap"},
	Figures:  []string{"panel.end-length", "close.last-gap.least", "close.projection"},
	Basis: engine.Basis{
		Formula: "m = max(h, l/2), m + s ≤ a, m − l/2 ≤ g − s_n",
		Symbols: []engine.Symbol{
			{Name: "m", Means: "distance from the heel of the base to the panel's mass centre", Unit: "m"},
			{Name: "h", Means: "distance from the heel of the base to the load centre of the forks", Unit: "m"},
			{Name: "l", Means: "length of a panel along the axis, measured on a panel at an end of the vault", Unit: "m"},
			{Name: "a", Means: "length of the base along the axis", Unit: "m"},
			{Name: "s", Means: "slide of the panel on its forks: the projection of its neighbour's tenons plus close.slide.clearance; 0 without tenons", Unit: "m"},
			{Name: "g", Means: "least last gap", Unit: "m"},
			{Name: "s_n", Means: "slide of the last panel; 0 if it is dropped in", Unit: "m"},
		},
		Valid: "level panels; masts on the side of the near end wall, because the far side has a wall or the panel before; the spec does not give the thickness of the mast, which counts as 0; " +
			"each base centred under its lift across the span, clear of the walls and of the next base",
		Source: cite.Derivation("places along the axis and across the span, and balance of moments about the end of a base"),
	},
	Check: checkMast,
}

func checkMast(p *engine.Pass) {
	c := p.Ceiling
	half, heel := c.Panel.EndLength.Get()/2, c.Lift.Base.Heel.Get()
	if heel < half {
		p.Report(engine.Finding{
			At: "lift.base.heel", Related: []string{"panels.along"},
			Text:     "the load centre of the forks is {measured} from the heel; half of the panel's length is {limit}. With the panel centred there, the mast would rise through it; the spec states no capacity farther out",
			Measured: quantity.Length(heel).Value(), Bound: p.Stated("panels.along", quantity.Length(half).Value()),
			Offers: []engine.Offer{{Key: "lift.base.heel", Value: p.Above(half)}},
		})
	}
	mass := max(heel, half)
	checkUnder(p, mass)
	checkBeside(p, mass-half)
	for k := range c.Panel.Around.Get() {
		checkAcross(p, k)
	}
}

// slide is how far a panel stands off before it slides on to tenons that project
// so far.
func slide(p *engine.Pass, projection float64) float64 {
	if projection == 0 {
		return 0
	}
	return projection + p.Of("close.slide", engine.StandOffLimit()).SI
}

// checkUnder compares how far the mass centre comes from the heel with the length of
// the base.
func checkUnder(p *engine.Pass, mass float64) {
	c, projection := p.Ceiling, 0.0
	if c.Seam.Count.Get() > 0 {
		projection = c.Seam.Tenon.Length.Get() / 2
	}
	reach, along := mass+slide(p, projection), c.Lift.Base.Along.Get()
	if reach <= along {
		return
	}
	how := ""
	if reach > mass {
		how = p.Textf(" after the panel slides %v onto its neighbour's tenons", quantity.Length(reach-mass))
	}
	p.Report(engine.Finding{
		At: "lift.base.along", Related: []string{"lift.base.heel", "seam.tenon", "panels.along"},
		Text:     "the panel's mass centre is {measured} from the heel of the base" + how + "; the base ends at {limit}, so the lift tips",
		Measured: quantity.Length(reach).Value(), Bound: p.Stated("lift.base.along", quantity.Length(along).Value()),
		Offers: []engine.Offer{{Key: "lift.base.along", Value: p.Above(reach)}},
	})
}

// checkBeside compares what stands out behind the last panel with what is left there.
func checkBeside(p *engine.Pass, behind float64) {
	k := p.Results.Closing()
	ends, _ := k.Ends()
	if err := ends.Growth.Get().Err; err != nil {
		p.NotChecked("rib.species", p.Explain(err))
		return
	}
	off := slide(p, k.Projection.Get())
	left := max(0, ends.Least.Get()-off)
	if behind <= left {
		return
	}
	how := ""
	if off > 0 {
		how = p.Textf(" while that panel stands off by %v", quantity.Length(off))
	}
	p.Report(engine.Finding{
		At: "lift.base.heel", Related: []string{"close.first_gap", "room.length", "close.last"},
		Text:     p.Textf("the lift's heel reaches at least {measured} past the end of the panel that goes up last; the last gap may leave only %v%s. Raise that panel with other lifts, or turn these", quantity.Length(left), how),
		Measured: quantity.Length(behind).Value(), Bound: p.Stated("room.length", quantity.Length(left).Value()),
	})
}

// checkAcross looks for room for the bases under one piece of the arch: each to the
// wall, and to the next.
func checkAcross(p *engine.Pass, piece int) {
	c, half := p.Ceiling, p.Ceiling.Lift.Base.Across.Get()/2
	between, key, where := p.Beside()
	span, at := c.Vault.Span.Get(), places(c, piece)
	for i, y := range at {
		wall := math.Min(y, span-y) + (between-span)/2
		if half > wall {
			p.Report(engine.Finding{
				At: "lift.base.across", Related: []string{c.Lift.Stations.Place(i), key},
				Text:     p.Textf("the base of lift %d reaches {measured} to each side; the wall is %v away%s", i+1, quantity.Length(wall), where),
				Measured: quantity.Length(half).Value(), Bound: p.Stated(key, quantity.Length(wall).Value()),
				Offers: []engine.Offer{{Key: "lift.base.across", Value: p.Below(2 * wall)}},
			})
		}
		if i > 0 && 2*half > y-at[i-1] {
			p.Report(engine.Finding{
				At: "lift.base.across", Related: []string{c.Lift.Stations.Place(i - 1), c.Lift.Stations.Place(i)},
				Text:     p.Textf("the bases of lifts %d and %d are {measured} wide; the lifts stand %v apart", i, i+1, quantity.Length(y-at[i-1])),
				Measured: quantity.Length(2 * half).Value(), Bound: p.Stated("lift.stations", quantity.Length(y-at[i-1]).Value()),
				Offers: []engine.Offer{{Key: "lift.base.across", Value: p.Below(y - at[i-1])}},
			})
		}
	}
}

// places are those of the lifts under one piece of the arch, across the span.
func places(c *layout.Ceiling, piece int) (out []float64) {
	for _, s := range c.Lift.Stations.Get() {
		out = append(out, c.Vault.Intrados.Get().At((float64(piece)+s)*c.Panel.Arc.Get()).Y)
	}
	return out
}
