package passage

import (
	"math"

	"dryfit/rules/kernel/passage/space"
)

// Way names a motion.
type Way uint8

// The ways of moving, the plain ones first.
const (
	AlongAxis     Way = iota + 1 // straight along its length
	AlongChord                   // straight along the long side of its section
	AlongRise                    // straight along the short side of its section's box
	AlongOwnChord                // straight, square to the direction in which its section is least wide
	Threaded3                    // along its own curve
	AsHung                       // around a corner with its section upright
	OnFoot                       // with the long side of its section upright
	OnOwnChord                   // with its section's least width upright
	OnEdge                       // with its length upright
	Free                         // turned as need be
)

// Motion is a way through that was followed.
type Motion struct {
	Way    Way
	Margin float64 // clearance all the way, over the wrap, in m
	// Tilted says that neither the length nor the chord stays level or upright,
	// but for a turn in the plane of an opening.
	Tilted bool
	// Depth is the free depth that the motion takes on each side of a wall, from
	// its face; Side is that beside an opening, to one side of it. Both are of
	// the wrapped body, in m.
	Depth, Side float64
	// Climbs says that it is followed from a stair's foot to the floor it leads to.
	Climbs bool
	// Angle is by how much the body is turned in the plane of an opening, in rad.
	Angle float64

	// Follow works the poses out when they are asked for; nil where none are known.
	Follow func() []space.Pose
	// Start is the turn of the first of them, where it can be had without the others.
	Start func() space.Turn
}

// First is the turn at which the motion begins, and false where none is known.
func (m Motion) First() (space.Turn, bool) {
	if m.Start != nil {
		return m.Start(), true
	}
	if poses := m.Poses(); len(poses) > 0 {
		return poses[0].Turn, true
	}
	return space.Turn{}, false
}

// Poses are the stations of the motion, from outside to the end. Between two of
// them the body turns by the short way at an even rate and its origin moves
// straight; it stays free to Drawn of its margin.
func (m Motion) Poses() []space.Pose {
	if m.Follow == nil {
		return nil
	}
	return m.Follow()
}

// Decision is the answer about one leg.
type Decision struct {
	Outcome Outcome
	// Motion is the best way found; of one that does not pass, the plain way
	// that comes nearest, its margin below nothing.
	Motion Motion
	// Others are the plain ways that pass too, whose depth or side may suit a
	// leg better.
	Others []Motion
	Bound  Bound // what proves that no motion exists
	// RanOut says that a search ended because its cells were spent: with more
	// the leg might be decided.
	RanOut bool
}

// Settled is how near a margin is to the best one when a search for it ends, in
// m: half of a tenth of a millimetre.
const Settled = 5e-5

// none is less than any margin.
var none = math.Inf(-1)

// TurnStep is the greatest angle between two poses, in rad: over it a place 4 m
// from the origin leaves the straight line by 0.01 mm.
const TurnStep = 0.004

// Passing is the decision by plain ways of which one passes at least.
func Passing(ways []Motion) Decision {
	at := bestOf(ways)
	d := Decision{Outcome: Passes, Motion: ways[at]}
	for i, m := range ways {
		if m.Margin >= 0 && i != at {
			d.Others = append(d.Others, m)
		}
	}
	return d
}

// Best is the motion of most margin; of those that are equal to Drawn the first
// that passes, or else the first.
func Best(ways []Motion) Motion {
	if at := bestOf(ways); at >= 0 {
		return ways[at]
	}
	return Motion{Margin: none}
}

func bestOf(ways []Motion) int {
	at := -1
	for i, m := range ways {
		if at < 0 || m.Margin > ways[at].Margin+Drawn || m.Margin >= 0 && ways[at].Margin < 0 {
			at = i
		}
	}
	return at
}

// Drawn is the accuracy of a margin that is searched for: a tenth of what a
// drawing shows, in m.
const Drawn = 1e-5
