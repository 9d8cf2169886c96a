package stair

import (
	"math"

	"dryfit/rules/kernel/passage/turns"
)

// over keeps a height off floors, which are lines over another coordinate.
func (c *confined) over(z, along *turns.Slope, floors ramps, wrap float64) {
	for _, l := range floors.all() {
		f := lessRise(z, along, l.by)
		c.above(upright, &f, l.at+wrap)
	}
}

// under keeps a height off soffits.
func (c *confined) under(z, along *turns.Slope, soffits ramps, wrap float64) {
	for _, l := range soffits.all() {
		f := lessRise(z, along, l.by)
		c.below(upright, &f, l.at-wrap)
	}
}

// straight takes what confines the body on a flight to a landing from which none goes on.
// Where it is across is not looked at, but how wide it is between the walls.
func (c *confined) straight() {
	s, landing := &c.s, c.s.landing()
	for i, g := range c.wrap {
		_, y := c.place(i)
		f := c.form(int32(i))
		x := c.slopes[i][0]
		c.over(&f[2], &f[1], s.floors(y), c.wrap[i])
		c.under(&f[2], &f[1], s.soffits(y), c.wrap[i])
		if y.Low < -s.walled() {
			continue
		}
		walls := landing
		if y.High <= 0 {
			walls = turns.Bounds{High: s.Width}
		}
		if !math.IsInf(walls.High, 1) {
			c.below(0, &x, walls.High-g)
			c.above(0, &x, walls.Low+g)
		}
		if s.Across > 0 { // the walls of the landing, wherever they are
			c.below(1, &x, s.Across-g)
			c.above(1, &x, g)
		}
	}
	c.eachEdge(c.throughMouth)
}

// throughMouth takes where the way between two probes crosses the plane of the landing's
// edge: between the walls of the flight.
func (c *confined) throughMouth(i, k int32) {
	_, ay := c.place(int(i))
	_, by := c.place(int(k))
	if min(ay.Low, by.Low) < -c.s.walled() || !apartAt(ay, by, 0) {
		return
	}
	a, b := c.form(i), c.form(k)
	if at, ok := turns.Crossing(&a, &b, 1, 0); ok {
		g := c.wrapAlong(i, k)
		c.below(0, &at[0], c.s.Width-g)
		c.above(0, &at[0], g)
	}
}

// eachEdge takes all that are in the body between two probes that are next to each other.
func (c *confined) eachEdge(take func(i, k int32)) {
	for _, row := range c.rows {
		for k := 1; k < len(row); k++ {
			take(row[k-1], row[k])
		}
	}
}

// quarter takes what confines it where the way goes on from the landing's side.
func (c *confined) quarter() {
	s, run := &c.s, c.s.walled()
	for i, g := range c.wrap {
		x, y := c.place(i)
		f := c.form(int32(i))
		if x.High <= s.Across+run {
			c.below(1, &f[1], s.Length-g)
		}
		if y.Low >= -run {
			c.above(0, &f[0], g)
		}
		if !c.besideFlights(x, y) {
		} else if x.Low >= s.Width {
			c.above(1, &f[1], g)
		} else if y.High <= 0 {
			c.below(0, &f[0], s.Width-g)
		}
		on := f[0]
		on.Low, on.High = on.Low-s.Across, on.High-s.Across
		c.quarterHeights(i, x, y, &f, &on)
	}
	c.eachEdge(c.aroundCorner)
}

// besideFlights reports whether a place is between the far ends of the flights of a quarter
// turn for certain: then what is inside its corner is wall.
func (c *confined) besideFlights(x, y turns.Bounds) bool {
	return x.High < c.s.Across+c.s.walled() && y.Low > -c.s.walled()
}

