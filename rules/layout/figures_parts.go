package layout

import (
	"fmt"
	"math"
	"strings"

	"dryfit/rules/figure"
	"dryfit/rules/kernel/timber"
	"dryfit/spec/quantity"
)

func (c *Ceiling) skinFigures(s *sheet) {
	s.under("skin and ribs")
	tight := term("R_t", "vault.tightest-radius", metres(c.Vault.TightestRadius))
	s.add(figure.Figure{
		Key: "skin.radius", Symbol: "R_s", Name: "tightest radius of the skin, on its concave face", Value: metres(c.Vault.TightestRadius + c.Skin.Setback),
		Formula: "R_t + a", Terms: []figure.Term{tight, term("a", "skin.setback", metres(c.Skin.Setback))},
	})
	if n := c.Laminations(); n > 0 {
		depth, strip := term("d", "rib.depth", metres(c.Rib.Depth)), term("t", "rib.lamination", metres(c.Rib.Lamination))
		s.add(figure.Figure{
			Key: "rib.laminations", Symbol: "n", Name: "strips in a rib's depth", Value: count(n),
			Method: fmt.Sprintf("the depth by the strip's thickness, to the nearest whole: %.3g", c.Rib.Depth/c.Rib.Lamination),
			Terms:  []figure.Term{depth, strip},
		})
		if !math.IsInf(c.Vault.Radius, 1) {
			s.add(figure.Figure{
				Key: "rib.form-radius", Symbol: "R_f", Name: "radius of the form at the rib's intrados, with the springback taken off", Value: metres(timber.FormRadius(c.Vault.Radius, n)),
				Formula: "R * (1 - 1/n^2)",
				Terms:   []figure.Term{term("R", "vault.radius", metres(c.Vault.Radius)), term("n", "rib.laminations", count(n))},
			})
			s.add(figure.Figure{
				Key: "rib.springback-left", Symbol: "Δh", Name: "uncertainty of the rise, of a quarter of the springback",
				Value:  metres(math.Abs(c.RiseBy(timber.Springback(n) / 4))),
				Method: "every curvature changed by 1/(4·n²), the length of the arc kept",
				Terms:  []figure.Term{term("n", "rib.laminations", count(n))},
			})
			s.add(figure.Figure{
				Key: "rib.lamination-ratio", Symbol: "R/t", Name: "tightest radius by the thickness of a strip", Value: ratio(c.Vault.TightestRadius / c.Rib.Lamination),
				Formula: "R_t / t", Terms: []figure.Term{tight, strip},
			})
		}
	}
	sh := c.SkinSheets()
	s.add(figure.Figure{
		Key: "skin.sheets", Symbol: "S", Name: "stock sheets in one panel's skin, all layers", Value: count(sh.PanelCount),
		Formula: "a * b * n", Terms: []figure.Term{
			term("a", "", count(sh.Around)), term("b", "", count(sh.Along)), term("n", "skin.layers", count(c.Skin.Layers)),
		},
	})
}

func (c *Ceiling) climateFigures(s *sheet) {
	s.under("climate")
	const method = "Wood Handbook, FPL-GTR-282, equation 4-5, from temperature and relative humidity"
	for _, a := range []struct {
		key, symbol, name string
		moisture          float64
	}{
		{"climate.shop", "M_s", "moisture content of the wood in the shop", c.Climate.Shop},
		{"climate.dry", "M_d", "in the dry season", c.Climate.Dry},
		{"climate.wet", "M_w", "in the wet season", c.Climate.Wet},
	} {
		s.add(figure.Figure{
			Key: a.key + ".moisture", Symbol: a.symbol, Name: a.name,
			Value: quantity.Share(a.moisture).Value(), Method: method, Assumed: s.isAssumed(a.key),
		})
	}
}

func (c *Ceiling) massFigures(s *sheet) {
	s.under("mass")
	shop := term("M_s", "climate.shop.moisture", quantity.Share(c.Climate.Shop).Value())
	density := func(key, symbol, name string, species timber.Species) {
		f := figure.Figure{
			Key: key, Symbol: symbol, Name: "density of " + name + ", " + species.Name,
			Value:   quantity.Density(timber.Density(species.SG12, c.Climate.Shop)).Value(),
			Formula: "1000 * G * (1 + M_s/100)",
			Terms:   []figure.Term{term("G", "", ratio(species.SG12)), shop},
		}
		if c.Units == quantity.Imperial {
			f.Formula = "62.42796 * G * (1 + M_s/100)" // 1000kg/m3 in lb/ft3
		}
		s.add(f)
	}
	density("rib.density", "ρ_r", "the rib", c.Rib.Species)
	density("rail.density", "ρ_l", "the rail", c.Rail.Species)
	var keys []figure.Term
	seen := map[string]int{}
	for _, p := range c.Panel.Pieces {
		name := strings.ReplaceAll(p.Kind.String(), " ", "-")
		seen[name]++
		key := fmt.Sprintf("panel.piece.%s.%d", name, seen[name])
		mass := quantity.Mass(p.Mass * float64(p.Count)).Value()
		f := figure.Figure{
			Key: key, Symbol: fmt.Sprintf("m_%d", len(keys)+1), Name: fmt.Sprintf("mass of %d × %s", p.Count, p.Kind), Value: mass, Metres: true,
			Formula: "n * V * ρ",
			Terms: []figure.Term{
				term("n", "", count(p.Count)), term("V", "", quantity.Value{SI: p.Volume, Unit: quantity.CubicMetre}),
				term("ρ", densityKey(p.Kind), quantity.Density(p.Mass/p.Volume).Value()),
			},
		}
		s.add(f)
		keys = append(keys, term(f.Symbol, key, mass))
	}
	total := figure.Figure{Key: "panel.mass", Symbol: "m", Name: "mass of the heaviest panel", Value: quantity.Mass(c.Panel.Mass).Value()}
	symbols := make([]string, len(keys))
	for i, k := range keys {
		symbols[i] = k.Symbol
	}
	total.Formula, total.Terms = strings.Join(symbols, " + "), keys
	s.add(total)
	s.add(figure.Figure{
		Key: "panel.centre-height", Symbol: "z_m", Name: "height of the panel's centre of mass above the springing", Value: metres(c.Panel.Centre.Z),
		Method: "the pieces' centres, weighted by mass",
	})
	all := figure.Figure{Key: "vault.mass", Symbol: "M", Name: "mass of all panels, at most", Value: quantity.Mass(c.Panel.Mass * float64(c.Panel.Count)).Value()}
	all.Formula = "m * P"
	all.Terms = []figure.Term{term("m", "panel.mass", total.Value), term("P", "panel.count", count(c.Panel.Count))}
	s.add(all)
}

