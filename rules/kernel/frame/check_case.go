package frame

import (
	"fmt"
)

// checkLoads says what is wrong with the first load of c that does not fit the frame.
func (c *Case) checkLoads(s *Solver) error {
	for i, l := range c.Loads {
		if l.Node < 0 || l.Node >= len(s.nodes) || !finite(l.X, l.Y, l.Couple) {
			return fmt.Errorf("load %d: %v, %v and %v on node %d of %d", i, l.X, l.Y, l.Couple, l.Node, len(s.nodes))
		}
	}
	for i, l := range c.Spread {
		if l.Element < 0 || l.Element >= len(s.members) || !finite(l.X, l.Y) {
			return fmt.Errorf("spread load %d: %v, %v on element %d of %d", i, l.X, l.Y, l.Element, len(s.members))
		}
		if l.Per != PerLength && l.Per != PerProjection {
			return fmt.Errorf("spread load %d has no measure", i)
		}
	}
	return nil
}

// checkSupports does the same for what the case changes of springs and supports.
func (c *Case) checkSupports(s *Solver) error {
	for i, l := range c.Misfits {
		if l.Spring < 0 || l.Spring >= len(s.springs) || !finite(l.Longer) {
			return fmt.Errorf("misfit %d: %v on spring %d of %d", i, l.Longer, l.Spring, len(s.springs))
		}
	}
	for i, l := range c.Settlements {
		if l.Support < 0 || l.Support >= s.supports || !finite(l.By) {
			return fmt.Errorf("settlement %d: %v of support %d of %d", i, l.By, l.Support, s.supports)
		}
	}
	for _, i := range c.Without {
		if i < 0 || i >= len(s.springs) {
			return fmt.Errorf("there is no spring %d to take away", i)
		}
	}
	return nil
}
