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
		l := lines{c: c, season: season}
		l.members()
		l.curve()
		l.seams()
		out = append(out, l.out...)
	}
	return out
}

// lines are those of one season.
type lines struct {
	c      *layout.Ceiling
	season Season
	out    []figure.Figure
}

func (l *lines) key(name string) string { return "season." + l.season.Name + "." + name }

// add puts a figure on the sheet, unless there is none.
func (l *lines) add(f figure.Figure, change Change, value quantity.Value) {
	if change.Err != nil {
		return
	}
	_, shop := l.c.AssumedAt("climate.shop")
	_, season := l.c.AssumedAt("climate." + l.season.Name)
	f.Key, f.Subject, f.Value, f.Assumed = l.key(f.Key), l.season.Name+" season", value, shop || season
	l.out = append(l.out, f)
}

func (l *lines) members() {
	c, s := l.c, l.season
	for _, m := range []struct {
		key, symbol, name, width string
		member                   layout.Member
		direction                timber.Direction
		change                   Change
	}{
		{"rib-width", "ΔD_r", "growth of a rib's width since the shop", "rib.width", c.Rib, WidthDirection(c), s.RibWidth},
		{"rail-width", "ΔD_l", "growth of a rail's width since the shop", "rail.width", c.Rail, timber.OverWidth, s.RailWidth},
	} {
		f := l.movement("D", m.member, m.direction)
		f.Key, f.Symbol, f.Name = m.key, m.symbol, m.name
		f.Terms = append(f.Terms, figure.Term{Symbol: "D", Key: m.width, Value: quantity.Length(m.member.Width).Value()})
		l.add(f, m.change, quantity.Length(m.change.Value).Value())
	}
}

// movement is the formula of the growth of a size, by whichever of the
// handbook's equations holds, with all its terms but the size.
func (l *lines) movement(size string, m layout.Member, d timber.Direction) figure.Figure {
	shop, then := l.c.Climate.Shop, l.season.Moisture
	terms := []figure.Term{
		{Symbol: "M_f", Key: "climate." + l.season.Name + ".moisture", Value: quantity.Share(then).Value()},
		{Symbol: "M_i", Key: "climate.shop.moisture", Value: quantity.Share(shop).Value()},
	}
	change, shrinkage := m.Species.Across(m.Cut, d)
	if min(shop, then) >= linearFrom && max(shop, then) <= linearTo {
		return figure.Figure{
			Formula: size + " * C * (M_f - M_i)",
			Terms:   append(terms, figure.Term{Symbol: "C", Value: one(change / 100)}),
		}
	}
	return figure.Figure{
		Formula: size + " * (M_f - M_i) / (3000/S - 30 + M_i)",
		Terms:   append(terms, figure.Term{Symbol: "S", Value: one(100 * shrinkage)}),
	}
}

// curve is what the change of the rib's depth does to the arch.
func (l *lines) curve() {
	c, s := l.c, l.season
	depth := l.movement("100", c.Rib, DepthDirection(c))
	depth.Key, depth.Symbol, depth.Name = "rib-depth", "e", "growth of a rib's depth since the shop, by itself"
	l.add(depth, s.RibDepth, quantity.Share(s.RibDepth.Value).Value())

	e := figure.Term{Symbol: "e", Key: l.key("rib-depth"), Value: quantity.Share(s.RibDepth.Value).Value()}
	phi := figure.Term{Symbol: "φ", Key: "vault.half-angle", Value: quantity.Angle(c.Vault.HalfAngle).Value()}
	l.add(figure.Figure{
		Key: "angle", Symbol: "Δφ", Name: "change of the slope at the springing",
		Formula: "φ/(1 + e/100) - φ", Terms: []figure.Term{phi, e},
	}, s.Angle, quantity.Angle(s.Angle.Value).Value())

	foot := figure.Figure{Key: "foot", Symbol: "Δf", Name: "movement of each foot, + outward"}
	switch c.Spec.Vault.Profile {
	case "segmental", "semicircular":
		foot.Formula = "R * ((1 + e/100)*sin(φ/(1 + e/100)) - sin(φ))"
		foot.Terms = []figure.Term{{Symbol: "R", Key: "vault.radius", Value: quantity.Length(c.Vault.Radius).Value()}, e, phi}
	default:
		foot.Method = "the arc keeps its length, and its slope becomes slope/(1 + e), e the change of the rib's depth by itself"
	}
	l.add(foot, s.Foot, quantity.Length(s.Foot.Value).Value())
}

// seams is what the movement of all ribs does along the axis.
func (l *lines) seams() {
	c, s := l.c, l.season
	rib := figure.Term{Symbol: "ΔD_r", Key: l.key("rib-width"), Value: quantity.Length(s.RibWidth.Value).Value()}
	l.add(figure.Figure{
		Key: "along", Symbol: "ΔL", Name: "growth of the vault along the axis",
		Formula: "n * ΔD_r", Terms: []figure.Term{{Symbol: "n", Value: one(Ribs(c))}, rib},
	}, s.Along, quantity.Length(s.Along.Value).Value())
	if width, ok := SeamReveal(c); ok {
		l.add(figure.Figure{
			Key: "reveal", Symbol: "r", Name: "width of the reveal at a seam", Formula: "g - ΔD_r",
			Terms: []figure.Term{{Symbol: "g", Key: "grid.reveal.width", Value: quantity.Length(width).Value()}, rib},
		}, s.Reveal, quantity.Length(s.Reveal.Value).Value())
	}
}

func one(v float64) quantity.Value { return quantity.Value{SI: v, Unit: quantity.One} }
