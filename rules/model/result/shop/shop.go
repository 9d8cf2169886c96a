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
	Count      record.Value[Count]
	Ribs       record.Value[[]Rib]    // edge ribs of the pieces of an arch, from the left
	Strips     record.Value[[]Strips] // of ribs that are glued of strips
	Forms      record.Value[[]Form]   // of strips that are bent
	Sawn       record.Value[[]Sawn]
	Skins      record.Value[[]Skin] // layer by layer of each piece of an arch
	SkinCount  record.Value[SkinCount]
	SkinPieces record.Value[[]SkinPiece]
	Sheets     record.Value[Nest]
	Cuts       record.Value[Cuts]
	RibLumber  record.Value[Lumber]
	RailLumber record.Value[Lumber]
	Marks      record.Value[Marks] // of ribs, rails and pieces of the skin
}

// Of is the package of a ceiling.
func Of(c *layout.Ceiling) *Shop {
	s := &Shop{}
	s.Ribs = layout.Derive(c, func() []Rib { return ribs(c) })
	s.Strips = layout.Derive(c, func() []Strips { return strips(c) })
	s.Forms = layout.Derive(c, func() []Form { return forms(c, s.Strips.Get()) })
	s.Sawn = layout.Derive(c, func() []Sawn { return sawn(c) })
	s.Skins = layout.Derive(c, func() []Skin { return skins(c) })
	around := layout.Derive(c, func() [][][]float64 { return cutAround(c) })
	s.SkinCount = layout.Derive(c, func() SkinCount { return skinCount(c, around.Get()) })
	s.SkinPieces = layout.Derive(c, func() []SkinPiece { return skinPieces(c, around.Get()) })
	s.Sheets = layout.Derive(c, func() Nest { return s.sheets(c) })
	s.Cuts = layout.Derive(c, func() Cuts { return cuts(c, s.Strips.Get(), s.Sawn.Get()) })
	s.RibLumber = layout.Derive(c, func() Lumber {
		return lumber(c.Bench(), c.Rib.Species.Get(), s.Cuts.Get().Strips, s.Cuts.Get().Planks)
	})
	s.RailLumber = layout.Derive(c, func() Lumber { return lumber(c.Bench(), c.Rail.Species.Get(), s.Cuts.Get().Rails) })
	s.Marks = layout.Derive(c, func() Marks { return s.marks(c) })
	s.Count = layout.Derive(c, func() Count { return count(c, s.SkinCount.Get().Pieces) })
	return s
}