// quarterHeights are the floors and the soffits of a quarter turn.
func (c *confined) quarterHeights(i int, x, y turns.Bounds, f *[3]turns.Slope, on *turns.Slope) {
	s := &c.s
	beyond := turns.Bounds{Low: x.Low - s.Across, High: x.High - s.Across}
	if y.Low >= nosing || x.Low >= s.Width && c.besideFlights(x, y) {
		c.over(&f[2], on, s.floorsOn(beyond), c.wrap[i])
	} else {
		c.over(&f[2], &f[1], s.floors(y), c.wrap[i])
	}
	switch {
	case y.Low < -s.walled() || beyond.High > s.walled():
	case beyond.High <= 0:
		c.under(&f[2], &f[1], s.soffits(y), c.wrap[i])
	default:
		c.under(&f[2], on, s.soffitsOn(beyond), c.wrap[i])
	}
}

// aroundCorner takes where the way between two probes crosses the two faces of the inner
// corner: beyond it.
func (c *confined) aroundCorner(i, k int32) {
	s, g := &c.s, c.wrapAlong(i, k)
	ax, ay := c.place(int(i))
	bx, by := c.place(int(k))
	if min(ay.Low, by.Low) > -s.walled() && apartAt(ax, bx, s.Width) {
		a, b := c.form(i), c.form(k)
		if at, ok := turns.Crossing(&a, &b, 0, s.Width); ok {
			c.above(1, &at[1], g)
		}
	}
	if max(ax.High, bx.High) < s.Across+s.walled() && apartAt(ay, by, 0) {
		a, b := c.form(i), c.form(k)
		if at, ok := turns.Crossing(&a, &b, 1, 0); ok {
			c.below(0, &at[0], s.Width-g)
		}
	}
}

// apartAt reports whether two places are on two sides of a coordinate for certain.
func apartAt(a, b turns.Bounds, at float64) bool {
	return a.High < at && b.Low > at || a.Low > at && b.High < at
}

// halfTurn takes what confines it where the way goes back beside the flight that comes up.
func (c *confined) halfTurn() {
	s, run := &c.s, c.s.walled()
	for i, g := range c.wrap {
		x, y := c.place(i)
		f := c.form(int32(i))
		c.below(1, &f[1], s.Length-g)
		if y.Low >= -run {
			c.below(0, &f[0], s.Across-g)
			c.above(0, &f[0], g)
		}
		switch {
		case c.sides[i] < 0:
			c.below(0, &f[0], s.Width-g)
		case c.sides[i] > 0:
			c.above(0, &f[0], s.Across-s.Width+g)
		}
		c.halfHeights(i, x, y, &f)
	}
	c.eachEdge(c.aroundWall)
}

// halfHeights are the floors and the soffits of a half turn. Where it is not known on which
// side of the wall a probe is, they are the lower floor and the higher soffit. Past the ends
// of the flights there may be no more than the floor at the foot.
func (c *confined) halfHeights(i int, x, y turns.Bounds, f *[3]turns.Slope) {
	s, g := &c.s, c.b.Wrap()
	if y.Low < -s.walled() {
		c.over(&f[2], &f[1], s.floors(y), c.wrap[i])
		return
	}
	up := c.sides[i] < 0 || c.sides[i] == 0 && x.High < s.Across-s.Width+g
	on := c.sides[i] > 0 || c.sides[i] == 0 && x.Low > s.Width-g
	back := f[1].Plus(-1, &f[1], 0)
	beyond := turns.Bounds{Low: -y.High, High: -y.Low}
	if on && !up {
		c.over(&f[2], &back, s.floorsOn(beyond), c.wrap[i])
	} else {
		c.over(&f[2], &f[1], s.floors(y), c.wrap[i])
	}
	if up {
		c.under(&f[2], &f[1], s.soffits(y), c.wrap[i])
	} else {
		c.under(&f[2], &back, s.soffitsOn(beyond), c.wrap[i])
	}
}

