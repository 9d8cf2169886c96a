package layout

import (
	"math"
	"slices"
	"sync"

	"dryfit/rules/kernel/curve"
)

// BandSteps is how many straight steps a parallel is drawn in: the area of the
// chords differs from that of the arcs by less than 1e-5. It is even, so that
// the crown is a point.
const BandSteps = 192

// Band is the figure between two parallels of the intrados, from one arc
// length to another. Where it reaches a springing its foot is cut as the spec
// says; past the springing a member that is cut level runs on straight.
func (v Vault) Band(s0, s1, from, to float64) curve.Region {
	t := drawings.Get().(*stretch)
	defer drawings.Put(t)
	return slices.Clone(t.of(v, s0, s1).band(from, to))
}

// drawings have room that is used again.
var drawings = sync.Pool{New: func() any { return new(stretch) }}

// shape is what the bands of a vault come from.
type shape struct {
	intrados  curve.Curve
	arc       float64
	cut       string  // of the feet
	halfAngle float64 // where they are cut level
	span      float64 // where they are cut plumb
}

func (v Vault) shape() shape {
	s := shape{intrados: v.Intrados.Get(), arc: v.Arc.Get(), cut: v.Cut.Get()}
	switch s.cut {
	case "plumb":
		s.span = v.Span.Get()
	case "level":
		s.halfAngle = v.HalfAngle.Get()
	}
	return s
}

// stretch is a part of the arch whose parallels are drawn once for all its bands.
type stretch struct {
	shape  shape
	s0, s1 float64
	within float64     // depth up to which no foot's cut meets it
	brief  bool        // it is weighed only, and not drawn where there is a closed form
	part   curve.Curve // where something is drawn
	drawn  []parallel
	figure curve.Region // the latest band
	feet   footRoom
}

// footRoom is room for what cutting the feet leaves of a figure, on one side each.
type footRoom struct{ left, right curve.Region }

type parallel struct {
	depth float64
	line  curve.Region
}

// of makes the stretch that of a vault, drawn in the place of the one before.
func (t *stretch) of(v Vault, s0, s1 float64) *stretch {
	t.shape = v.shape()
	t.move(s0, s1)
	return t
}

// move makes the stretch another, which is drawn in the place of the one before.
func (t *stretch) move(s0, s1 float64) {
	const usual = 4 // parallels: faces of ribs, reveal and skin
	t.s0, t.s1, t.drawn = s0, s1, slices.Grow(t.drawn[:0], usual)
	t.within = t.shape.within(s0, s1)
}

// moments are the area of a band and its centre.
func (t *stretch) moments(from, to float64) (float64, curve.Point) {
	if t.brief && to < t.within {
		if area, centre, ok := t.shape.intrados.Strip(t.s0, t.s1, from, to); ok {
			return area, centre
		}
	}
	return t.band(from, to).Moments()
}

// within is a depth up to which the feet's cuts leave the parallels of a part of the
// arch as they are: none is further from the intrados than it is deep.
func (v *shape) within(s0, s1 float64) float64 {
	a, b := v.intrados.At(s0), v.intrados.At(s1)
	switch v.cut {
	case "plumb":
		return min(a.Y, v.span-b.Y)
	case "level":
		return min(a.Z, b.Z)
	default:
		return math.Inf(1)
	}
}

// band is [Vault.Band] of the stretch, until the next one is asked for.
func (t *stretch) band(from, to float64) curve.Region {
	inner, outer := t.parallel(from), t.parallel(to)
	r := slices.Grow(t.figure[:0], len(inner)+len(outer))
	r = append(append(r, inner...), outer...)
	slices.Reverse(r[len(inner):])
	t.figure = r
	if to < t.within {
		return r
	}
	return t.shape.cutFeet(&t.feet, r, true, true) // a steep cut reaches past the first stretch
}

// parallel is the one at a depth, for reading only.
func (t *stretch) parallel(depth float64) curve.Region {
	for _, p := range t.drawn {
		if p.depth == depth {
			return p.line
		}
	}
	n := len(t.drawn)
	if n == 0 {
		t.part = t.shape.intrados.Between(t.s0, t.s1)
	}
	t.drawn = slices.Grow(t.drawn, 1)[:n+1] // with the room of a line of the stretch before
	p := &t.drawn[n]
	p.depth, p.line = depth, t.shape.side(p.line[:0], t.part, t.s0, t.s1, depth)
	return p.line
}

// steps are those of a stretch of the arch: BandSteps of one as long as a panel,
// fewer of the short ones that a weight is spread by.
func (v *shape) steps(stretch float64) int {
	const short = 8
	return min(BandSteps, 2*int(math.Ceil(short*BandSteps/2*stretch/v.arc)))
}