// densityKey is the figure that gives a piece's density, if one does.
func densityKey(piece PieceKind) string {
	switch piece {
	case Rib, HalfRib, LooseTenon:
		return "rib.density"
	case Rail, HalfRail:
		return "rail.density"
	default:
		return "skin.material"
	}
}

func (c *Ceiling) seamFigures(s *sheet) {
	s.under("seams")
	edge, spacing := term("e", "seam.edge", metres(c.Seam.Edge)), term("p", "seam.spacing", metres(c.Seam.Spacing))
	tenons := func(key, symbol, name, formula string, pieces, n int, length figure.Term) {
		f := figure.Figure{Key: key, Symbol: symbol, Name: name, Value: count(n)}
		if n > pieces {
			f.Formula, f.Terms = formula, []figure.Term{length, edge, spacing}
		} else {
			f.Method = "a seam too short for two has one, in each piece of the arch"
		}
		if pieces > 1 {
			f.Terms = append(f.Terms, term("q", "panels.around", count(pieces)))
		}
		s.add(f)
	}
	const one = "ceil((A - 2*e) / p) + 1"
	if c.Seam.Count > 0 {
		formula := one
		if c.Panel.Around > 1 {
			formula = "q*(ceil((A/q - 2*e) / p) + 1)"
		}
		tenons("joint.tenons-in-seam", "n_s", "loose tenons in one seam around the arc", formula, c.Panel.Around, c.Seam.TenonsInSeam, term("A", "vault.arc-length", metres(c.Vault.Arc)))
	}
	if c.Seam.EdgeSeams > 0 {
		tenons("joint.tenons-in-edge", "n_e", "loose tenons in one seam along the axis", one, 1, c.Seam.TenonsInEdge, term("A", "panel.length", metres(c.Panel.Length)))
	}
	s.add(figure.Figure{
		Key: "joint.count", Symbol: "n_j", Name: "loose tenons in all seams", Value: count(c.Seam.Tenons),
		Formula: "a*n_s + b*n_e",
		Terms: []figure.Term{
			term("a", "", count(c.Seam.Count)), term("n_s", "joint.tenons-in-seam", count(c.Seam.TenonsInSeam)),
			term("b", "", count(c.Seam.EdgeSeams)), term("n_e", "joint.tenons-in-edge", count(c.Seam.TenonsInEdge)),
		},
	})
}

func (c *Ceiling) strapFigures(s *sheet) {
	if c.Spec.Strap == nil || len(c.Spec.Strap.Stations) == 0 {
		return
	}
	s.under("straps")
	run, _ := c.LongestRun()
	s.add(figure.Figure{
		Key: "strap.longest-run", Symbol: "u", Name: "longest clear run of the rib; an overhang counts twice", Value: metres(run),
		Method: "stations as shares of the arc",
	})
	s.add(figure.Figure{
		Key: "strap.run-ratio", Symbol: "u/d", Name: "longest clear run by depth of rib", Value: ratio(run / c.Rib.Depth),
		Formula: "u / d", Terms: []figure.Term{term("u", "strap.longest-run", metres(run)), term("d", "rib.depth", metres(c.Rib.Depth))},
	})
	s.add(figure.Figure{
		Key: "strap.even-share", Symbol: "F", Name: "force on each strap if all carried alike", Value: quantity.Force(c.EvenShare()).Value(),
		Formula: "m * q * g / (2*n)",
		Terms: []figure.Term{
			term("m", "panel.mass", quantity.Mass(c.Panel.Mass).Value()), term("q", "panels.around", count(c.Panel.Around)),
			term("g", "", quantity.Value{SI: standardGravity, Unit: quantity.NewtonPerKilogram}), term("n", "strap.stations", count(len(c.Spec.Strap.Stations))),
		},
	})
	if c.Spec.Room.Above == nil {
		return
	}
	crown := c.Vault.Rise + c.Vault.Thickness
	for i, st := range c.Spec.Strap.Stations {
		back := c.ExtradosHeight(float64(st))
		s.add(figure.Figure{
			Key: fmt.Sprintf("strap.length.%d", i+1), Symbol: fmt.Sprintf("l_%d", i+1), Name: fmt.Sprintf("length of strap %d between its fixings", i+1),
			Value: metres(c.StrapLength(float64(st))), Formula: "a + c - b",
			Terms: []figure.Term{
				term("a", "room.above", metres(float64(*c.Spec.Room.Above))), term("c", "", metres(crown)), term("b", "", metres(back)),
			},
		})
	}
}
