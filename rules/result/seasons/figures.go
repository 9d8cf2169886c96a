package seasons

import (
	"dryfit/rules/figure"
	"dryfit/rules/kernel/timber"
	"dryfit/rules/layout"
	"dryfit/spec/quantity"
)

// linear is the range in which movement is proportional to moisture content, as
// the handbook gives it.
const linearFrom, linearTo = 0.06, 0.14

// Figures are the seasons' lines of the calculation sheet. A figure that there
// is none of has no line.
func (s *Seasons) Figures(c *layout.Ceiling) []figure.Figure {
	var out []figure.Figure
	for _, season := range []Season{s.Dry, s.Wet} {
		out = append(out, season.figures(c)...)
	}
	return out
}

func (s Season) figures(c *layout.Ceiling) []figure.Figure {
	moisture := figure.Term{Symbol: "M_f", Key: "climate." + s.Name + ".moisture", Value: quantity.Share(s.Moisture).Value()}
	shop := figure.Term{Symbol: "M_i", Key: "climate.shop.moisture", Value: quantity.Share(c.Climate.Shop).Value()}
	_, assumed := c.AssumedAt("climate.shop")
	_, also := c.AssumedAt("climate." + s.Name)
	subject := s.Name + " season"
	var out []figure.Figure
	member := func(key, symbol, name string, m layout.Member, d timber.Direction, change Change) {
		if change.Err != nil {
			return
		}
		f := figure.Figure{
			Key: "season." + s.Name + "." + key, Symbol: symbol, Name: name, Subject: subject,
			Value: quantity.Length(change.Value).Value(), Assumed: assumed || also,
		}
		coefficient, shrinkage := m.Species.Across(m.Cut, d)
		width := figure.Term{Symbol: "D", Key: "rib.width", Value: quantity.Length(m.Width).Value()}
		if key == "rail-width" {
			width.Key = "rail.width"
		}
		if min(s.Moisture, c.Climate.Shop) >= linearFrom && max(s.Moisture, c.Climate.Shop) <= linearTo {
			f.Formula = "D * C * (M_f - M_i)"
			f.Terms = []figure.Term{width, {Symbol: "C", Value: quantity.Value{SI: coefficient / 100, Unit: quantity.One}}, moisture, shop}
		} else {
			f.Formula = "D * (M_f - M_i) / (3000/S - 30 + M_i)"
			f.Terms = []figure.Term{width, {Symbol: "S", Value: quantity.Value{SI: 100 * shrinkage, Unit: quantity.One}}, moisture, shop}
		}
		out = append(out, f)
	}
	member("rib-width", "ΔD_r", "growth of a rib's width since the shop", c.Rib, WidthDirection(c), s.RibWidth)
	member("rail-width", "ΔD_l", "growth of a rail's width since the shop", c.Rail, timber.OverWidth, s.RailWidth)
	add := func(key, symbol, name string, v Change, formula, method string, terms ...figure.Term) {
		if v.Err != nil {
			return
		}
		out = append(out, figure.Figure{
			Key: "season." + s.Name + "." + key, Symbol: symbol, Name: name, Subject: subject, Value: quantity.Length(v.Value).Value(),
			Formula: formula, Method: method, Terms: terms, Assumed: assumed || also,
		})
	}
	rib := figure.Term{Symbol: "ΔD_r", Key: "season." + s.Name + ".rib-width", Value: quantity.Length(s.RibWidth.Value).Value()}
	add("along", "ΔL", "growth of the vault along the axis", s.Along, "n * ΔD_r", "",
		figure.Term{Symbol: "n", Value: quantity.Value{SI: Ribs(c), Unit: quantity.One}}, rib)
	add("foot", "Δf", "movement of each foot, + outward", s.Foot, "", "the arc keeps its length, and its angle becomes angle/(1 + e), e the change of the rib's depth by itself")
	if r := c.Grid.Reveal; r != nil {
		add("reveal", "r", "width of the reveal at a seam", s.Reveal, "g - ΔD_r", "",
			figure.Term{Symbol: "g", Key: "grid.reveal.width", Value: quantity.Length(r.Width).Value()}, rib)
	}
	return out
}