// aroundWall takes where the way between two probes crosses the wall between the flights,
// at its faces and in its middle: over the landing.
func (c *confined) aroundWall(i, k int32) {
	_, ay := c.place(int(i))
	_, by := c.place(int(k))
	if min(ay.Low, by.Low) < -c.s.walled() {
		return
	}
	for _, x := range [3]float64{c.s.Width, c.s.Across / 2, c.s.Across - c.s.Width} {
		c.overLanding(i, k, x)
	}
}

// overLanding takes where the way between two probes crosses a plane along the wall, if they
// are on two sides of it for certain.
func (c *confined) overLanding(i, k int32, x float64) {
	ax, _ := c.place(int(i))
	bx, _ := c.place(int(k))
	if !apartAt(ax, bx, x) {
		return
	}
	a, b := c.form(i), c.form(k)
	if at, ok := turns.Crossing(&a, &b, 0, x); ok {
		g := c.wrapAlong(i, k)
		c.above(1, &at[1], g)
		c.above(upright, &at[2], g)
		c.below(upright, &at[2], c.s.Headroom-g)
	}
}

// contract takes off the area what P can't be in, and reports whether any is left.
func (c *confined) contract() bool {
	s, run := &c.s, c.s.walled()
	if s.Turn == Half {
		c.sort()
	}
	a := c.area
	for i, g := range c.wrap {
		p := &c.bounds[i]
		x, y := c.place(i)
		if s.Turn == Half || x.High <= s.Across+run {
			a.y.High = min(a.y.High, s.Length-g-p[1].Low)
		}
		if y.Low >= -run {
			a.x.Low = max(a.x.Low, g-p[0].High)
		}
		if s.Turn == Quarter {
			if !c.besideFlights(x, y) {
			} else if x.Low >= s.Width {
				a.y.Low = max(a.y.Low, g-p[1].High)
			} else if y.High <= 0 {
				a.x.High = min(a.x.High, s.Width-g-p[0].Low)
			}
			continue
		}
		if y.Low >= -run {
			a.x.High = min(a.x.High, s.Across-g-p[0].Low)
		}
		switch {
		case c.sides[i] < 0:
			a.x.High = min(a.x.High, s.Width-g-p[0].Low)
		case c.sides[i] > 0:
			a.x.Low = max(a.x.Low, s.Across-s.Width+g-p[0].High)
		}
	}
	c.area = a
	return a.x.Low <= a.x.High && a.y.Low <= a.y.High
}

// sort finds on which side of the wall between two flights the probes are that are beside
// it. The body is one piece: two probes beside the wall are on the same side of it if the
// straight way between them is in the body, and so are one and P.
func (c *confined) sort() {
	s := &c.s
	for i, g := range c.wrap {
		c.sides[i] = 0
		if !c.besideWall(i) {
			continue
		}
		if x, _ := c.place(i); x.High < s.Across-s.Width+g {
			c.sides[i] = -1
		} else if x.Low > s.Width-g {
			c.sides[i] = 1
		}
	}
	if c.area.y.High <= 0 && c.area.y.Low >= -s.walled() {
		side := int8(1)
		if c.area.x.High <= s.Width+touching {
			side = -1
		}
		for _, edge := range c.near {
			if c.besideWall(int(edge[0])) && c.besideWall(int(edge[1])) {
				c.sides[edge[0]], c.sides[edge[1]] = side, side
			}
		}
	}
	for c.spread() {
	}
}

// spread takes the sides of probes to those next to them, and reports whether it did.
func (c *confined) spread() (did bool) {
	for _, row := range c.rows {
		for k := 1; k < len(row); k++ {
			a, b := row[k-1], row[k]
			if c.sides[a] == 0 {
				a, b = b, a
			}
			if c.sides[a] != 0 && c.sides[b] == 0 && c.besideWall(int(b)) {
				c.sides[b], did = c.sides[a], true
			}
		}
	}
	return did
}

// besideWall reports whether a probe is between the ends of the wall for certain.
func (c *confined) besideWall(i int) bool {
	_, y := c.place(i)
	return y.High <= 0 && y.Low >= -c.s.walled()
}
