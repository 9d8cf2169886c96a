package frame

import "fmt"

// MechanismError says that the frame, or what is left of it when the one-sided
// springs that go slack have gone slack, can move without resistance, or with
// less than the arithmetic can tell from none. It names where that motion shows
// most.
type MechanismError struct {
	Node      int
	Direction Direction
}

// Error names the node by its index in the model.
func (e *MechanismError) Error() string {
	return fmt.Sprintf("node %d moves %v without resistance", e.Node, e.Direction)
}

// UnsettledError says that the one-sided springs kept changing between taut and
// slack.
type UnsettledError struct {
	Spring int // the last one that let go
	Steps  int
}

// Error names the spring by its index in the model.
func (e *UnsettledError) Error() string {
	return fmt.Sprintf("the one-sided springs do not settle in %d steps; spring %d was the last to let go", e.Steps, e.Spring)
}

// ResidualError says that the solution does not balance the loads.
type ResidualError struct {
	Node      int
	Direction Direction
	Share     float64 // of the largest force in the frame
}

// Error names the node by its index in the model.
func (e *ResidualError) Error() string {
	return fmt.Sprintf("node %d is out of balance %v by %.1e of the largest force", e.Node, e.Direction, e.Share)
}
