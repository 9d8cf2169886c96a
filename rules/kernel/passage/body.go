// Package passage has the body that is carried, and the answers whether and how it passes:
// motions, the bounds that prove that there is none, and what searches may spend. It knows
// nothing of walls: the packages below decide openings, corners, cars and stairs. Sizes are
// in m and angles in rad: the searches end at differences in m. All sizes are positive; a
// height may be infinite.
package passage

import (
	"math"
	"sync"

	"dryfit/rules/kernel/passage/space"
)

// Body is what is carried: a straight prism, its section a polygon that may be
// hollow on a side, in a wrap that keeps every point of it from every wall.
// Lengths in m.
type Body struct {
	section  []space.Point // closed, about the middle of its box
	origin   space.Point   // that middle, in the section as it was given
	hull     []space.Point // of the section, anticlockwise
	start    [sectors]uint16
	half     float64 // of the length
	wrap     float64
	diameter float64 // greatest distance of two points, or a little more
	mirrored bool    // the section is its own mirror image, left and right
	wide     float64 // of the section's box
	high     float64
	own      OwnChord

	middle func() []Station // worked out when asked for
	edges  func() *Boundary
	kept   *sync.Map // see Kept
}

// OwnChord is the direction across which the section is least wide.
type OwnChord struct {
	Across float64 // that width, in m
	Along  float64 // the width square to it, in m
	Angle  float64 // from Z to the direction, towards Y, in rad
}

// sectors of direction each know a hull corner that is near the furthest one.
const sectors = 256

// AlikeShare is how near, by the section's size, its two sides are to count as
// mirror images: above round-off, below a micrometre.
const AlikeShare = 1e-7

// NewBody is a section, as the corners of a polygon in the order of its boundary,
// drawn out to a length, in a wrap, all in m. All corners count, but for one within
// 1e-8 m of the one before it. The section has at least three corners that are on
// no line; no corners at all panic.
func NewBody(section []space.Point, length, wrap float64) *Body {
	low, high := space.Box(section)
	b := &Body{
		origin: space.Point{X: (low.X + high.X) / 2, Y: (low.Y + high.Y) / 2}, half: length / 2, wrap: wrap,
		wide: high.X - low.X, high: high.Y - low.Y,
	}
	for _, p := range section {
		if n := len(b.section); n > 0 && (touch(p.Minus(b.origin), b.section[n-1]) || touch(p.Minus(b.origin), b.section[0])) {
			continue
		}
		b.section = append(b.section, p.Minus(b.origin))
	}
	b.hull = space.Hull(b.section)
	b.pointers()
	b.diameter = math.Hypot(math.Hypot(b.wide, b.high), length)
	b.mirrored = b.mirrorImage()
	b.own = b.leastAcross()
	b.middle = sync.OnceValue(b.stations)
	b.edges = sync.OnceValue(b.boundaryTree)
	b.kept = &sync.Map{}
	return b
}

// Length is that of the bare body, in m.
func (b *Body) Length() float64 { return 2 * b.half }

// Diameter is no less than the distance of any two points of the body, in m,
// without its wrap: the diagonal of its box.
func (b *Body) Diameter() float64 { return b.diameter }

// Longest is the longest side of the bare body's box, in m.
func (b *Body) Longest() float64 { return max(b.wide, b.high, 2*b.half) }

// Wrap is what is kept from every wall, in m.
func (b *Body) Wrap() float64 { return b.wrap }

// Wrapped is the same body in another wrap, in m from 0; what was worked out is
// shared.
func (b *Body) Wrapped(wrap float64) *Body {
	c := *b
	c.wrap = wrap
	return &c
}

// Section is the outline as it is carried, about the middle of its box, which
// is the place that a Pose puts somewhere.
func (b *Body) Section() []space.Point { return b.section }

// Hull is the convex hull of the section, anticlockwise.
func (b *Body) Hull() []space.Point { return b.hull }

// Half is half of the length, in m.
func (b *Body) Half() float64 { return b.half }

// Wide is the level side of the section's box, in m.
func (b *Body) Wide() float64 { return b.wide }

// High is the upright side of the section's box, in m.
func (b *Body) High() float64 { return b.high }

// Mirrored reports whether the section is its own mirror image, left and right.
func (b *Body) Mirrored() bool { return b.mirrored }

// Own is the direction across which the section is least wide.
func (b *Body) Own() OwnChord { return b.own }

// Middle is the section's middle line, from one end to the other: nothing where the
// section is no band.
func (b *Body) Middle() []Station { return b.middle() }

// Edges is a tree over the edges of the section.
func (b *Body) Edges() *Boundary { return b.edges() }

// pointers fills the table of furthest corners by direction.
func (b *Body) pointers() {
	k := 0
	for j, p := range b.hull { // the furthest in the first direction, along X
		if p.X > b.hull[k].X {
			k = j
		}
	}
	for i := range sectors {
		t := 4 * float64(i) / sectors
		// The direction whose stand-in is t.
		f := t - math.Floor(t)
		d := [4]space.Point{{X: 1 - f, Y: f}, {X: -f, Y: 1 - f}, {X: f - 1, Y: -f}, {X: f, Y: f - 1}}[int(t)]
		k = b.climb(k, d.X, d.Y)
		b.start[i] = uint16(k)
	}
}

