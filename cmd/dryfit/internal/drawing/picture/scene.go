package picture

import (
	"math"

	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
)

// space is a point of the room: x along the vault from its near end, y across
// from the left springing, z up from the springing; in m.
type space struct{ x, y, z float64 }

// camera sees in one-point perspective, where what is upright stays upright; or
// straight up, where nothing gets less with its distance.
type camera struct {
	eye   space
	turns bool // looks across the vault, from the left side wall, and not along it
	lit   bool // sees the fittings
	below bool // looks straight up, in a floor of mirrors: the near end left, the left springing at the top
}

// seen is a point as the camera sees it: to the right, up, and away.
type seen struct{ right, up, away float64 }

func (c camera) see(p space) seen {
	switch {
	case c.below:
		return seen{p.x, -p.y, 1}
	case c.turns:
		return seen{c.eye.x - p.x, p.z - c.eye.z, p.y - c.eye.y}
	}
	return seen{p.y - c.eye.y, p.z - c.eye.z, p.x - c.eye.x}
}

// side is on which side of a plane the camera is, by its sign: the plane through a
// point, square to n.
func (c camera) side(n, through space) float64 {
	if c.below {
		return -n.z
	}
	return n.x*(c.eye.x-through.x) + n.y*(c.eye.y-through.y) + n.z*(c.eye.z-through.z)
}

// nearest is how near the camera sees, in m: what is nearer is cut off.
const nearest = 0.25

// project cuts a flat figure off at the nearest plane and divides by the
// distance; the picture lies at a distance of 1, y upward.
func (c camera) project(figure []space) []flat {
	var kept []seen
	for i, p := range figure {
		a, b := c.see(p), c.see(figure[(i+1)%len(figure)])
		if a.away >= nearest {
			kept = append(kept, a)
		}
		if (a.away >= nearest) != (b.away >= nearest) {
			t := (nearest - a.away) / (b.away - a.away)
			kept = append(kept, seen{a.right + t*(b.right-a.right), a.up + t*(b.up-a.up), nearest})
		}
	}
	out := make([]flat, 0, len(kept))
	for _, s := range kept {
		out = append(out, flat{s.right / s.away, s.up / s.away})
	}
	return out
}

// flat is a point of the picture.
type flat struct{ x, y float64 }

// onLine is how far from an edge a point lies that is on it but for round-off,
// in a picture at a distance of 1.
const onLine = 1e-9

// clip is what is left of a figure inside a convex one, by Sutherland and
// Hodgman; either way round.
func clip(figure, inside []flat) []flat {
	if turning(inside) < 0 {
		back := make([]flat, len(inside))
		for i, p := range inside {
			back[len(inside)-1-i] = p
		}
		inside = back
	}
	for i, a := range inside {
		b := inside[(i+1)%len(inside)]
		length := math.Hypot(b.x-a.x, b.y-a.y)
		side := func(p flat) float64 {
			d := (b.x-a.x)*(p.y-a.y) - (b.y-a.y)*(p.x-a.x)
			if math.Abs(d) <= onLine*length {
				return 0
			}
			return d
		}
		var kept []flat
		for k, p := range figure {
			q := figure[(k+1)%len(figure)]
			sp, sq := side(p), side(q)
			if sp >= 0 {
				kept = append(kept, p)
			}
			if (sp >= 0) != (sq >= 0) {
				t := sp / (sp - sq)
				kept = append(kept, flat{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)})
			}
		}
		figure = kept
		if len(figure) < 3 {
			return nil
		}
	}
	return figure
}

// turning is twice the area of a figure, positive where it runs anticlockwise.
func turning(f []flat) float64 {
	sum := 0.0
	for i, p := range f {
		q := f[(i+1)%len(f)]
		sum += p.x*q.y - q.x*p.y
	}
	return sum
}

// face is a flat part of the scene in the order of painting.
type face struct {
	corners []flat
	tone    paper.Tone
	pen     paper.Pen
}

// The tones by what faces the eye: the back of a coffer, the sides of rails and
// of ribs, the underside of members, the grooves in it, and the room.
const (
	backTone   = paper.Paper + 2
	railTone   = paper.Paper + 4
	ribTone    = paper.Paper + 5
	memberTone = paper.Paper + 1
	grooveTone = paper.Paper + 6
	wallTone   = paper.Paper
	floorTone  = paper.Paper + 1
)

