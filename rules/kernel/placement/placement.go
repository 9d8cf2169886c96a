package placement

import (
	"errors"
	"math"
)

// Ends is where an end wall meets each side wall, along the baseline.
type Ends struct{ Left, Right float64 }

// Room is the walls as measured. Left and Right are the distances of the side
// walls from the baseline.
type Room struct {
	Left, Right Course
	Near, Far   Ends
}

// Strip is what is placed. Its far face is square to its axis and stands
// FirstGap from the far wall, at the nearer of its two corners.
type Strip struct {
	Half     float64 // of its width
	Length   float64
	FirstGap float64
}

// Placed is a strip in its place. Its axis is y = A + B·x; the cosine of the skew
// is left out.
type Placed struct {
	A, B        float64 // in m, and m per m
	Near, Far   float64 // ends of the strip along the baseline, at its axis
	Least, Most float64 // gap between a side of the strip and its wall
}

// Y is the axis at x, in m: A + B·x, for any x.
func (p Placed) Y(x float64) float64 { return p.A + p.B*x }

// Gaps are those between the strip's sides and the walls at x, in m, measured
// square to the baseline. A gap below 0 is an overlap.
func (r Room) Gaps(p Placed, s Strip, x float64) (left, right float64) {
	return r.Left.At(x) + p.Y(x) - s.Half, r.Right.At(x) - p.Y(x) - s.Half
}

// Width is the least distance between the side walls on a stretch, in m, measured
// square to the baseline. The least of a sum of two straight courses is at a point
// of one of them.
func (r Room) Width(from, to float64) float64 {
	least := math.Inf(1)
	for _, p := range r.Left.Over(from, to) {
		least = min(least, p.Y+r.Right.At(p.X))
	}
	for _, p := range r.Right.Over(from, to) {
		least = min(least, p.Y+r.Left.At(p.X))
	}
	return least
}

// Corners are where an end wall meets the side walls, y to the right of the
// baseline.
func (r Room) Corners(e Ends) (left, right Reading) {
	return Reading{e.Left, -r.Left.At(e.Left)}, Reading{e.Right, r.Right.At(e.Right)}
}

// wall is an end wall, x = at + slant·y.
type wall struct{ at, slant float64 }

func (r Room) wall(e Ends) wall {
	left, right := r.Corners(e)
	slant := (right.X - left.X) / (right.Y - left.Y)
	return wall{left.X - slant*left.Y, slant}
}

// FirstGaps are from the far wall to the far corners of the strip, along the
// baseline, in m; below 0 the corner is in the wall. The nearer of the two is the
// strip's FirstGap, which settles the place.
func (r Room) FirstGaps(p Placed, s Strip) Ends {
	far := r.wall(r.Far)
	y, turned := p.Y(p.Far), p.B*s.Half
	return Ends{
		Left:  far.at + far.slant*(y-s.Half) - (p.Far + turned),
		Right: far.at + far.slant*(y+s.Half) - (p.Far - turned),
	}
}

// LastGaps are from the near wall to the near corners of the strip, along the
// baseline, in m; below 0 the corner is in the wall, so that the room is too short.
func (r Room) LastGaps(p Placed, s Strip) Ends {
	near := r.wall(r.Near)
	y, turned := p.Y(p.Near), p.B*s.Half
	return Ends{
		Left:  p.Near + turned - (near.at + near.slant*(y-s.Half)),
		Right: p.Near - turned - (near.at + near.slant*(y+s.Half)),
	}
}

// farEnd is where the far face lies on an axis, so that the nearer of its corners
// stands the first gap from the far wall.
func (r Room) farEnd(s Strip, a, b float64) float64 {
	far := r.wall(r.Far)
	corner := math.Abs(far.slant+b) * s.Half
	return (far.at + far.slant*a - corner - s.FirstGap) / (1 - far.slant*b)
}

// ErrUnsettled says that the place of the strip along its axis and the axis did not
// come to agree to Agreed in 60 turns.
var ErrUnsettled = errors.New("the place of the row of panels along its axis does not settle")

// Agreed is how closely the ends of the strip agree with its axis, in m: a
// thousandth of a millimetre, under anything that is measured.
const Agreed = 1e-6

const mostTurns = 60

// settle finds the axis for the ends of the strip, and the ends for the axis,
// until both agree.
func (r Room) settle(s Strip, axis func(on stretch) (a, b float64)) (Placed, error) {
	left, right := r.Corners(r.Far)
	a, b := (left.Y+right.Y)/2, 0.0
	for range mostTurns {
		far := r.farEnd(s, a, b)
		on := r.over(s, far)
		a, b = axis(on)
		if math.Abs(r.farEnd(s, a, b)-far) > Agreed {
			continue
		}
		e := on.at(b)
		return Placed{
			A: a, B: b, Near: far - s.Length, Far: far,
			Least: min(a+e.leftLeast.v, e.rightLeast.v-a), Most: max(a+e.leftMost.v, e.rightMost.v-a),
		}, nil
	}
	return Placed{}, ErrUnsettled
}

// Roomiest is the place of the strip with the greatest least gap on both sides;
// among equals that with the least skew. The gap is below 0 where the strip is too
// wide. Skews are searched from −1 to 1. The error is ErrUnsettled.
//
// Derived: for each skew the best axis lies halfway between the extremes of both
// walls, and what is left is a convex function of the skew made of straight pieces.
func (r Room) Roomiest(s Strip) (Placed, error) { return r.settle(s, stretch.roomiest) }

// SetOut is where a fitter sets the strip out. Of the places whose least gap is at
// least the clearance, in m, it is the one whose greatest gap is least; among
// equals that with the greatest least gap, then that with the least skew, then the
// nearest to the baseline.
//
// Where no place has the clearance and 0.02mm to spare, the least gap is instead
// held within 0.02mm of the greatest that there is, and may be below 0: the caller
// compares Least with its clearance. Skews are searched from −1 to 1. The error is
// ErrUnsettled.
//
// Derived here: a linear programme in the axis and the gap, one over the skew
// alone.
func (r Room) SetOut(s Strip, clearance float64) (Placed, error) {
	return r.settle(s, func(on stretch) (a, b float64) { return on.setOut(clearance) })
}

// Between are the least and the greatest gap on both sides on a stretch from one x
// to another, in m: below 0 where the strip is in a wall. Both are at points of the
// courses, between which gaps change evenly.
func (r Room) Between(p Placed, s Strip, from, to float64) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	for _, side := range []Course{r.Left, r.Right} {
		for _, at := range side.Over(from, to) {
			left, right := r.Gaps(p, s, at.X)
			least, most = min(least, left, right), max(most, left, right)
		}
	}
	return least, most
}
