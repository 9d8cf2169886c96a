package layout

import (
	"fmt"

	"dryfit/rules/model/figure"
	"dryfit/spec/quantity"
)

// lookFigures are those of taste: nothing is judged by them. The ratio of a coffer
// with its sign is grid.long-side.
func (c *Ceiling) lookFigures(l *Lines) {
	l.Subject = "look"
	c.cofferFigures(l)
	c.eyeFigures(l)
	l.Where(func() bool { return len(c.Align.Get()) > 0 }, func() { c.alignFigures(l) })
}

// cofferFigures are those of the coffers by themselves.
func (c *Ceiling) cofferFigures(l *Lines) {
	g := c.Grid
	around, along := Term("m_r", Metres(g.ModuleAround)), Term("m_l", Metres(g.ModuleAlong))
	rib, rail := Term("w", Metres(c.Rib.Width)), Term("w_l", Metres(c.Rail.Width))
	l.Add("look.member-share", "q", "share of the ceiling that is member, on the intrados unrolled (derived)", func(f *figure.Figure) figure.Measure {
		f.Formula = "100 * (1 - a*b*(m_l - w)*(m_r - w_l) / (A*L))"
		f.Terms = []figure.Term{
			Term("a", Whole(g.Around)), Term("b", Whole(g.Along)), along, rib, around, rail,
			Term("A", Metres(c.Vault.Arc)), Term("L", Metres(c.Vault.Length)),
		}
		return Measured(c.Number("", c.MemberShare), quantity.Fraction)
	})
	l.Add("look.coffer-depth", "d/c", "depth of a coffer to the skin by its lesser clear width (derived)", func(f *figure.Figure) figure.Measure {
		f.Formula = "100 * a_s / min(m_l - w, m_r - w_l)"
		f.Terms = []figure.Term{Term("a_s", Metres(c.Skin.Setback)), along, rib, around, rail}
		return Measured(c.Number("", func() float64 {
			return c.Skin.Setback.Get() / min(c.Clear(), g.ModuleAround.Get()-c.Rail.Width.Get())
		}), quantity.Fraction)
	})
	c.proportionFigures(l, along, around)
}

// proportionFigures are what lies at the crown, and the proportions of a coffer by
// those of the room.
func (c *Ceiling) proportionFigures(l *Lines, along, around figure.Term) {
	g := c.Grid
	l.Add("look.crown-coffers", "o", "coffers at the crown: 1 of an odd count around; 0 of an even one, with a rail there", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "2*ceil(n/2) - n", []figure.Term{Term("n", Whole(g.Around))}
		return Whole(c.Count("", func() int { return g.Around.Get() % 2 }))
	})
	l.Add("look.coffer-room", "k_w", "length by width of a coffer, by the same of the room; 1 repeats the room (common practice)", func(f *figure.Figure) figure.Measure {
		f.Formula = "(m_l / m_r) / (L_w / W)"
		f.Terms = []figure.Term{along, around, Term("L_w", Metres(c.Room.Length)), Term("W", Metres(c.Room.Width))}
		return Ratio(c.Number("", func() float64 {
			return g.ModuleAlong.Get() / g.ModuleAround.Get() / (c.Room.Length.Get() / c.Room.Width.Get())
		}))
	})
}

// eyeFigures are how many coffers one sees into from the entry.
func (c *Ceiling) eyeFigures(l *Lines) {
	const key, symbol = "look.coffers-met", "N_e"
	side := func() bool { return c.EyeBelow() && c.Room.Entry.Get() == "side" }
	l.Where(side, func() {
		l.Add(key, symbol, "coffers of an arch into which one in the entry sees as far as the skin (derived)", func(f *figure.Figure) figure.Measure {
			f.Method = "of each coffer whether a line from the eye, in the arch's plane at the left springing, meets the skin between the rails"
			f.Terms = []figure.Term{Term("e", Metres(c.Room.Eye)), Term("H_w", Metres(c.Room.Height)), Term("a_s", Metres(c.Skin.Setback))}
			return Whole(c.Count("", c.MetAround))
		})
	})
	end := func() bool { return c.EyeBelow() && c.Room.Entry.Get() != "side" }
	l.Where(end, func() {
		l.Add("look.crown-row", "z_k", "height above the springing of the middle of the row of coffers at the crown, or beside it", func(f *figure.Figure) figure.Measure {
			f.Method = "on the intrados, half a module off the crown where the count around is even"
			return Metres(c.Number("look.crown-row", c.CrownRow))
		})
		l.Add("look.first-rib", "x_1", "far edge of the first rib, from the near end wall", func(f *figure.Figure) figure.Measure {
			f.Formula = "g_n + u*w"
			f.Terms = []figure.Term{Term("g_n", Metres(c.Number("", c.NearGap))), Term("u", Ratio(c.Number("", func() float64 { return c.ribAtEnd() / c.Rib.Width.Get() }))), Term("w", Metres(c.Rib.Width))}
			return Metres(c.Number("look.first-rib", c.firstRib))
		})
		l.Add(key, symbol, "coffers of that row into which one in the entry sees as far as the skin (derived)", c.metAlong)
	})
}

// metAlong is the figure of MetAlong.
func (c *Ceiling) metAlong(f *figure.Figure) figure.Measure {
	f.Formula = "min(n, max(0, ceil(((m_l - w)*(H_w + z_k - e)/a_s - x_1) / m_l)))"
	f.Terms = []figure.Term{
		Term("n", Whole(c.Grid.Along)), Term("m_l", Metres(c.Grid.ModuleAlong)), Term("w", Metres(c.Rib.Width)),
		Term("H_w", Metres(c.Room.Height)), Term("z_k", Metres(c.Number("look.crown-row", c.CrownRow))), Term("e", Metres(c.Room.Eye)),
		Term("a_s", Metres(c.Skin.Setback)), Term("x_1", Metres(c.Number("look.first-rib", c.firstRib))),
	}
	return Whole(c.Count("", c.MetAlong))
}

// alignFigures are how far the windows and doors of the side walls are off the
// module.
func (c *Ceiling) alignFigures(l *Lines) {
	for i, a := range c.Align.Get() {
		l.Add(fmt.Sprintf("look.align.%d", i+1), fmt.Sprintf("v_%d", i+1), "", func(f *figure.Figure) figure.Measure {
			name := a.Name.Get()
			if name == "" {
				name = fmt.Sprint(i + 1)
			}
			f.Name = "middle of " + name + " off the nearest line of a rib or of a coffer's middle"
			f.Method = "the lines from the near end wall, with the gap there and those at the seams"
			f.Terms = []figure.Term{Term("x", Metres(a.At))}
			return Metres(c.Number("", func() float64 { return c.OffLine(a.At.Get()) }))
		})
	}
	l.Add("look.aligned", "N_v", "windows and doors whose middle is within 25mm of such a line (common practice)", func(f *figure.Figure) figure.Measure {
		f.Method = "counted of the figures above"
		return Whole(c.Count("", c.Met))
	})
}
