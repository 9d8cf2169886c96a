package timber

import "dryfit/rules/kernel/cite"

// Bends is the least radius by thickness, a ratio, of one piece that is steamed:
// with its outer face held by a strap with stops, and free. Zero: no figure.
type Bends struct {
	Strap, Free float64
	From        cite.Source
}

// BreakingRatio is the radius by thickness, a ratio, at which the stress of a strip
// that is bent dry comes to the modulus of rupture, E·t/(2R) = MOR, by beam theory:
// E/(2·MOR). It is on the safe side: in a test to rupture the wood yields first,
// and is bent further than that when it breaks. 0 where no strengths are held.
// Derived.
func (s Species) BreakingRatio() float64 {
	if s.MOR == 0 {
		return 0
	}
	return s.MOE / (2 * s.MOR)
}
