package passage

import "math"

// Bound names what proves that no motion exists.
type Bound uint8

// The bounds.
const (
	WholeBody    Bound = iota + 1 // no way of turning it goes between the walls: all turns were covered
	BarInside                     // a straight bar inside the body does not go through the opening
	SectionCover                  // whichever way it is turned, what is within the wall is larger than the opening
	TurnCover                     // the turns that go in and those that go on are not joined by free ones
	BeyondCover                   // what is beyond the door at some instant does not go into the space behind it
	StairCover                    // at some instant on a stair it is too large for what is between floor, soffit and walls
	StandDown                     // from on edge to hanging it is somewhere higher than the room
)

// String says the bound as a clause.
func (b Bound) String() string {
	switch b {
	case WholeBody:
		return "however it is turned, it is larger than the space between the walls"
	case BarInside:
		return "a straight bar inside it is larger than the opening, however it is turned"
	case SectionCover:
		return "however it is turned, what of it has to be in the opening at one instant is larger than that"
	case TurnCover:
		return "every way of turning it from one corridor into the other is blocked"
	case BeyondCover:
		return "however it is turned in the door, the part of it behind the door is larger than the space there"
	case StairCover:
		return "however it is turned, on its way over the landing it is larger than the space between floor, soffit and walls"
	case StandDown:
		return "between on edge and hanging it is higher than the room"
	default:
		return "no bound"
	}
}

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
	Margin float64 // clearance all the way, over the wrap
	// Tilted says that neither the length nor the chord stays level or upright,
	// but for a turn in the plane of an opening.
	Tilted bool
	// Depth is the free depth that the motion takes on each side of a wall, from
	// its face; Side is that beside an opening, to one side of it. Both are of
	// the wrapped body.
	Depth, Side float64
	// Climbs says that it is followed from a stair's foot to the floor it leads to.
	Climbs bool
	// Angle is by how much the body is turned in the plane of an opening.
	Angle float64

	poses func() []Pose
	first func() Turn // of the poses, where it can be had without them
}

// First is the turn at which the motion begins, and false where none is known.
func (m Motion) First() (Turn, bool) {
	if m.first != nil {
		return m.first(), true
	}
	if poses := m.Poses(); len(poses) > 0 {
		return poses[0].Turn, true
	}
	return Turn{}, false
}

// Poses are the stations of the motion, from outside to the end. Between two of
// them the body turns by the short way at an even rate and its origin moves
// straight; it stays free to drawn of its margin.
func (m Motion) Poses() []Pose {
	if m.poses == nil {
		return nil
	}
	return m.poses()
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

// Budget is the cells that searches may still spend; nil is none. It is not of
// time, so that the same answer comes on every machine.
type Budget struct{ Cells int }

// spend takes n cells, and reports whether there were so many.
func (b *Budget) spend(n int) bool {
	if b == nil || b.Cells < n {
		return false
	}
	b.Cells -= n
	return true
}

// statesACell is how many states of a coarse body cost what one cell of a cover
// does.
const statesACell = 20

// states lends up to so many states for what is left, and takes the cells of those
// that are spent.
func (b *Budget) states(most int, use func(*Budget)) {
	if b == nil {
		use(nil)
		return
	}
	given := min(most, statesACell*b.Cells)
	part := &Budget{Cells: given}
	use(part)
	b.Cells -= (given - part.Cells + statesACell - 1) / statesACell
}

// spent reports whether nothing is left.
func (b *Budget) spent() bool { return b == nil || b.Cells < 8 }

// settled is how near a margin is to the best one when a search for it ends, in
// m: half of a tenth of a millimetre.
const settled = 5e-5

var none = math.Inf(-1)
