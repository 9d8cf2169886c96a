package install

import (
	"math"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/curve"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/raising"
	"dryfit/spec/quantity"
)

// forks are the heights above the springing of the intrados over the lifts, and
// its slope there, each the greatest under any piece of the arch. Lift stations
// are shares of the panel's own arc.
func forks(c *layout.Ceiling) (heights, slopes []float64) {
	intrados := c.Vault.Intrados.Get()
	for _, s := range c.Lift.Stations.Get() {
		height, slope := 0.0, 0.0
		for k := range c.Panel.Around.Get() {
			at := (float64(k) + s) * c.Panel.Arc.Get()
			height = max(height, intrados.At(at).Z)
			before, after := intrados.Tangents(at)
			for _, t := range []curve.Point{before, after} {
				slope = max(slope, math.Abs(math.Atan2(t.Z, t.Y)))
			}
		}
		heights, slopes = append(heights, height), append(slopes, slope)
	}
	return heights, slopes
}

var liftReach = engine.Rule{
	ID:       "install.lift-reach",
	Title:    "the lifts can raise the panel to its place, plus the over-travel",
	Why:      "A lift at the end of its mast can leave the panel below its straps.",
	Severity: engine.Hold,
	Needs:    []string{"lift.reach", "lift.stations"},
	Limits: []engine.Limit{{
		Key: "over", Title: "over-travel, in which the straps are hooked", Value: quantity.Length(0.025).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "h + z + over ≤ reach",
		Symbols: []engine.Symbol{
			{Name: "h", Means: "floor to springing", Unit: "m"},
			{Name: "z", Means: "height of the intrados over the lift", Unit: "m"},
			{Name: "over", Means: "over-travel", Unit: "m"},
			{Name: "reach", Means: "greatest height of the forks", Unit: "m"},
		},
		Valid: "no packing between the forks and the panel", Source: cite.Derivation("heights above the floor"),
	},
	Check: checkReach,
}

func checkReach(p *engine.Pass) {
	c, over := p.Ceiling, p.Limit("over").SI
	reach := p.Stated("lift.reach", quantity.Length(c.Lift.Reach.Get()).Value())
	heights, _ := forks(c)
	for i, z := range heights {
		at := c.Room.Height.Get() + z
		if at+over <= reach.SI {
			continue
		}
		severity := engine.Query
		if quantity.Over(at, reach.SI) {
			severity = engine.Hold
		}
		p.Report(engine.Finding{
			At: "lift.reach", Related: []string{"room.height", "lift.stations"}, Severity: severity,
			Text:     p.Textf("lift %d must raise its forks to %v plus %v of over-travel, {measured}; it reaches {limit}", i+1, quantity.Length(at), quantity.Length(over)),
			Measured: quantity.Length(at + over).Value(), Bound: reach,
		})
	}
}

var liftStowed = engine.Rule{
	ID:       "install.lift-stowed",
	Title:    "the stowed forks go under a panel that stands on its feet",
	Why:      "Forks that stow higher than the panel's underside do not go under it. The panel then stands on blocks, or people lift it onto the forks.",
	Severity: engine.Query,
	Needs:    []string{"lift.stowed", "lift.stations"},
	Basis:    engine.Basis{Valid: "panels that stand on the floor on their feet", Source: cite.Derivation("height of the stowed forks against that of the intrados over the lift")},
	Check:    checkStowed,
}

func checkStowed(p *engine.Pass) {
	c := p.Ceiling
	if c.Panel.Around.Get() > 1 {
		p.NotChecked("panels.around", "how the pieces of a split arch lie on the forks is not computed")
		return
	}
	heights, _ := forks(c)
	least := slices.Min(heights)
	stowed := c.Lift.Stowed.Get()
	if !quantity.Over(stowed, least) {
		return
	}
	p.Report(engine.Finding{
		At: "lift.stowed", Related: []string{"lift.stations", "vault.rise"},
		Text: p.Textf("the stowed forks are {measured} high; a panel on its feet has %v of clear height over lift %d. Stand it on blocks of %v, or lift it onto the forks by hand",
			quantity.Length(least), slices.Index(heights, least)+1, quantity.Length(stowed-least)),
		Measured: quantity.Length(stowed).Value(), Bound: p.Stated("lift.stations", quantity.Length(least).Value()),
		Offers: []engine.Offer{{Key: "lift.stowed", Value: p.Below(least)}},
	})
}

var saddle = engine.Rule{
	ID:       "install.saddle",
	Title:    "the forks carry saddles where the underside slopes",
	Why:      "A sloping underside slides on flat forks.",
	Severity: engine.Query,
	Needs:    []string{"lift.stations"},
	Limits: []engine.Limit{{
		Key: "slope", Title: "slope on which a panel does not slide off flat forks", Value: quantity.Angle(10 * math.Pi / 180).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: math.Pi / 2, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "slope of the intrados over the lift", Source: cite.CommonPractice()},
	Check: checkSaddle,
}

func checkSaddle(p *engine.Pass) {
	l, limit := p.Ceiling.Lift, p.Limit("slope")
	if l.Saddle.Given() && l.Saddle.Get() {
		return
	}
	_, slopes := forks(p.Ceiling)
	for i, s := range slopes {
		if s > limit.SI {
			p.Report(engine.Finding{
				At: p.Ceiling.Lift.Stations.Place(i), Related: []string{"lift.saddle"},
				Text:     p.Textf("the underside over lift %d slopes {measured}; flat forks hold up to {limit}", i+1),
				Measured: quantity.Angle(s).Value(), Bound: limit,
				Offers: []engine.Offer{{Key: "lift.saddle", Value: true}},
			})
		}
	}
}

var pass = engine.Rule{
	ID:       "install.pass",
	Title:    "the panel passes the fixed ledgers on its way up",
	Why:      "A ledger fixed to the wall before the panel goes up blocks its feet.",
	Severity: engine.Hold,
	Needs:    []string{"ledger"},
	Basis: engine.Basis{
		Formula: "b ≤ W − τ − 2·p",
		Symbols: []engine.Symbol{
			{Name: "b", Means: "width of the vault over its feet", Unit: "m"},
			{Name: "W", Means: "width of the room", Unit: "m"},
			{Name: "τ", Means: "its tolerance", Unit: "m"},
			{Name: "p", Means: "projection of the ledger", Unit: "m"},
		},
		Valid: "panels raised level; arches of one piece; with a survey, W − τ is the least measured width at a panel less twice the accuracy", Source: cite.Derivation("the widest part of the panel against the narrowest place of its path"),
	},
	Check: checkPass,
}

func checkPass(p *engine.Pass) {
	c := p.Ceiling
	l := c.Ledger
	if l.Fixed.Get() != "before" || !l.Projection.Given() {
		return
	}
	between, key, where := p.Beside()
	place := between - 2*l.Projection.Get()
	if width := c.Vault.Width.Get(); c.Panel.Around.Get() == 1 && width > place {
		p.Report(engine.Finding{
			At: "ledger.fixed", Related: []string{"ledger.projection", key},
			Text:     "the panel is {measured} wide over its feet; the fixed ledgers leave {limit} between them" + where + ". Fix the ledgers after the panel is up",
			Measured: quantity.Length(width).Value(), Bound: p.Stated("ledger.projection", quantity.Length(place).Value()),
			Offers: []engine.Offer{{Key: "ledger.fixed", Value: "after"}},
		})
	}
}

var tilt = engine.Rule{
	ID:       "install.tilt",
	Title:    "the panel does not jam if it is raised slightly out of level",
	Why:      "A piece with vertical ends is wider when it is tilted than when it is level, and two lifts never rise exactly alike.",
	Severity: engine.Query,
	Limits: []engine.Limit{{
		Key: "level", Title: "height of one end above the other while the panel is raised", Value: quantity.Length(raising.Level).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "√(c² + e²) ≤ W − τ",
		Symbols: []engine.Symbol{
			{Name: "c", Means: "width over the feet", Unit: "m"},
			{Name: "e", Means: "height of the feet's vertical ends", Unit: "m"},
			{Name: "W", Means: "width of the room", Unit: "m"},
			{Name: "τ", Means: "its tolerance", Unit: "m"},
		},
		Valid: "plumb feet, whose ends are vertical; panels with other feet do not get wider; with a survey, W − τ is the least measured width at a panel less twice the accuracy", Source: cite.Derivation("extent of a tilted piece"),
	},
	Check: checkTilt,
}

func checkTilt(p *engine.Pass) {
	c, limit := p.Ceiling, p.Limit("level")
	if c.Vault.Cut.Get() != "plumb" || c.Panel.Around.Get() > 1 {
		return
	}
	end := c.Vault.Thickness.Get() / math.Cos(c.Vault.HalfAngle.Get())
	between, key, where := p.Beside()
	if between < c.Vault.Width.Get() {
		return // vault.fits says so, or survey.fits
	}
	if t := passage.Between(c.Vault.Width.Get(), end, between); t.Level < limit.SI {
		p.Report(engine.Finding{
			At: key, Related: []string{"vault.span"},
			Text: p.Textf("a panel with ends %v high jams between walls %v apart%s, if one end is {measured} above the other; crews keep lifts level to within {limit}",
				quantity.Length(end), quantity.Length(between), where),
			Measured: quantity.Length(t.Level).Value(), Bound: limit,
		})
	}
}

var order = engine.Rule{
	ID:       "install.order",
	Title:    "the ceiling has only one panel, which needs no order of raising",
	Why:      "Tenons point one way, so the panels go up in one order and the last panel needs room to slide.",
	Severity: engine.Note,
	Basis:    engine.Basis{Valid: "the first panel at the far end wall", Source: cite.CommonPractice()},
	Check:    checkOrder,
}

func checkOrder(p *engine.Pass) {
	n, pieces := p.Ceiling.Panel.Count.Get(), p.Ceiling.Panel.Around.Get()
	if n < 2 {
		return
	}
	how, between := "slides along onto its neighbour's tenons", ""
	if p.Ceiling.Close.Last.Get() == "drop" {
		how = "is dropped in, its tenons set from above or withdrawn"
	}
	if pieces > 1 {
		between = p.Textf(", the %d of an arch before the next arch", pieces)
	}
	p.Report(engine.Finding{At: "panels", Text: p.Textf("panel 1 is raised first, at the far end wall, with its tenons toward the near end wall. The others follow in order%s. Panel %d is last and %s. Nobody stands under a panel that is up and not strapped", between, n, how)})
}
