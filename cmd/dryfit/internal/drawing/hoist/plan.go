package hoist

import (
	"math"
	"slices"
	"strconv"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/rules/kernel/curve"
)

func number(i int) string { return strconv.Itoa(i + 1) }

// plan draws the panel in the room from above, the near end at the bottom, with the
// people and what is kept clear. The view's origin is its upper left corner.
func (d drawer) plan(v draft.View) {
	from, to := d.window(d.f)
	d.name(v.At(0, 0), "plan")
	of := draft.View{Scale: v.Scale, Origin: v.At(d.side(), -to)}
	d.walls(of, from, to)
	d.regions(of, within(d.f.HungPlan, from, to), paper.Clear, pen.Beyond)
	d.keepClear(of, from, to)
	d.regions(of, d.f.GhostPlan, paper.Clear, pen.Hidden)
	d.regions(of, d.f.Plan, paper.Paper+3, pen.Bold)
	d.mass(of.At(d.f.Centre.Across, d.f.Centre.Along))
	for _, f := range d.f.Forks {
		at := of.At(f.Across, d.f.Centre.Along)
		d.b.Line(paper.Point{X: at.X - forkWide, Y: at.Y}, paper.Point{X: at.X + forkWide, Y: at.Y}, pen.Cut)
	}
	d.people(of)
}

// within are figures as far as a plan goes along the room.
func within(list []curve.Region, from, to float64) (out []curve.Region) {
	for _, r := range list {
		low, high := r.Bounds()
		if high.Z <= from || low.Z >= to {
			continue
		}
		part := slices.Clone(r)
		for i, p := range part {
			part[i].Z = min(max(p.Z, from), to)
		}
		out = append(out, part)
	}
	return out
}

// walls draws the side walls as far as the plan goes, and an end wall where it reaches one.
func (d drawer) walls(v draft.View, from, to float64) {
	left, right := -d.side(), d.c.Vault.Span.Get()+d.side()
	for _, y := range []float64{left, right} {
		d.b.Line(v.At(y, from), v.At(y, to), pen.Edge)
	}
	for _, x := range []float64{0, d.c.Room.Length.Get()} {
		if x >= from && x <= to {
			d.b.Line(v.At(left, x), v.At(right, x), pen.Cut)
		}
	}
}

// box is an upright rectangle on paper.
type box struct{ x0, y0, x1, y1 float64 }

// keepClear hatches what is kept clear, as far as the walls, but for the panel and the
// people.
func (d drawer) keepClear(v draft.View, from, to float64) {
	low, high := extent(d.f.Plan)
	left, right := -d.side(), d.c.Vault.Span.Get()+d.side()
	a := v.At(max(left, low.Y-d.f.Top), max(0, from, low.Z-d.f.Top))
	b := v.At(min(right, high.Y+d.f.Top), min(d.c.Room.Length.Get(), to, high.Z+d.f.Top))
	zone := box{a.X, b.Y, b.X, a.Y}
	p, q := v.At(low.Y, low.Z), v.At(high.Y, high.Z)
	holes := []box{{p.X, q.Y, q.X, p.Y}}
	for _, person := range d.f.People.At {
		at := v.At(person.Y, person.Z)
		holes = append(holes, box{at.X - dotRoom, at.Y - dotRoom, at.X + dotRoom, at.Y + dotRoom})
	}
	d.b.In("keep-clear", func() { d.hatch(zone, holes) })
}

// hatchApart is between two lines of hatching, in mm.
const hatchApart = 2.5

// hatch draws lines that rise to the right through a box, but not through holes.
func (d drawer) hatch(zone box, holes []box) {
	high := zone.y1 - zone.y0
	for x := zone.x0 - high + hatchApart; x < zone.x1; x += hatchApart {
		// The line is (x + t, zone.y1 − t) for t from 0 to the zone's height.
		from, to := max(0, zone.x0-x), min(high, zone.x1-x)
		for _, s := range spared(from, to, x, zone.y1, holes) {
			d.b.Line(paper.Point{X: x + s[0], Y: zone.y1 - s[0]}, paper.Point{X: x + s[1], Y: zone.y1 - s[1]}, pen.Hair)
		}
	}
}

// spared are the parts of such a line, between two values of t, outside all holes.
func spared(from, to, x, y float64, holes []box) [][2]float64 {
	left := [][2]float64{{from, to}}
	for _, h := range holes {
		in := [2]float64{max(h.x0-x, y-h.y1), min(h.x1-x, y-h.y0)}
		if in[0] >= in[1] {
			continue
		}
		var next [][2]float64
		for _, s := range left {
			next = append(next, [2]float64{s[0], min(s[1], in[0])}, [2]float64{max(s[0], in[1]), s[1]})
		}
		left = left[:0]
		for _, s := range next {
			if s[1]-s[0] > 0.05 {
				left = append(left, s)
			}
		}
	}
	return left
}

// A person is a dot with a number in it; where two would meet, a plain one, or none. In
// mm.
const (
	dotSize = 2.7
	dotRoom = 3.2 // half of what is left free of hatching around it
	plain   = 0.7
)

// people draws those who are named.
func (d drawer) people(v draft.View) {
	var drawn []dot
	for i, p := range d.f.People.At {
		next := dot{v.At(p.Y, p.Z), dotSize}
		if d.onLine(v, next.at) || slices.ContainsFunc(drawn, next.meets) {
			next.size = plain
		}
		if slices.ContainsFunc(drawn, next.meets) {
			continue
		}
		drawn = append(drawn, next)
		d.shown("crew", paper.Point{X: next.at.X, Y: next.at.Y + next.size}) // a leader from its middle would meet the number
		d.b.Arc(paper.Arc{C: next.at, R: next.size, To: 2 * math.Pi, Stroke: pen.Edge})
		if next.size == dotSize {
			d.b.Write(paper.Text{At: paper.Point{X: next.at.X, Y: next.at.Y + draft.Ordinary/2}, Height: draft.Ordinary, Anchor: paper.Middle, Text: number(i)})
		}
	}
}

// dot is a person as drawn.
type dot struct {
	at   paper.Point
	size float64
}

// meets reports whether two are less apart than the eye parts them.
func (p dot) meets(q dot) bool {
	return math.Hypot(p.at.X-q.at.X, p.at.Y-q.at.Y) < p.size+q.size+plain
}

// onLine reports whether a number at a place would meet a wall or the panel's edge.
func (d drawer) onLine(v draft.View, at paper.Point) bool {
	low, high := extent(d.f.Plan, d.f.GhostPlan)
	for _, along := range []float64{0, d.c.Room.Length.Get(), low.Z, high.Z} {
		if math.Abs(v.At(0, along).Y-at.Y) < draft.Ordinary {
			return true
		}
	}
	return min(at.X-v.At(-d.side(), 0).X, v.At(d.c.Vault.Span.Get()+d.side(), 0).X-at.X) < draft.Ordinary
}
