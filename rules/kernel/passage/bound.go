package passage

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
	StairApart                    // no way of turning it leads from below a stair's flight to above the one that goes on
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
		return "however it is turned, the part of it in the opening at one instant is larger than the opening"
	case TurnCover:
		return "every way of turning it from one corridor into the other is blocked"
	case BeyondCover:
		return "however it is turned in the door, the part of it behind the door is larger than the space there"
	case StairCover:
		return "however it is turned, at one place on the stair it is larger than the space between floor, soffit and walls"
	case StairApart:
		return "every way of turning it on the way up the stair is blocked"
	case StandDown:
		return "between on edge and hanging it is higher than the room"
	default:
		return "no bound"
	}
}
