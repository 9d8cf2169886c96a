// Package shop is what a shop cuts by: the patterns of all pieces at full size, how
// they are bent, sawn and laid out on their stock, and how many there are. All is
// computed once from the layout. Lengths are in m, angles in rad.
package shop

import (
	"dryfit/rules/model/layout"
	"dryfit/spec/record"
)

// Shop is the package of one ceiling. Each part is computed on first use.
type Shop struct {
	Count record.Value[Count]
	Ribs  record.Value[[]Rib] // of the pieces of an arch, from the left
}

// Of is the package of a ceiling.
func Of(c *layout.Ceiling) *Shop {
	s := &Shop{}
	s.Ribs = layout.Derive(c, func() []Rib { return ribs(c) })
	s.Count = layout.Derive(c, func() Count { return count(c, 0) })
	return s
}
