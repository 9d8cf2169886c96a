package engine

import (
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/raising"
	"dryfit/spec/quantity"
)

// Of is the figure in force for a limit of another rule, by which this one judges
// too: the standards' own, or else the built-in one.
func (p *Pass) Of(rule string, l Limit) Bound {
	name := rule + "." + l.Key
	if set, ok := p.Standards.Limit(name); ok {
		return Bound{Value: set.Value, Name: name, Source: set.Source, Firm: true}
	}
	return Bound{Value: l.Value, Name: name, Source: l.Source.String(), Firm: backs(l.Source.Standing)}
}

// PersonLimit is the mass that one person lifts, of transit.weight.
func PersonLimit() Limit {
	return Limit{
		Key: "person", Title: "mass that one person lifts", Value: quantity.Mass(raising.PersonMass).Value(),
		Sense: AtMost, Lowest: 1, Most: 100, Source: cite.ISO11228.At("reference mass"),
	}
}

// StandOffLimit is what is left over when the last panel stands off, of close.slide.
func StandOffLimit() Limit {
	return Limit{
		Key: "clearance", Title: "clearance left when the last panel stands off", Value: quantity.Length(raising.StandOff).Value(),
		Sense: AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}
}

// StressLimit is what the modulus of rupture is divided by, of rib.stress.
func StressLimit() Limit {
	return Limit{
		Key: "factor", Title: "ratio of modulus of rupture to stress", Value: quantity.Value{SI: raising.StressFactor, Unit: quantity.One},
		Sense: AtLeast, Lowest: 1, Most: 100, Source: cite.CommonPractice(),
	}
}