// side is one parallel of a part of the intrados, with its ends run on for a
// level cut. It is drawn in the given room, which is empty.
func (v *shape) side(room curve.Region, part curve.Curve, s0, s1, d float64) curve.Region {
	if d != 0 {
		p, err := part.Offset(d)
		if err != nil {
			panic(err) // outward never folds
		}
		part = p
	}
	const corners = 4 // where pieces of the curve meet, and the ends of a level cut
	steps := v.steps(s1 - s0)
	points := part.AppendPolyline(slices.Grow(room, steps+corners), steps)
	if d == 0 || v.cut != "level" {
		return points
	}
	sin, cos := math.Sincos(v.halfAngle)
	run := runOn(d, v.halfAngle)
	if s0 <= 0 {
		p := points[0]
		points = slices.Insert(points, 0, curve.Point{Y: p.Y - run*cos, Z: p.Z - run*sin})
	}
	if s1 >= v.arc {
		p := points[len(points)-1]
		points = append(points, curve.Point{Y: p.Y + run*cos, Z: p.Z - run*sin})
	}
	return points
}

// cutFeet takes off what a plumb or a level cut leaves outside.
func (v Vault) cutFeet(r curve.Region, left, right bool) curve.Region {
	if !left && !right {
		return r
	}
	s := v.shape()
	return s.cutFeet(&footRoom{}, r, left, right)
}

func (v *shape) cutFeet(room *footRoom, r curve.Region, left, right bool) curve.Region {
	switch v.cut {
	case "plumb":
		if left {
			r = r.ClipInto(&room.left, curve.Point{}, curve.Point{Y: 1})
		}
		if right {
			r = r.ClipInto(&room.right, curve.Point{Y: v.span}, curve.Point{Y: -1})
		}
	case "level":
		r = r.ClipInto(&room.left, curve.Point{}, curve.Point{Z: 1})
	}
	return r
}

// FootAt is where along the arc of the intrados a member's foot ends at a depth:
// a plumb cut takes off the more of it the nearer to the back. What a level one
// leaves beyond the springing is not counted.
func (v Vault) FootAt(depth float64) float64 {
	if v.Cut.Get() != "plumb" {
		return 0
	}
	intrados := v.Intrados.Get()
	from, to := 0.0, v.Arc.Get()/2
	for range 60 {
		s := (from + to) / 2
		if intrados.At(s).Y+depth*curve.Normal(intrados.Tangent(s)).Y < 0 {
			from = s
		} else {
			to = s
		}
	}
	return to
}

// block is the rectangle of a rail's section that stands on the intrados at an
// arc length, from a to b along the tangent there and up to a depth.
func (v Vault) block(s, a, b, depth float64) curve.Region {
	intrados := v.Intrados.Get()
	if past := v.pastMitre(s, depth); past > 0 {
		return v.mitred(s, a, b, depth, past)
	}
	at, t := intrados.At(s), intrados.Tangent(s)
	if arc := v.Arc.Get(); s >= arc { // at the right end the last piece's own tangent
		t = intrados.Tangent(math.Nextafter(arc, 0))
	}
	return curve.Region{off(at, t, a, 0), off(at, t, b, 0), off(at, t, b, depth), off(at, t, a, depth)}
}

// Mitred reports whether a rail at an arc length is two halves that meet at a
// pointed crown.
func (v Vault) Mitred(s float64) bool { return v.pastMitre(s, 1) > 0 }

// pastMitre is how far the back of half a rail reaches past its face at a pointed
// crown. A curve's smooth joints turn by round-off.
func (v Vault) pastMitre(s, depth float64) float64 {
	if kink := v.Intrados.Get().Kink(s); kink > spacingSlack {
		return depth * math.Tan(kink)
	}
	return 0
}

// off is the point at x along a tangent and d square to it.
func off(at, t curve.Point, x, d float64) curve.Point {
	n := curve.Normal(t)
	return curve.Point{Y: at.Y + x*t.Y + d*n.Y, Z: at.Z + x*t.Z + d*n.Z}
}

// mitred is the block at a pointed crown: two halves, each square to its own side,
// that meet on the axis. Their backs reach past their faces by what is given.
func (v Vault) mitred(s, a, b, depth, past float64) curve.Region {
	at := v.Intrados.Get().At(s)
	in, out := v.Intrados.Get().Tangents(s)
	r := curve.Region{at}
	if b > 0 {
		r = append(r, off(at, out, b, 0), off(at, out, b, depth))
	}
	r = append(r, off(at, in, past, depth))
	if a < 0 {
		r = append(r, off(at, in, a, depth), off(at, in, a, 0))
	}
	return r
}

// RailSection is the section of the rail at an arc length: whole inside a
// panel, half beside a seam, half and cut with the foot at a springing, and of
// two mitred halves at a pointed crown.
// Left and right say which halves are there.
func (v Vault) RailSection(s float64, rail Member, left, right bool) curve.Region {
	a, b := 0.0, 0.0
	if left {
		a = -rail.Width.Get() / 2
	}
	if right {
		b = rail.Width.Get() / 2
	}
	atLeft, atRight := s <= 0, s >= v.Arc.Get()
	if (atLeft || atRight) && v.Cut.Get() == "level" && v.HalfAngle.Get() > 0 {
		run := v.run(rail.Depth.Get())
		if atLeft {
			a = -run
		}
		if atRight {
			b = run
		}
	}
	return v.cutFeet(v.block(s, a, b, rail.Depth.Get()), atLeft, atRight)
}
