package engine

import (
	"errors"

	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/hanging"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// Hung is a result of the frame, for a rule that reads it. Where there is none
// the rule is not checked: for a key that is missing, or because the rib does not
// hang, which one rule of its own says.
func Hung[T any](p *Pass, s hanging.Solved[T]) (T, bool) {
	v := s.Get()
	return v.Is, p.hangs(v.Err)
}

// TippingLimit is the least tipping margin, on straps as on lifts.
func TippingLimit() Limit {
	return Limit{
		Key: "margin", Title: "tipping margin", Value: quantity.Share(0.1).Value(),
		Sense: AtLeast, Lowest: 0, Most: 0.5, Source: cite.CommonPractice(),
	}
}

// TippingBasis is what a tipping margin rests on, for supports of a name.
func TippingBasis(support, valid string) Basis {
	return Basis{
		Formula: "min(c − l, r − c)/(r − l)",
		Symbols: []Symbol{
			{Name: "c", Means: "place of the mass centre across the span", Unit: "m"},
			{Name: "l", Means: "place of the first " + support + " that carries 0.5% of the weight or more", Unit: "m"},
			{Name: "r", Means: "place of the last such " + support, Unit: "m"},
		},
		Valid:  valid,
		Source: cite.Derivation("balance of moments about a " + support),
	}
}

// AtMost is what a figure of the panel's own weight, as worked out for its nominal
// mass, grows to with the spread of densities, and words that say both.
func (p *Pass) AtMost(nominal quantity.Value) (most quantity.Value, words string) {
	most = nominal
	most.SI *= p.Ceiling.Panel.Heavier()
	return most, p.Textf(", with the panel at its greatest weight of %v (%v at its nominal weight)", quantity.Mass(p.Ceiling.Panel.Most.Get()), nominal)
}

// Unweighed says that the rule is not checked for the fittings whose mass the spec
// does not state.
func (p *Pass) Unweighed() {
	for _, n := range p.Ceiling.Unweighed() {
		p.Absent(spec.Key("fitting", n, "mass"))
	}
}

// Envelope is the cases whose worst governs the straps, as Hung gives a result.
func (p *Pass) Envelope() ([]*hanging.Case, bool) {
	cases, err := p.Results.Hanging().Envelope()
	var unknown *hanging.NoSeasonError
	if errors.As(p.Results.Hanging().Seasonal.Get().Err, &unknown) {
		p.NotChecked("rib.species", p.Explain(unknown))
	}
	return cases, p.hangs(err)
}

func (p *Pass) hangs(err error) bool {
	if err == nil {
		return true
	}
	var needs *hanging.NeedsError
	var seam *hanging.SeamError
	switch {
	case errors.As(err, &needs):
		p.Absent(needs.Key)
	case errors.As(err, &seam):
		p.NotChecked(p.Ceiling.Strap.Stations.Place(seam.Strap-1), "the strap lies on a seam, which strap.apart says")
	default:
		p.NotChecked("strap.stations", "the rib does not hang, which strap.holds says")
	}
	return false
}

// Beside is the room across a panel at its tightest, the key that says so, and
// where in the room that is: of a measured one at the panel where it is least.
func (p *Pass) Beside() (width float64, key, where string) {
	width, panel := p.Results.Survey().Beside()
	if panel == "" {
		return width, "room.width", ""
	}
	return width, "survey.station", " at " + panel + ", as measured"
}
