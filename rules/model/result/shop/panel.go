package shop

import (
	"fmt"
	"math"

	"dryfit/rules/model/layout"
)

// Panel is one panel of the vault by the order of raising: the first goes to the end
// wall where the first gap is left, the pieces of an arch from the left.
type Panel struct {
	Number int // from 1
	Along  int // from 0 at the near end, where the last gap is
	Piece  int // of the arch, from 1 at the left
}

// Panels are all of them.
func Panels(c *layout.Ceiling) []Panel {
	var out []Panel
	for i := range c.Panel.Along.Get() {
		for k := range c.Panel.Around.Get() {
			out = append(out, Panel{len(out) + 1, c.Panel.Along.Get() - 1 - i, k + 1})
		}
	}
	return out
}

// Marked is a piece with the mark that it is known by.
type Marked struct {
	Mark                 string // "P2-R1"
	Kind                 layout.PieceKind
	Panel, Piece         int
	Length, Width, Depth float64 // finished
}

// Marks are the marked pieces of the vault.
type Marks struct {
	List []Marked
	Err  error // why there are none
}

// mostMarked are the pieces that are marked; a list of more is read by nobody.
const mostMarked = 100_000

// marks lists ribs, rails and pieces of the skin, panel by panel.
func (s *Shop) marks(c *layout.Ceiling) (out Marks) {
	if n := s.Count.Get().Pieces; n > mostMarked {
		return Marks{Err: fmt.Errorf("not computed: there are %d pieces; the maximum is %d", n, mostMarked)}
	}
	skin := s.SkinPieces.Get() // in the order of the panels
	for _, p := range Panels(c) {
		out.List = append(out.List, p.ribs(c)...)
		out.List = append(out.List, p.rails(c)...)
		for ; len(skin) > 0 && skin[0].Panel == p.Number; skin = skin[1:] {
			one := skin[0]
			out.List = append(out.List, Marked{one.Mark, layout.SkinSheet, p.Number, p.Piece, one.Around, one.Along, c.Skin.Actual()})
		}
	}
	return out
}

// ribs are those of a panel from the near end: halves at its sides, whole at a full
// end of the vault.
func (p Panel) ribs(c *layout.Ceiling) []Marked {
	n := max(0, int(math.Round(c.Panel.Modules.Get()))-1)
	s0, s1 := c.Piece(p.Piece - 1)
	intrados, back := edges(c, s0, s1)
	var out []Marked
	add := func(kind layout.PieceKind, width float64) {
		out = append(out, Marked{
			fmt.Sprintf("P%d-R%d", p.Number, len(out)+1), kind, p.Number, p.Piece,
			math.Max(intrados, back), width, c.Rib.Depth.Get(),
		})
	}
	side := func(end bool) {
		if end && !c.Grid.HalfEnds.Get() {
			add(layout.Rib, c.Rib.Width.Get())
		} else {
			add(layout.HalfRib, c.Rib.Width.Get()/2)
		}
	}
	side(p.Along == 0)
	for range n {
		add(layout.Rib, c.Rib.Width.Get())
	}
	side(p.Along == c.Panel.Along.Get()-1)
	return out
}

// rails are those of a panel from the left foot, bay by bay.
func (p Panel) rails(c *layout.Ceiling) []Marked {
	var out []Marked
	s0, s1 := c.Piece(p.Piece - 1)
	for range p.railBays(c) {
		for _, r := range c.Rails(s0, s1, 1) {
			out = append(out, Marked{
				fmt.Sprintf("P%d-L%d", p.Number, len(out)+1), r.Kind, p.Number, p.Piece, r.Length, r.Width, r.Depth,
			})
		}
	}
	return out
}

// railBays are the bays of a panel; of seams that fall on no rib those that begin in
// it.
func (p Panel) railBays(c *layout.Ceiling) int {
	m := c.Panel.Modules.Get()
	const slack = 1e-9
	first := math.Ceil(float64(p.Along)*m - slack)
	return int(math.Ceil(float64(p.Along+1)*m-slack) - first)
}