// climb walks the hull, either way round, up to the corner furthest along a
// direction.
func (b *Body) climb(k int, y, z float64) int {
	n := len(b.hull)
	best := b.hull[k].X*y + b.hull[k].Y*z
	for _, step := range [2]int{1, n - 1} {
		for {
			j := k + step
			if j >= n {
				j -= n
			}
			v := b.hull[j].X*y + b.hull[j].Y*z
			if v <= best {
				break
			}
			k, best = j, v
		}
	}
	return k
}

// Furthest is the section's point furthest along a direction.
func (b *Body) Furthest(y, z float64) space.Point {
	k := int(b.start[int(turnOf(y, z)*(sectors/4))&(sectors-1)])
	n := len(b.hull)
	best := b.hull[k].X*y + b.hull[k].Y*z
	for {
		j := k + 1
		if j == n {
			j = 0
		}
		v := b.hull[j].X*y + b.hull[j].Y*z
		if v <= best {
			return b.hull[k]
		}
		k, best = j, v
	}
}

// Reach is the body's point furthest along a direction.
func (b *Body) Reach(e space.Vec) space.Vec {
	p := b.Furthest(e.Y, e.Z)
	return space.Vec{X: math.Copysign(b.half, e.X), Y: p.X, Z: p.Y}
}

// Span is the vector between the two points that make the width along e, which
// is its product with e.
func (b *Body) Span(e space.Vec) space.Vec {
	p, q := b.Furthest(e.Y, e.Z), b.Furthest(-e.Y, -e.Z)
	return space.Vec{X: math.Copysign(2*b.half, e.X), Y: p.X - q.X, Z: p.Y - q.Y}
}

// Width is the extent of the bare body along a unit vector, in m.
func (b *Body) Width(e space.Vec) float64 { return b.Span(e).Dot(e) }

// Across is the extent of the section alone along a direction of length 1, in m.
func (b *Body) Across(y, z float64) float64 {
	p, q := b.Furthest(y, z), b.Furthest(-y, -z)
	return (p.X-q.X)*y + (p.Y-q.Y)*z
}

// mirrorImage reports whether the section is its own left and right mirror
// image: then the partners of its corners run the other way round.
func (b *Body) mirrorImage() bool {
	near := AlikeShare * (b.wide + b.high)
	n := len(b.section)
	partner := func(i, j int) bool {
		p, q := b.section[i], b.section[j]
		return math.Abs(p.X+q.X) <= near && math.Abs(p.Y-q.Y) <= near
	}
next:
	for first := range n {
		if !partner(0, first) {
			continue
		}
		for i := range n {
			if !partner(i, (first-i+n)%n) {
				continue next
			}
		}
		return true
	}
	return false
}

// leastAcross measures the section's least width: an edge of the hull lies on
// one of the two parallels. Source: G. Toussaint, rotating calipers.
func (b *Body) leastAcross() OwnChord {
	least := OwnChord{Across: math.Inf(1)}
	for i, p := range b.hull {
		q := b.hull[(i+1)%len(b.hull)]
		d := q.Minus(p)
		l := math.Hypot(d.X, d.Y)
		if y, z := d.Y/l, -d.X/l; l > 0 {
			if w := b.Across(y, z); w < least.Across-1e-12 {
				least = OwnChord{Across: w, Along: b.Across(z, -y), Angle: math.Atan2(y, z)}
			}
		}
	}
	return least
}

// touch reports whether two corners are one but for round-off: an edge between
// them would point anywhere.
func touch(p, q space.Point) bool { return math.Hypot(p.X-q.X, p.Y-q.Y) < 1e-8 }

// turnOf is an angle's stand-in without trigonometry: it grows with the angle,
// from 0 to 4 in a whole turn.
func turnOf(y, z float64) float64 {
	s := math.Abs(y) + math.Abs(z)
	switch {
	case s == 0:
		return 0
	case y >= 0 && z >= 0:
		return z / s
	case y < 0 && z >= 0:
		return 1 - y/s
	case y < 0:
		return 2 - z/s
	default:
		return 3 + y/s
	}
}

// Chain are places around the section, each no further than a step, in m, from the next.
func (b *Body) Chain(step float64) (out []space.Point) {
	n := len(b.section)
	for i, p := range b.section {
		d := b.section[(i+1)%n].Minus(p)
		k := int(math.Ceil(math.Hypot(d.X, d.Y) / step))
		for j := range k {
			f := float64(j) / float64(k)
			out = append(out, space.Point{X: p.X + f*d.X, Y: p.Y + f*d.Y})
		}
	}
	return out
}

// MiddleAlong is the middle of the body's extent along a direction of length 1, in m.
func (b *Body) MiddleAlong(e space.Vec) float64 {
	return (b.Reach(e).Dot(e) - b.Reach(e.Times(-1)).Dot(e.Times(-1))) / 2
}
