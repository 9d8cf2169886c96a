// Package closing is how the row of panels comes to its last gap: the chain of
// lengths from wall to wall with its tolerances, what the last panel needs to
// slide home, and what is left open at the ends and sides for a moulding to
// hide. Lengths are in m.
package closing

import (
	"math"
	"slices"

	"dryfit/rules/kernel/stack"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/seasons"
	"dryfit/spec/record"
)

// The names of the stack's terms.
const (
	room   = "room length"
	first  = "first gap"
	panels = "panels"
	seams  = "seam gaps"
	growth = "growth of the ribs"
)

// draws are those of every simulation: as many as give the chance to a fifth of
// a percent, from one seed, so that the figure is the same each time.
var draws = stack.Draws{Seed: 1, Count: 10_000}

// Closing is the end of the row and its sides.
type Closing struct {
	// Projection is how far the last panel stands off before it slides home:
	// that of its neighbour's tenons. Nothing where it drops in, or has none.
	Projection layout.Number
	Sides      Sides
	Line       record.Value[Line]
	ends       record.Value[*Ends]
}

// Ends are those of the row; there are none where the spec does not give the
// first gap.
func (k *Closing) Ends() (*Ends, bool) {
	e := k.ends.Get()
	return e, e != nil
}

// Ends are the gaps at the end walls.
type Ends struct {
	Stack record.Value[stack.Stack] // of the last gap
	First layout.Number
	// Growth is that of all rib widths since the shop, in the state in which they
	// are widest of those that the panels may be hung in.
	Growth seasons.Figure
	// The last gap as designed, at its least, and at its most: open to the dry
	// season's shrinkage too.
	Last, Least layout.Number // the least as the panels are hung, all lengths at the worse end of their tolerance
	Most        seasons.Figure
	Spread      layout.Number // what the last gap may be off by root sum square
	// Odds are drawn where the worst case does not decide.
	Odds record.Value[Odds]
}

// Sides are the gaps beside the vault's feet, on each side, the vault in the
// middle of the room.
type Sides struct {
	Least layout.Number  // of the panel at its widest in the room at its tightest, as built
	Most  seasons.Figure // of the panel at its narrowest in the room at its widest, the feet drawn in by the season that draws them most
}

// Line is how far the last seam may lie off the coffer grid, by what the panels
// and seams before it deviate.
type Line struct {
	Seams    int
	ByChance float64 // root sum square
	Alike    float64 // with all panels off by the same, as off one form
	Worst    float64
}

// asMade reports whether the wood is hung as the shop made it, and has not grown.
func asMade(c *layout.Ceiling) bool { return slices.Equal(c.Strap.Hung.Get(), []string{"shop"}) }

// grows is the growth of all rib widths until the panels are hung.
func grows(c *layout.Ceiling, s *seasons.Seasons) seasons.Change {
	if asMade(c) {
		return seasons.Change{}
	}
	most := seasons.Change{Value: math.Inf(-1)}
	for _, state := range c.Strap.Hung.Get() {
		along := s.In(state).Along.Get()
		if along.Err != nil {
			return seasons.Change{Err: along.Err}
		}
		most.Value = math.Max(most.Value, along.Value)
	}
	return most
}

// Of is the closing of a ceiling.
func Of(c *layout.Ceiling, s *seasons.Seasons) *Closing {
	out := &Closing{Sides: sides(c, s), Line: layout.Derive(c, func() Line { return line(c) })}
	out.Projection = c.Number("close.projection", func() float64 {
		if c.Seam.Count.Get() > 0 && c.Close.Last.Get() == "slide" {
			return c.Seam.Tenon.Length.Get() / 2
		}
		return 0
	})
	all := ends(c, s, out.Projection)
	out.ends = layout.Derive(c, func() *Ends {
		if !c.Close.FirstGap.Given() {
			return nil
		}
		return all
	})
	return out
}

