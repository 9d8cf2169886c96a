package engine

import (
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

// OverlapLimit is how far the moulding is to lie over the panels.
func OverlapLimit() Limit {
	return Limit{
		Key: "overlap", Title: "overlap of the moulding over the panels", Value: quantity.Length(0.006).Value(),
		Sense: AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}
}

// Hides compares a gap with what the moulding hides, and with that less its overlap;
// ok is whether it hides too little. The gap is told with its verb: "the first gap is".
func (p *Pass) Hides(at, gap string, width float64) (f Finding, ok bool) {
	lap, hides := p.Limit("overlap"), p.Stated("edge.cover", quantity.Length(p.Ceiling.Edge.Cover.Get()).Value())
	f = Finding{
		At: "edge.cover", Related: []string{at}, Measured: quantity.Length(width).Value(), Bound: hides,
		Offers: []Offer{{Key: "edge.cover", Value: p.Above(width + lap.SI)}},
	}
	switch {
	case width > hides.SI:
		f.Text = gap + " {measured}; the moulding covers {limit}"
	case width+lap.SI > hides.SI:
		f.Text = p.Textf("%s %v, or {measured} with the moulding's overlap of %v; the moulding covers %v", gap, quantity.Length(width), lap.Value, hides.Value)
		f.Measured, f.Severity = quantity.Length(width+lap.SI).Value(), Query
		f.Bound.Name, f.Bound.Source, f.Bound.Firm = lap.Name, lap.Source, lap.Firm
	default:
		return f, false
	}
	return f, true
}

// Lacking ends a sentence on a movement into a gap, where the gap is too small for it
// and for the clearance that the finding's limit states: what the gap is, and what it
// lacks. All are in m; the gap is told with its place, "at its ends".
func (p *Pass) Lacking(gap, moved, clearance float64, place string) string {
	lacks := quantity.Length(moved + clearance - gap)
	if gap < 0 {
		return p.Textf("; there is no gap %s: %v is missing for this movement and a clearance of {limit}", place, lacks)
	}
	return p.Textf("; the gap %s is %v, %v too little for this movement and a clearance of {limit}", place, quantity.Length(gap), lacks)
}

// Shorten are ways to win a length that the last panel lacks.
func (p *Pass) Shorten(by float64) []Offer {
	var offers []Offer
	if left := p.Ceiling.Close.FirstGap.Get() - by; left > 0 {
		offers = append(offers, Offer{Key: "close.first_gap", Value: p.Below(left)})
	}
	if p.Results.Closing().Projection.Get() > 0 {
		offers = append(offers, Offer{Key: "close.last", Value: "drop"})
	}
	return append(offers, Offer{Key: "vault.length", Value: p.Below(p.Ceiling.Vault.Length.Get() - by)})
}
