package raising

import (
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/result/shop"
	"dryfit/spec/quantity"
)

// StressFactor is what the modulus of rupture is divided by, the built-in limit of
// rib.stress, which a raised rib is judged by too.
const StressFactor = 6

// stressLimit is the name of that limit, as standards write it.
const stressLimit = "rib.stress.factor"

// Limits are what a state is judged by: forces on one rib in N, stress in Pa. One
// that is 0 is not known, and not judged.
type Limits struct {
	Strap, Lift, Stress float64
	Heavier             float64 // how many times its nominal weight the panel may have
	Jointed             bool    // whether the rib's stress is that of the section its joints leave
}

// LimitsOf are those of a ceiling whose rib's stress may be its modulus of rupture,
// as the rib keeps it, by the factor in force; of a lift's capacity one rib has
// half. Why says why the stress has no limit, if so. Source: the spec's
// strap.allowable and lift.capacity, and the limit rib.stress.factor.
func LimitsOf(c *layout.Ceiling, made *shop.Shop) (l Limits, why string) {
	l = Limits{Strap: c.Strap.Allowable.Load.Get(), Heavier: c.Panel.Heavier(), Jointed: hanging.Jointed(c)}
	if c.Lift.Capacity.Given() {
		l.Lift = c.Lift.Capacity.Get() * quantity.Gravity / 2
	}
	kept, needs, err := made.Kept(c)
	switch {
	case needs != "":
		return l, "needs " + needs
	case err != nil:
		return l, err.Error()
	case l.Jointed && !hanging.CarriesAtJoint(c):
		return l, "nothing of the rib is left to carry at a joint"
	}
	l.Stress = kept.Share() * c.Rib.Species.Get().MOR / c.Limit(stressLimit, StressFactor)
	return l, ""
}
