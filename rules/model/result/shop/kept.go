package shop

import (
	"dryfit/rules/kernel/timber"
	"dryfit/rules/model/layout"
)

// Kept are the shares of its wood's bending strength that a rib keeps, each 1 where
// it takes nothing.
type Kept struct{ Grain, Curvature, Scarf float64 }

// Share is what is left by all of them, from 0 to 1: their product, as structural
// standards multiply their factors (common practice).
func (k Kept) Share() float64 { return k.Grain * k.Curvature * k.Scarf }

// Kept is what the ribs of a ceiling keep: of a sawn rib by the slope of its grain, of a
// laminated one by its curvature, and by the scarfs of strips that are longer than a
// blank. Needs is the absent key without which it is not known, "" if there is none. An
// error is a *timber.RangeError.
func (s *Shop) Kept(c *layout.Ceiling) (k Kept, needs string, err error) {
	k = Kept{1, 1, 1}
	switch c.Rib.Construction.Get() {
	case "sawn":
		if !c.Rib.Segments.Given() {
			return k, "rib.segments", nil
		}
		k.Grain = c.GrainStrength()
	case "laminated":
		if k.Curvature, err = c.CurvatureFactor(); err == nil {
			k.Scarf, err = s.scarfFactor(c)
		}
	}
	return k, "", err
}

// scarfFactor is what the scarfs of strips leave; 1 of strips in one length.
func (s *Shop) scarfFactor(c *layout.Ceiling) (float64, error) {
	for _, strip := range s.Strips.Get() {
		if strip.Boards != 1 {
			return timber.ScarfFactor(c.Bench().Scarf.Slope)
		}
	}
	return 1, nil
}
