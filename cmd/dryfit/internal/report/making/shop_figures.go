package making

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/shop"
)

// figures are those of a package by their keys: numbers, and the names of planks.
type figures map[string]any

// shopFigures are all figures of a package, in SI. What there is none of has no key.
func shopFigures(c *layout.Ceiling, s *shop.Shop) figures {
	f := figures{}
	f.counts(s)
	for _, r := range s.Ribs.Get() {
		f.rib(r)
	}
	f.skins(s)
	f.strips(c, s)
	for _, form := range s.Forms.Get() {
		f.form(form)
	}
	for _, sawn := range s.Sawn.Get() {
		f.sawn(sawn)
	}
	f.stock(s)
	return f
}

// at sets a figure, if there is one.
func (f figures) at(x float64, key string) {
	const nothing = 1e-9 // round-off, which differs between processors
	if math.Abs(x) < nothing {
		x = 0
	}
	if !math.IsNaN(x) && !math.IsInf(x, 0) {
		f[key] = show.JSONNumber(x)
	}
}

func (f figures) counts(s *shop.Shop) {
	n := s.Count.Get()
	for key, count := range map[string]int{
		"panels": n.Panels, "rib.half": n.HalfRibs, "rib.full": n.Ribs, "rail": n.Rails, "rail.half": n.HalfRails,
		"tenon": n.Tenons, "mortise": n.Mortises, "strap": n.Straps, "hole": n.Holes, "block": n.Blocks, "piece": n.Pieces,
	} {
		f["count."+key] = count
	}
}

func (f figures) rib(r shop.Rib) {
	key := fmt.Sprintf("pattern.rib.%d.", r.Piece)
	f.at(r.Intrados, key+"length.intrados")
	f.at(r.Back, key+"length.back")
	f.at(r.Chord, key+"chord")
	f.at(r.Rise, key+"rise")
	f.at(r.Left.Length, key+"end.left")
	f.at(r.Right.Length, key+"end.right")
	f.at(r.Left.Bevel, key+"bevel.left")
	f.at(r.Right.Bevel, key+"bevel.right")
	f.at(r.Box.Length, key+"box.length")
	f.at(r.Box.Width, key+"box.width")
	for kind, stations := range map[string][]shop.Station{"rail": r.Rails, "strap": r.Straps, "tenon": r.Tenons} {
		for _, p := range stations {
			f.at(p.Intrados, key+fmt.Sprintf("%s.%d.intrados", kind, p.Number))
			f.at(p.Back, key+fmt.Sprintf("%s.%d.back", kind, p.Number))
		}
	}
	for _, w := range r.Stick {
		f.at(w.From, fmt.Sprintf("stick.%d.rail.%d.from", r.Piece, w.Rail))
		f.at(w.To, fmt.Sprintf("stick.%d.rail.%d.to", r.Piece, w.Rail))
	}
}

func (f figures) skins(s *shop.Shop) {
	for _, skin := range s.Skins.Get() {
		key := fmt.Sprintf("pattern.skin.%d.%d.", skin.Piece, skin.Layer)
		f.at(skin.Length, key+"length")
		f.at(skin.Width, "pattern.skin.width")
		for _, p := range skin.Rails {
			f.at(p.Back, key+fmt.Sprintf("rail.%d", p.Number))
		}
		if skin.Layer > 1 {
			continue
		}
		for _, o := range skin.Fittings {
			f.at(o.Around, fmt.Sprintf("pattern.skin.fitting.%d.around", o.Number))
			f.at(o.Along, fmt.Sprintf("pattern.skin.fitting.%d.along", o.Number))
		}
	}
}
