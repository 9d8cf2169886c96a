package frame

import (
	"fmt"
	"math"
)

// check says what is wrong with the first part of m that cannot be solved as
// written. Ranges are tested so that NaN fails.
func (m *Model) check() error {
	if len(m.Elements) == 0 {
		return fmt.Errorf("the frame has no elements")
	}
	for i, p := range m.Nodes {
		if !finite(p.X, p.Y) {
			return fmt.Errorf("node %d is at %v, %v", i, p.X, p.Y)
		}
	}
	for i, e := range m.Elements {
		if err := m.checkElement(e); err != nil {
			return fmt.Errorf("element %d: %w", i, err)
		}
	}
	held := make(map[Support]int, len(m.Supports))
	for i, s := range m.Supports {
		if err := m.checkNode(s.Node); err != nil {
			return fmt.Errorf("support %d: %w", i, err)
		}
		if s.Direction < AlongX || s.Direction > Turning {
			return fmt.Errorf("support %d has no direction", i)
		}
		if other, twice := held[s]; twice {
			return fmt.Errorf("supports %d and %d both hold node %d %v", other, i, s.Node, s.Direction)
		}
		held[s] = i
	}
	for i, s := range m.Springs {
		if err := m.checkSpring(s); err != nil {
			return fmt.Errorf("spring %d: %w", i, err)
		}
	}
	return nil
}

func (m *Model) checkNode(i int) error {
	if i < 0 || i >= len(m.Nodes) {
		return fmt.Errorf("there is no node %d", i)
	}
	return nil
}

func (m *Model) checkElement(e Element) error {
	for _, node := range []int{e.I, e.J} {
		if err := m.checkNode(node); err != nil {
			return err
		}
	}
	s, i, j := e.Section, m.Nodes[e.I], m.Nodes[e.J]
	switch {
	case !(math.Hypot(j.X-i.X, j.Y-i.Y) > 0):
		return fmt.Errorf("nodes %d and %d are at one place", e.I, e.J)
	case !(s.EA > 0 && finite(s.EA)):
		return fmt.Errorf("EA is %v; it must be positive and finite", s.EA)
	case !(s.EI > 0 && finite(s.EI)):
		return fmt.Errorf("EI is %v; it must be positive and finite", s.EI)
	case !(s.GA > 0):
		return fmt.Errorf("GA is %v; it must be positive, infinite to leave shear strain out", s.GA)
	}
	return nil
}

func (m *Model) checkSpring(s Spring) error {
	if err := m.checkNode(s.Node); err != nil {
		return err
	}
	switch away := math.Hypot(s.Toward.X, s.Toward.Y); {
	case !(away > 0 && finite(away)):
		return fmt.Errorf("it points nowhere")
	case !(s.Stiffness > 0 && finite(s.Stiffness)):
		return fmt.Errorf("its stiffness is %v; it must be positive and finite", s.Stiffness)
	case s.Sense < BothWays || s.Sense > CompressionOnly:
		return fmt.Errorf("it has no sense")
	}
	return nil
}

// check says what is wrong with the first part of c that does not fit the frame.
func (c *Case) check(s *Solver) error {
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
	return c.checkSupports(s)
}

// checkSupports looks at what the case changes of springs and supports.
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

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
