package passage

// Outcome is the answer of a search that can prove only so much.
type Outcome uint8

// The outcomes.
const (
	Passes    Outcome = iota + 1 // with a motion that was followed
	Cannot                       // no motion exists, which a bound proves
	Undecided                    // neither could be shown
)

// String says the outcome of something that is carried.
func (o Outcome) String() string {
	switch o {
	case Passes:
		return "passes"
	case Cannot:
		return "does not pass"
	case Undecided:
		return "not decided"
	default:
		return "not tried"
	}
}
