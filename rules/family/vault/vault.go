// Package vault holds the rules on the vault in its room.
package vault

import (
	"embed"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "vault", Title: "the vault in its room", Cases: cases,
		Rules: []engine.Rule{fits, riseRatio, headroom, height},
	}
}

var fits = engine.Rule{
	ID:       "vault.fits",
	Title:    "the vault fits the room at its narrowest, with clearance above the crown",
	Why:      "A ceiling wider than its room has to be cut on the lift.",
	Severity: engine.Hold,
	Figures:  []string{"vault.width", "vault.built-length"},
	Limits: []engine.Limit{{
		Key: "above", Title: "clear height above the crown",
		Value: quantity.Length(0.025).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 10, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "b ≤ W − τ, l ≤ L − τ",
		Symbols: []engine.Symbol{
			{Name: "b", Means: "width of the vault over its feet as they are cut", Unit: "m"},
			{Name: "W", Means: "width of the room", Unit: "m"},
			{Name: "l", Means: "length of all panels and seam gaps", Unit: "m"},
			{Name: "L", Means: "length of the room", Unit: "m"},
			{Name: "τ", Means: "tolerance of the room", Unit: "m"},
		},
		Valid:  "panels at their nominal size; the close rules take account of their tolerances and the seasons",
		Source: cite.Derivation("geometry"),
	},
	Check: checkFits,
}

func checkFits(p *engine.Pass) {
	c := p.Ceiling
	room, tolerance := c.Room, c.Room.Tolerance.Get()
	for _, d := range []struct {
		key, name  string
		vault, has float64
	}{
		{"room.width", "wide over its feet", c.Vault.Width.Get(), room.Width.Get() - tolerance},
		{"room.length", "long with its seam gaps", c.BuiltLength(), room.Length.Get() - tolerance},
	} {
		if d.vault <= d.has {
			continue
		}
		p.Report(engine.Finding{
			At: d.key, Related: []string{"room.tolerance", "vault.span", "vault.length"},
			Text:     "the vault is {measured} " + d.name + "; the room at its narrowest is {limit}",
			Measured: quantity.Length(d.vault).Value(), Bound: p.Stated(d.key, quantity.Length(d.has).Value()),
		})
	}
	if !room.Above.Given() {
		p.Absent("room.above")
		return
	}
	if limit := p.Limit("above"); room.Above.Get() < limit.SI {
		p.Report(engine.Finding{
			At: "room.above", Text: "the clear height above the crown is {measured}; the minimum is {limit}",
			Measured: quantity.Length(room.Above.Get()).Value(), Bound: limit,
		})
	}
}

var riseRatio = engine.Rule{
	ID:       "vault.rise-ratio",
	Title:    "the vault rises enough to read as a vault",
	Why:      "A very flat arch looks like a sag, and any drop of its crown pushes its feet apart.",
	Severity: engine.Query,
	Figures:  []string{"vault.rise-ratio"},
	Limits: []engine.Limit{{
		Key: "least", Title: "ratio of rise to span", Value: quantity.Value{SI: 0.08, Unit: quantity.One},
		Sense: engine.AtLeast, Lowest: 0, Most: 10, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "h / s ≥ least",
		Symbols: []engine.Symbol{{Name: "h", Means: "rise", Unit: "m"}, {Name: "s", Means: "span", Unit: "m"}, {Name: "least", Means: "least ratio", Unit: "1"}},
		Valid:   "vaults that are not flat", Source: cite.CommonPractice(),
	},
	Check: checkRiseRatio,
}

func checkRiseRatio(p *engine.Pass) {
	v, limit := p.Ceiling.Vault, p.Limit("least")
	if r := v.Rise.Get() / v.Span.Get(); p.Ceiling.Vault.Profile.Get() != spec.Flat && r < limit.SI {
		p.Report(engine.Finding{
			At: "vault.rise", Text: p.Textf("the rise of %v is {measured} of the span; the minimum is {limit}", quantity.Length(v.Rise.Get())),
			Measured: quantity.Value{SI: r, Unit: quantity.One}, Bound: limit,
			Offers: []engine.Offer{{Key: "vault.rise", Value: p.Above(limit.SI * v.Span.Get())}},
		})
	}
}