// scene is the room and its ceiling as a camera sees them.
//
// Below the intrados the room is convex, and so a line of sight leaves it once:
// through the floor, a wall, the underside of a member, or the mouth of one
// coffer. Of what stands in a coffer only that counts which is seen through its
// own mouth, and of its inner faces those that face the eye do not hide each
// other. So nothing needs to be sorted.
type scene struct {
	c     *layout.Ceiling
	eye   camera
	steps int // of the arc, in one coffer
	faces []face
}

func newScene(c *layout.Ceiling, eye camera) *scene {
	const steps = 24 // of a whole arch, at the least
	s := &scene{c: c, eye: eye, steps: max(1, (steps+c.Grid.Around.Get()-1)/c.Grid.Around.Get())}
	s.steps += s.steps % 2 * (c.Grid.Around.Get() % 2) // so that a pointed crown is between two
	if !eye.below {
		s.room()
	}
	for i := range c.Grid.Along.Get() {
		for j := range c.Grid.Around.Get() {
			s.coffer(i, j)
		}
	}
	s.members()
	return s
}

// add paints a figure, whole or as far as it is seen through a mouth.
func (s *scene) add(figure []space, through []flat, tone paper.Tone, pen paper.Pen) {
	corners := s.eye.project(figure)
	if through != nil && len(corners) > 2 {
		corners = clip(corners, through)
	}
	if len(corners) > 2 {
		s.faces = append(s.faces, face{corners, tone, pen})
	}
}

// at is a point of the vault at a depth behind the intrados.
func (s *scene) at(x, along, depth float64) space {
	p := s.c.Vault.Behind(along, depth)
	return space{x, p.Y, p.Z}
}

// coffer paints the inside of one: its back, which is what one sees where no side is,
// and the sides that face the eye.
func (s *scene) coffer(i, j int) {
	c := s.c
	x0, x1 := c.RibAt(i)+c.Rib.Width.Get()/2, c.RibAt(i+1)-c.Rib.Width.Get()/2
	m := c.Grid.ModuleAround.Get()
	a0, a1 := float64(j)*m+c.Rail.Width.Get()/2, float64(j+1)*m-c.Rail.Width.Get()/2
	if x1 <= x0 || a1 <= a0 {
		return
	}
	depth := c.Skin.Setback.Get()
	step := func(k int) float64 { return a0 + (a1-a0)*float64(k)/float64(s.steps) }
	type inner struct {
		figure []space
		tone   paper.Tone
	}
	var inside []inner
	for _, x := range []float64{x0, x1} {
		for k := range s.steps {
			inside = append(inside, inner{[]space{s.at(x, step(k), 0), s.at(x, step(k+1), 0), s.at(x, step(k+1), depth), s.at(x, step(k), depth)}, ribTone})
		}
	}
	for _, a := range []float64{a0, a1} {
		inside = append(inside, inner{[]space{s.at(x0, a, 0), s.at(x1, a, 0), s.at(x1, a, depth), s.at(x0, a, depth)}, railTone})
	}
	s.mouth(x0, x1, step)
	s.fittings(i, j, step, x0, x1)
	// On the room's side of every inner face, even across a pointed crown.
	p, q := s.at((x0+x1)/2, a0, 0), s.at((x0+x1)/2, a1, 0)
	middle := space{p.x, (p.y + q.y) / 2, (p.z + q.z) / 2}
	for k := range s.steps {
		mouth := s.eye.project([]space{s.at(x0, step(k), 0), s.at(x1, step(k), 0), s.at(x1, step(k+1), 0), s.at(x0, step(k+1), 0)})
		if len(mouth) < 3 {
			continue
		}
		for _, f := range inside {
			if s.turned(f.figure, middle) {
				s.add(f.figure, mouth, f.tone, paper.None)
			}
		}
	}
}

// mouth paints the whole mouth of a coffer as its back, in one figure.
func (s *scene) mouth(x0, x1 float64, step func(int) float64) {
	var outline []space
	for k := range s.steps + 1 {
		outline = append(outline, s.at(x0, step(k), 0))
	}
	for k := s.steps; k >= 0; k-- {
		outline = append(outline, s.at(x1, step(k), 0))
	}
	s.add(outline, nil, backTone, paper.None)
}

