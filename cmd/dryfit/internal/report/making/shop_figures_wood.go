package making

import (
	"fmt"

	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/shop"
)

func (f figures) strips(c *layout.Ceiling, s *shop.Shop) {
	list := s.Strips.Get()
	if len(list) == 0 {
		return
	}
	strips, scarfs, each := 0, 0, 0
	for _, one := range list {
		f.at(one.Length, fmt.Sprintf("strip.%d.length", one.Piece))
		f[fmt.Sprintf("strip.%d.scarfs", one.Piece)] = max(one.Boards-1, 0)
		strips, scarfs, each = strips+one.Count, scarfs+one.Count*max(one.Boards-1, 0), max(each, one.PerRib)
	}
	f.at(list[0].Scarf, "scarf.length")
	f["strip.per-rib"], f["strip.count"], f["scarf.count"] = each, strips, scarfs
	if cut := s.Cuts.Get().Strips; len(cut) > 0 {
		f.cut("strip", cut[0])
		f.at(cut[0].Thickness, "cut.strip.thickness")
		f.at(c.Rib.Width.Get()/2+c.Bench().Joint, "cut.strip.width")
	}
}

// cut is a cut size's plank, by its name.
func (f figures) cut(of string, cut shop.CutSize) {
	if cut.Stock > 0 {
		f["cut."+of+".stock"] = plankName(cut.Stock)
	}
}

// plankName is a nominal thickness, of quarters of an inch.
func plankName(quarters int) string {
	if quarters == 0 {
		return ""
	}
	return fmt.Sprintf("%d/4", quarters)
}

func (f figures) form(form shop.Form) {
	key := fmt.Sprintf("form.%d.", form.Piece)
	if form.Radius > 0 {
		f.at(form.Radius, key+"radius")
	}
	f.at(form.Chord, key+"chord")
	f.at(form.Rise, key+"rise")
	f.at(form.Length, key+"length")
	f[key+"clamps"] = form.Clamps
	f.at(form.Force, key+"clamp.force")
}

func (f figures) sawn(s shop.Sawn) {
	key := fmt.Sprintf("sawn.%d.", s.Piece)
	f.at(s.Angle, key+"segment.angle")
	f.at(s.Length, key+"segment.length")
	f.at(s.Width, key+"segment.width")
	for _, l := range s.Layers {
		layer := fmt.Sprintf("%slayer.%d.", key, l.Number)
		f[layer+"pieces"] = l.Pieces
		for _, j := range l.Joints {
			f.at(j.Intrados, layer+fmt.Sprintf("joint.%d", j.Number))
		}
		f.at(l.Length, layer+"blank.length")
		f.at(l.Width, layer+"blank.width")
	}
}

func (f figures) stock(s *shop.Shop) {
	for _, m := range s.Marks.Get().List {
		if m.Kind == layout.Rail || m.Kind == layout.HalfRail {
			f.at(m.Length, "rail.length")
			break
		}
	}
	if rails := s.Cuts.Get().Rails; len(rails) > 0 {
		f.at(rails[0].Length, "cut.rail.length")
		f.at(rails[0].Width, "cut.rail.width")
		f.cut("rail", rails[0])
	}
	f.at(s.RibLumber.Get().BoardFeet, "lumber.ribs")
	f.at(s.RailLumber.Get().BoardFeet, "lumber.rails")
	f["sheets.pieces"] = s.SkinCount.Get().Pieces
	if sheets := s.Sheets.Get(); sheets.Err == nil {
		f["sheets.least"], f["sheets.count"] = sheets.Least, sheets.Count
	}
}
