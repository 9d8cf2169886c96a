package calcs

import (
	"fmt"
	"math"

	"dryfit/rules/kernel/curve"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// lookFigures are those of taste: nothing is judged by them. The ratio of a coffer
// with its sign is grid.long-side.
func lookFigures(c *layout.Ceiling, l *Lines) {
	l.Subject = "look"
	cofferFigures(c, l)
	eyeFigures(c, l)
	l.Where(func() bool { return len(c.Align.Get()) > 0 }, func() { alignFigures(c, l) })
}

// cofferFigures are those of the coffers by themselves.
func cofferFigures(c *layout.Ceiling, l *Lines) {
	g := c.Grid
	around, along := Term("m_r", Metres(g.ModuleAround)), Term("m_l", Metres(g.ModuleAlong))
	rib, rail := Term("w", Metres(c.Rib.Width)), Term("w_l", Metres(c.Rail.Width))
	l.Add("look.member-share", "q", "share of the unrolled intrados that ribs and rails cover (derived)", func(f *figure.Figure) figure.Measure {
		f.Formula = "100 * (1 - a*b*(m_l - w)*(m_r - w_l) / (A*L))"
		f.Terms = []figure.Term{
			Term("a", Whole(g.Around)), Term("b", Whole(g.Along)), along, rib, around, rail,
			Term("A", Metres(c.Vault.Arc)), Term("L", Metres(c.Vault.Length)),
		}
		return Measured(c.Number("", func() float64 { return memberShare(c) }), quantity.Fraction)
	})
	l.Add("look.coffer-depth", "d/c", "depth of a coffer, down to its skin, divided by its smaller clear width (derived)", func(f *figure.Figure) figure.Measure {
		f.Formula = "100 * a_s / min(m_l - w, m_r - w_l)"
		f.Terms = []figure.Term{Term("a_s", Metres(c.Skin.Setback)), along, rib, around, rail}
		return Measured(c.Number("", func() float64 {
			return c.Skin.Setback.Get() / min(c.Clear(), g.ModuleAround.Get()-c.Rail.Width.Get())
		}), quantity.Fraction)
	})
	proportionFigures(c, l, along, around)
}

// proportionFigures are what lies at the crown, and the proportions of a coffer by
// those of the room.
func proportionFigures(c *layout.Ceiling, l *Lines, along, around figure.Term) {
	g := c.Grid
	l.Add("look.crown-coffers", "o", "coffers at the crown: 1 if the count around is odd; 0 if it is even, with a rail at the crown", func(f *figure.Figure) figure.Measure {
		f.Formula, f.Terms = "2*ceil(n/2) - n", []figure.Term{Term("n", Whole(g.Around))}
		return Whole(c.Count("", func() int { return g.Around.Get() % 2 }))
	})
	l.Add("look.coffer-room", "k_w", "length to width of a coffer, divided by length to width of the room; at 1 the proportions are equal (common practice)", func(f *figure.Figure) figure.Measure {
		f.Formula = "(m_l / m_r) / (L_w / W)"
		f.Terms = []figure.Term{along, around, Term("L_w", Metres(c.Room.Length)), Term("W", Metres(c.Room.Width))}
		return Ratio(c.Number("", func() float64 {
			return g.ModuleAlong.Get() / g.ModuleAround.Get() / (c.Room.Length.Get() / c.Room.Width.Get())
		}))
	})
}

// eyeFigures are how many coffers one sees into from the entry.
func eyeFigures(c *layout.Ceiling, l *Lines) {
	const key, symbol = "look.coffers-met", "N_e"
	side := func() bool { return eyeBelow(c) && c.Room.Entry.Get() == "side" }
	l.Where(side, func() {
		l.Add(key, symbol, "number of coffers of an arch whose skin a person in the entry sees (derived)", func(f *figure.Figure) figure.Measure {
			f.Method = "for each coffer, whether a line from the eye, in the arch's plane at the left springing, meets the skin between the rails"
			f.Terms = []figure.Term{Term("e", Metres(c.Room.Eye)), Term("H_w", Metres(c.Room.Height)), Term("a_s", Metres(c.Skin.Setback))}
			return Whole(c.Count("", func() int { return coffersAround(c) }))
		})
	})
	end := func() bool { return eyeBelow(c) && c.Room.Entry.Get() != "side" }
	l.Where(end, func() {
		l.Add("look.crown-row", "z_k", "height above the springing of the middle of the row of coffers at the crown, or beside it", func(f *figure.Figure) figure.Measure {
			f.Method = "on the intrados, half a module from the crown if the count around is even"
			return Metres(c.Number("look.crown-row", func() float64 { return crownRow(c) }))
		})
		l.Add("look.first-rib", "x_1", "far edge of the first rib, from the near end wall", func(f *figure.Figure) figure.Measure {
			f.Formula = "g_n + u*w"
			f.Terms = []figure.Term{Term("g_n", Metres(c.Number("", c.NearGap))), Term("u", Ratio(c.Number("", func() float64 { return ribAtEnd(c) / c.Rib.Width.Get() }))), Term("w", Metres(c.Rib.Width))}
			return Metres(c.Number("look.first-rib", func() float64 { return firstRib(c) }))
		})
		l.Add(key, symbol, "number of coffers of that row whose skin a person in the entry sees (derived)", func(f *figure.Figure) figure.Measure { return metAlong(c, f) })
	})
}

// metAlong is the figure of coffersAlong.
func metAlong(c *layout.Ceiling, f *figure.Figure) figure.Measure {
	f.Formula = "min(n, max(0, ceil(((m_l - w)*(H_w + z_k - e)/a_s - x_1) / m_l)))"
	f.Terms = []figure.Term{
		Term("n", Whole(c.Grid.Along)), Term("m_l", Metres(c.Grid.ModuleAlong)), Term("w", Metres(c.Rib.Width)),
		Term("H_w", Metres(c.Room.Height)), Term("z_k", Metres(c.Number("look.crown-row", func() float64 { return crownRow(c) }))), Term("e", Metres(c.Room.Eye)),
		Term("a_s", Metres(c.Skin.Setback)), Term("x_1", Metres(c.Number("look.first-rib", func() float64 { return firstRib(c) }))),
	}
	return Whole(c.Count("", func() int { return coffersAlong(c) }))
}

// alignFigures are how far the windows and doors of the side walls are off the
// module.
func alignFigures(c *layout.Ceiling, l *Lines) {
	for i, a := range c.Align.Get() {
		l.Add(fmt.Sprintf("look.align.%d", i+1), fmt.Sprintf("v_%d", i+1), "", func(f *figure.Figure) figure.Measure {
			name := a.Name.Get()
			if name == "" {
				name = fmt.Sprint(i + 1)
			}
			f.Name = "middle of " + name + ": distance to the nearest middle line of a rib or a coffer"
			f.Method = "the lines from the near end wall, with the gap there and those at the seams"
			f.Terms = []figure.Term{Term("x", Metres(a.At))}
			return Metres(c.Number("", func() float64 { return offLine(c, a.At.Get()) }))
		})
	}
	l.Add("look.aligned", "N_v", "number of windows and doors with their middle within 25mm of such a line (common practice)", func(f *figure.Figure) figure.Measure {
		f.Method = "counted from the figures above"
		return Whole(c.Count("", func() int { return aligned(c) }))
	})
}

// alignedWithin is how far the middle of a window may be off the line of a rib or
// of a coffer's middle and still seem to be on it, in m; common practice.
const alignedWithin = 0.025

// onLimit is how far past that limit, in m, is still round-off.
const onLimit = 1e-9

// memberShare is the share of the intrados, from 0 to 1, unrolled and without the
// gaps at the seams, that ribs and rails take.
func memberShare(c *layout.Ceiling) float64 {
	open := c.Clear() * (c.Grid.ModuleAround.Get() - c.Rail.Width.Get())
	n := float64(c.Grid.Around.Get() * c.Grid.Along.Get())
	return 1 - n*open/(c.Vault.Arc.Get()*c.Vault.Length.Get())
}

// crownRow is the height above the springing, on the intrados, of the middle of the
// row of coffers at the crown; of an even count of one beside it.
func crownRow(c *layout.Ceiling) float64 {
	s := c.Vault.Arc.Get() / 2
	if c.Grid.Around.Get()%2 == 0 {
		s -= c.Grid.ModuleAround.Get() / 2
	}
	return c.Vault.Intrados.Get().At(s).Z
}

// firstRib is the far edge of the first rib, from the near end wall.
func firstRib(c *layout.Ceiling) float64 { return c.NearGap() + ribAtEnd(c) }

// ribAtEnd is how much of a rib's width is at an end of the vault.
func ribAtEnd(c *layout.Ceiling) float64 {
	if c.Grid.HalfEnds.Get() {
		return c.Rib.Width.Get() / 2
	}
	return c.Rib.Width.Get()
}

// eyeBelow reports whether an eye in the entry looks up at the springing, and the
// skin is behind the intrados: where not, there is no count of coffers that it sees
// into.
func eyeBelow(c *layout.Ceiling) bool {
	return c.Room.Eye.Get() < c.Room.Height.Get() && c.Skin.Setback.Get() > 0
}

// coffersAlong is how many coffers of the row at the crown an eye at the near end wall
// sees the skin of: past the near rib a line of sight rises by the skin's setback
// before it comes to the far rib.
func coffersAlong(c *layout.Ceiling) int {
	up := c.Room.Height.Get() + crownRow(c) - c.Room.Eye.Get()
	last := c.Clear()*up/c.Skin.Setback.Get() - firstRib(c)
	return min(c.Grid.Along.Get(), max(0, int(math.Ceil(last/c.Grid.ModuleAlong.Get()))))
}

// coffersAround is how many coffers of an arch an eye at the left springing, in its
// plane, sees the skin of: some of the skin lies, seen from there, between the edges
// of both rails.
func coffersAround(c *layout.Ceiling) int {
	in, half := c.Vault.Intrados.Get(), c.Rail.Width.Get()/2
	eye := curve.Point{Z: c.Room.Eye.Get() - c.Room.Height.Get()}
	// The angle from straight up, clockwise.
	angle := func(p curve.Point) float64 { return math.Atan2(p.Y-eye.Y, p.Z-eye.Z) }
	n := 0
	for i := range c.Grid.Around.Get() {
		s0 := float64(i)*c.Grid.ModuleAround.Get() + half
		s1 := float64(i+1)*c.Grid.ModuleAround.Get() - half
		near := max(angle(in.At(s0)), angle(c.Vault.Behind(s0, c.Skin.Setback.Get())))
		far := min(angle(in.At(s1)), angle(c.Vault.Behind(s1, c.Skin.Setback.Get())))
		if far-near > 1e-9 {
			n++
		}
	}
	return n
}

// offLine is how far a place along the wall, from the near end wall, is off the
// nearest line of a rib or of the middle of a coffer, in m.
func offLine(c *layout.Ceiling, at float64) float64 {
	at -= c.NearGap()
	off := math.Inf(1)
	for i := range c.Grid.Along.Get() {
		rib, next := c.RibAt(i), c.RibAt(i+1)
		for _, line := range []float64{rib, (rib + next) / 2, next} {
			off = min(off, math.Abs(at-line))
		}
	}
	return off
}

// aligned is how many of the windows and doors are met to within 25mm.
func aligned(c *layout.Ceiling) (n int) {
	for _, a := range c.Align.Get() {
		if offLine(c, a.At.Get()) <= alignedWithin+onLimit {
			n++
		}
	}
	return n
}