// turned reports whether the eye is on the side of a figure that a point inside
// the coffer is on.
func (s *scene) turned(figure []space, inside space) bool {
	minus := func(a, b space) space { return space{a.x - b.x, a.y - b.y, a.z - b.z} }
	u, v := minus(figure[1], figure[0]), minus(figure[2], figure[0])
	n := space{u.y*v.z - u.z*v.y, u.z*v.x - u.x*v.z, u.x*v.y - u.y*v.x}
	d := minus(inside, figure[0])
	return s.eye.side(n, figure[0])*(n.x*d.x+n.y*d.y+n.z*d.z) > 0
}

// room paints the floor and the walls up to the vault.
func (s *scene) room() {
	c := s.c
	low, span, length := -c.Room.Height.Get(), c.Vault.Span.Get(), c.BuiltLength()
	s.add([]space{{0, 0, low}, {length, 0, low}, {length, span, low}, {0, span, low}}, nil, floorTone, paper.Hair)
	for _, y := range []float64{0, span} {
		s.add([]space{{0, y, low}, {length, y, low}, {length, y, 0}, {0, y, 0}}, nil, wallTone, paper.Fine)
	}
	const steps = 48
	for _, x := range []float64{0, length} {
		wall := []space{{x, 0, low}}
		for k := range steps + 1 {
			wall = append(wall, s.at(x, c.Vault.Arc.Get()*float64(k)/steps, 0))
		}
		wall = append(wall, space{x, span, low})
		s.add(wall, nil, wallTone, paper.Fine)
	}
}

// laid is the faces as items, at a scale in mm for each m, from an upper left corner.
func (s *scene) laid(corner paper.Point, scale float64) (out []paper.Item) {
	for _, f := range s.faces {
		points := make([]paper.Point, len(f.corners))
		for i, p := range f.corners {
			points[i] = paper.Point{X: corner.X + scale*p.x, Y: corner.Y - scale*p.y}
		}
		out = append(out, f.item(points))
	}
	return out
}

// item is a face on paper. A line is a figure of three corners, the last its first.
func (f face) item(points []paper.Point) paper.Item {
	line := f.tone == paper.Clear
	if line {
		points = points[:2]
	}
	return paper.Poly{Points: points, Closed: !line, Tone: f.tone, Flush: !line && f.pen == paper.None, Stroke: paper.Stroke{Pen: f.pen}}
}

// painted is the faces as items within a picture: a box of paper around a part
// of the picture plane.
func (s *scene) painted(low, high paper.Point, window [4]flat) []paper.Item {
	across, up := window[2].x-window[0].x, window[2].y-window[0].y
	scale := min((high.X-low.X)/across, (high.Y-low.Y)/up)
	left := (low.X + high.X - scale*across) / 2
	bottom := (low.Y + high.Y + scale*up) / 2
	var out []paper.Item
	for _, f := range s.faces {
		corners := f.corners
		if f.tone == paper.Clear { // a line
			a, b, ok := clipLine(corners[0], corners[1], window)
			if !ok {
				continue
			}
			corners = []flat{a, b}
		} else if corners = clip(corners, window[:]); len(corners) < 3 {
			continue
		}
		points := make([]paper.Point, len(corners))
		for i, p := range corners {
			points[i] = paper.Point{X: left + scale*(p.x-window[0].x), Y: bottom - scale*(p.y-window[0].y)}
		}
		out = append(out, f.item(points))
	}
	edge := []paper.Point{{X: left, Y: bottom - scale*up}, {X: left + scale*across, Y: bottom - scale*up}, {X: left + scale*across, Y: bottom}, {X: left, Y: bottom}}
	return append(out, paper.Poly{Points: edge, Closed: true, Stroke: paper.Stroke{Pen: paper.Medium}})
}

// clipLine is the part of a line inside the window.
func clipLine(a, b flat, window [4]flat) (flat, flat, bool) {
	t0, t1 := 0.0, 1.0
	dx, dy := b.x-a.x, b.y-a.y
	for _, e := range [4][2]float64{{-dx, a.x - window[0].x}, {dx, window[2].x - a.x}, {-dy, a.y - window[0].y}, {dy, window[2].y - a.y}} {
		switch p, q := e[0], e[1]; {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	if t0 >= t1 {
		return a, b, false
	}
	return flat{a.x + t0*dx, a.y + t0*dy}, flat{a.x + t1*dx, a.y + t1*dy}, math.Hypot(dx, dy)*(t1-t0) > 0
}
