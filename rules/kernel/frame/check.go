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

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