func ends(c *layout.Ceiling, s *seasons.Seasons, need layout.Number) *Ends {
	e := &Ends{First: c.Close.FirstGap, Growth: layout.Derive(c, func() seasons.Change { return grows(c, s) })}
	off := layout.Derive(c, func() stack.Stack { return deviations(c) })
	worst := layout.Derive(c, func() float64 { return off.Get().Worst() })
	e.Spread = c.Number("close.spread", func() float64 { return off.Get().RootSumSquare() })
	e.Stack = layout.Derive(c, func() stack.Stack {
		chain := slices.Clone(off.Get())
		// Panels may differ in length at the ends, and the mean of them does for a sum.
		each := c.Vault.Length.Get() / float64(c.Panel.Along.Get())
		for i, nominal := range []float64{c.Room.Length.Get(), c.Close.FirstGap.Get(), each, c.Seam.Gap.Get()} {
			chain[i].Nominal = nominal
		}
		if by := e.Growth.Get().Value; by != 0 {
			chain = append(chain, stack.Term{Name: growth, Sense: -1, Count: 1, Nominal: by, Shape: stack.Normal})
		}
		return chain
	})
	e.Last = c.Number("close.last-gap", func() float64 {
		return c.Room.Length.Get() - c.Close.FirstGap.Get() - c.BuiltLength()
	})
	e.Least = c.Number("close.last-gap.least", func() float64 { return e.Last.Get() - e.Growth.Get().Value - worst.Get() })
	e.Most = layout.Derive(c, func() seasons.Change {
		shrinks := s.Dry.Along.Get()
		return seasons.Change{Value: e.Last.Get() + worst.Get() + math.Max(0, -shrinks.Value), Err: shrinks.Err}
	})
	e.Odds = layout.Derive(c, func() Odds { return e.draw(need.Get(), worst.Get()) })
	return e
}

// deviations are the terms of the chain from wall to wall, with their tolerances
// and without their lengths.
func deviations(c *layout.Ceiling) stack.Stack {
	return append(stack.Stack{
		{Name: room, Sense: 1, Count: 1, Tolerance: c.Room.Tolerance.Get(), Shape: stack.Normal},
		{Name: first, Sense: -1, Count: 1, Shape: stack.Normal},
	}, Row(c, c.Panel.Along.Get())...)
}

// Row is a number of panels and the seams between all of them, as deviations in m:
// their tolerances without their lengths, since the lengths are the designer's and
// only the deviations vary.
func Row(c *layout.Ceiling, n int) stack.Stack {
	return stack.Stack{
		{Name: panels, Sense: -1, Count: n, Tolerance: c.Panel.Tolerance.Get(), Shape: stack.Normal},
		{Name: seams, Sense: -1, Count: c.Seam.Count.Get(), Tolerance: c.Seam.Tolerance.Get(), Shape: stack.Normal},
	}
}

func sides(c *layout.Ceiling, s *seasons.Seasons) Sides {
	return Sides{Least: c.Number("panel.side-gap", c.SideGap), Most: layout.Derive(c, func() seasons.Change {
		widest := c.WidestSideGap()
		most := seasons.Change{Value: widest}
		for _, season := range []seasons.Season{s.Dry, s.Wet} {
			foot := season.Foot.Get()
			if foot.Err != nil {
				most.Err = foot.Err
			}
			most.Value = math.Max(most.Value, widest-foot.Value)
		}
		return most
	})}
}

func line(c *layout.Ceiling) Line {
	n := c.Seam.Count.Get()
	before := Row(c, n)
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

// draw draws the odds of a length that is needed.
func (e *Ends) draw(need, worst float64) Odds {
	switch {
	case e.Least.Get() >= need:
		return Odds{Decided: true, ByChance: stack.Chance{Share: 1}, Alike: stack.Chance{Share: 1}}
	case e.Least.Get()+2*worst < need:
		return Odds{Decided: true}
	}
	chain := e.Stack.Get()
	return Odds{ByChance: chain.AtLeast(need, draws), Alike: chain.Alike(panels).AtLeast(need, draws)}
}
