// Package closing is how the row of panels comes to its last gap: the chain of
// lengths from wall to wall with its tolerances, what the last panel needs to
// slide home, and what is left open at the ends and sides for a moulding to
// hide. Lengths are in m.
package closing

import (
	"math"

	"dryfit/rules/kernel/stack"
	"dryfit/rules/layout"
	"dryfit/rules/result/seasons"
)

// The names of the stack's terms.
const (
	room   = "room length"
	first  = "first gap"
	panels = "panels"
	seams  = "seam gaps"
)

// draws are those of every simulation: as many as give the chance to a fifth of
// a percent, from one seed, so that the figure is the same each time.
var draws = stack.Draws{Seed: 1, Count: 10_000}

// Closing is the end of the row and its sides.
type Closing struct {
	// Projection is how far the last panel stands off before it slides home:
	// that of its neighbour's tenons. Nothing where it drops in, or has none.
	Projection float64
	Ends       *Ends // nil where the spec does not give the first gap
	Sides      Sides
	Line       Line
}

// Ends are the gaps at the end walls.
type Ends struct {
	Stack stack.Stack // of the last gap
	First float64
	// The last gap as designed, at its least, and at its most: open to the dry
	// season's shrinkage too.
	Last, Least float64
	Most        seasons.Change

	need float64
	odds *Odds
}

// Sides are the gaps beside the vault's feet, on each side, the vault in the
// middle of the room.
type Sides struct {
	Least float64        // of the panel at its widest in the room at its tightest, as built
	Most  seasons.Change // of the panel at its narrowest in the room at its widest, the feet drawn in by the season that draws them most
}

// Line is how far the last seam may lie off the coffer grid, by what the panels
// and seams before it deviate.
type Line struct {
	Seams    int
	ByChance float64 // root sum square
	Alike    float64 // with all panels off by the same, as off one form
	Worst    float64
}

// Of works out the closing of a ceiling.
func Of(c *layout.Ceiling, s *seasons.Seasons) *Closing {
	out := &Closing{Sides: sides(c, s), Line: line(c)}
	if c.Seam.Count > 0 && c.Spec.Close.Last == "slide" {
		out.Projection = c.Seam.Tenon.Length / 2
	}
	if g := c.Spec.Close.FirstGap; g != nil {
		out.Ends = ends(c, s, float64(*g), out.Projection)
	}
	return out
}

func ends(c *layout.Ceiling, s *seasons.Seasons, gap, need float64) *Ends {
	chain := stack.Stack{
		{Name: room, Sense: 1, Count: 1, Nominal: float64(c.Spec.Room.Length), Tolerance: float64(*c.Spec.Room.Tolerance), Shape: stack.Normal},
		{Name: first, Sense: -1, Count: 1, Nominal: gap, Shape: stack.Normal},
		panelTerm(c, c.Panel.Along),
		seamTerm(c),
	}
	e := &Ends{Stack: chain, First: gap, Last: chain.Nominal(), need: need}
	e.Least = e.Last - chain.Worst()
	shrinks := s.Dry.Along
	e.Most = seasons.Change{Value: e.Last + chain.Worst() + math.Max(0, -shrinks.Value), Err: shrinks.Err}
	return e
}

// panelTerm is a number of panels: their lengths may differ at the ends, and the
// mean of them does for a sum.
func panelTerm(c *layout.Ceiling, n int) stack.Term {
	return stack.Term{
		Name: panels, Sense: -1, Count: n, Nominal: c.Vault.Length / float64(c.Panel.Along),
		Tolerance: c.Panel.Tolerance, Shape: stack.Normal,
	}
}

func seamTerm(c *layout.Ceiling) stack.Term {
	return stack.Term{
		Name: seams, Sense: -1, Count: c.Seam.Count, Nominal: c.Seam.Gap,
		Tolerance: float64(*c.Spec.Seam.Tolerance), Shape: stack.Normal,
	}
}

func sides(c *layout.Ceiling, s *seasons.Seasons) Sides {
	widest := c.WidestSideGap()
	out := Sides{Least: c.SideGap(), Most: seasons.Change{Value: widest}}
	for _, season := range []seasons.Season{s.Dry, s.Wet} {
		if season.Foot.Err != nil {
			out.Most.Err = season.Foot.Err
		}
		out.Most.Value = math.Max(out.Most.Value, widest-season.Foot.Value)
	}
	return out
}

func line(c *layout.Ceiling) Line {
	n := c.Seam.Count
	before := stack.Stack{panelTerm(c, n), seamTerm(c)}
	return Line{
		Seams: n, ByChance: before.RootSumSquare(), Alike: before.Alike(panels).RootSumSquare(), Worst: before.Worst(),
	}
}

// Odds are the chances that the last panel has the room to stand off.
type Odds struct {
	// Decided is set where the worst case decides already, and nothing is drawn:
	// both chances are then 0 or 1.
	Decided  bool
	ByChance stack.Chance // every length for itself
	Alike    stack.Chance // all panels off by the same, as off one form
}

// Odds are drawn once, where the worst case does not decide.
func (e *Ends) Odds() Odds {
	if e.odds != nil {
		return *e.odds
	}
	switch {
	case e.Least >= e.need:
		e.odds = &Odds{Decided: true, ByChance: stack.Chance{Share: 1}, Alike: stack.Chance{Share: 1}}
	case e.Last+e.Stack.Worst() < e.need:
		e.odds = &Odds{Decided: true}
	default:
		e.odds = &Odds{ByChance: e.Stack.AtLeast(e.need, draws), Alike: e.Stack.Alike(panels).AtLeast(e.need, draws)}
	}
	return *e.odds
}
