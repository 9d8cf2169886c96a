package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Station is a place on the section's middle line.
type Station struct{ At, Tangent space.Point }

// sharp is the sine of the least corner that ends a side: above the steps in
// which a curve is drawn, below the corners of a foot.
const sharp = 0.06

// stations is the middle line of a band: half way between each place of one of
// its long sides and the boundary opposite. A side runs from one sharp corner
// outward to the next; along the hollow side there is none.
func (b *Body) stations() []Station {
	n := len(b.section)
	orient := math.Copysign(1, space.SignedArea(b.section))
	direction := func(i int) (space.Point, float64) {
		d := b.section[(i+1)%n].Minus(b.section[i%n])
		l := math.Hypot(d.X, d.Y)
		return space.Point{X: d.X / l, Y: d.Y / l}, l
	}
	first, longest := 0, 0.0
	for i := range n {
		before, _ := direction(i + n - 1)
		d, l := direction(i)
		if space.Cross(before, d)*orient <= sharp {
			continue
		}
		for k := i + 1; k < i+n; k++ {
			next, step := direction(k)
			if space.Cross(d, next)*orient > sharp {
				break
			}
			d, l = next, l+step
		}
		if l > longest {
			first, longest = i, l
		}
	}
	var out []Station
	for l, k := 0.0, first; l < longest-1e-9; k++ {
		d, step := direction(k)
		p, q := b.section[k%n], b.section[(k+1)%n]
		at := space.Point{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2}
		inward := space.Point{X: -d.Y * orient, Y: d.X * orient}
		if t := b.opposite(at, inward); !math.IsInf(t, 1) {
			out = append(out, Station{space.Point{X: at.X + inward.X*t/2, Y: at.Y + inward.Y*t/2}, d})
		}
		l += step
	}
	return out
}

// opposite is how far it is from a place of the boundary straight to the other
// side. It leaves out the nodes of the boundary's tree that the line misses.
func (b *Body) opposite(at, dir space.Point) float64 {
	least, tree, line := math.Inf(1), b.Edges().Nodes, space.Cross(dir, at)
	var room [64]int // more than the tree is deep
	for open := append(room[:0], 0); len(open) > 0; {
		i := open[len(open)-1]
		open = open[:len(open)-1]
		node := &tree[i]
		if off := space.Cross(dir, node.Centre) - line; math.Abs(off) > node.Radius+touching {
			continue
		}
		if node.Second > 0 {
			open = append(open, node.Second, i+1)
			continue
		}
		for e := node.From; e < node.To; e++ {
			p, q := b.section[e%len(b.section)], b.section[(e+1)%len(b.section)]
			u, v := space.Cross(dir, p)-line, space.Cross(dir, q)-line
			if u*v > 0 || u == v {
				continue
			}
			from, to := space.Dot(dir, p.Minus(at)), space.Dot(dir, q.Minus(at))
			if t := from + u/(u-v)*(to-from); t > touching {
				least = min(least, t)
			}
		}
	}
	return least
}

// touching is how near a place is, in m, to be on the boundary itself.
const touching = 1e-6

// ClearHeight is that of the section, in m, over a length l of the tangent about a
// station; 0 where the tangent leaves the section.
func (b *Body) ClearHeight(m Station, l float64) float64 {
	up, down := math.Inf(1), math.Inf(1)
	normal := space.Point{X: -m.Tangent.Y, Y: m.Tangent.X}
	n := len(b.section)
	last := b.section[n-1].Minus(m.At)
	x0, y0 := space.Dot(last, m.Tangent), space.Dot(last, normal)
	for _, p := range b.section {
		q := p.Minus(m.At)
		x1, y1 := space.Dot(q, m.Tangent), space.Dot(q, normal)
		if lo, hi, ok := space.Clip(x0, y0, x1, y1, l/2); ok {
			switch {
			case lo > 0:
				up = min(up, lo)
			case hi < 0:
				down = min(down, -hi)
			default:
				return 0
			}
		}
		x0, y0 = x1, y1
	}
	if math.IsInf(up, 1) || math.IsInf(down, 1) {
		return 0
	}
	return up + down
}
