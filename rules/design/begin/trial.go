package begin

import (
	"slices"

	"dryfit/rules/engine"
)

// mostTries bounds the plans that are put through the rules on one grid, and
// mostGrids the grids.
const (
	mostGrids = 3
	mostTries = 40
	// mostReviews bounds the reviews of a search in a room, of which there are several,
	// and enoughReviews those of one that has what passes, and looks for fewer queries.
	mostReviews   = 600
	enoughReviews = 200
)

// search is the first attempt without a hold or a query, or else the nearest.
// Strips that are queried for their radius are taken only where no depth of rib
// has thinner ones, and strips that break never.
func (d *drafter) search() (*attempt, error) {
	best, err := d.try(stiff)
	if err == nil && best != nil && stiff(*best) && !breaks(*best) {
		return d.try(breaks)
	}
	return best, err
}

// try is the search among ribs whose strips and skins bend.
func (d *drafter) try(unbent func(attempt) bool) (*attempt, error) {
	var best *attempt
	stiff := map[float64]bool{}
	grids := d.grids()
	for _, g := range grids[:min(mostGrids, len(grids))] {
		t := &trial{drafter: d, grid: g, unbent: unbent, stiff: stiff, bares: map[float64]attempt{}, best: best}
		if err := t.run(); err != nil || t.done {
			return t.best, err
		}
		best = t.best
	}
	return best, nil
}

// trial is a search on one grid.
type trial struct {
	*drafter
	grid   grid
	unbent func(attempt) bool
	stiff  map[float64]bool    // depths that no strip divides which bends
	bares  map[float64]attempt // ribs by their depth, in the room without straps
	best   *attempt
	done   bool // nothing better is to be had
}

// run tries the plans, until one has no more queries than its rib has by itself, or
// what holds one is what no plan mends.
func (t *trial) run() error {
	for i, p := range t.plans() {
		if i == mostTries || t.spent() {
			return nil
		}
		if t.stiff[p.depth] {
			continue
		}
		bare, err := t.bare(p.depth)
		if err != nil {
			return err
		}
		if t.stiff[p.depth] = t.unbent(bare); t.stiff[p.depth] {
			if t.best == nil {
				t.best = &bare
			}
			continue
		}
		hung, err := t.hang(bare, p)
		if err != nil || t.done {
			return err
		}
		if hopeless, err := t.hopeless(bare, hung); err != nil || hopeless {
			return err
		}
	}
	return nil
}

// spent reports whether a search in a room has taken long enough.
func (t *trial) spent() bool {
	enough := t.best != nil && passes(*t.best) && t.reviews > enoughReviews
	return t.fromRoom() && (enough || t.reviews > mostReviews)
}

// bare is a rib of one depth in the room, without straps.
func (t *trial) bare(depth float64) (attempt, error) {
	if a, ok := t.bares[depth]; ok {
		return a, nil
	}
	c := t.provisional(choice{around: t.grid.around, along: t.grid.along, haunch: t.haunch})
	c.depth, c.strip = depth, t.firstStrip(depth)
	c, err := t.inRoom(c)
	if err != nil {
		return attempt{}, err
	}
	a, err := t.settle(c)
	t.bares[depth] = a
	return a, err
}

// hang puts a rib on its plan's straps. What is queried without them none mends.
func (t *trial) hang(bare attempt, p plan) (attempt, error) {
	c := bare.choice
	c.stations, c.setting = evenly(p.straps), p.setting
	a, err := t.settle(c)
	if err != nil {
		return a, err
	}
	if t.best == nil || a.better(t.best) {
		t.best = &a
	}
	n := a.assessment.Counts
	t.done = n.Held+n.Uncomputed == 0 && n.Queried <= bare.assessment.Counts.Queried
	return a, nil
}

// hopeless reports whether a rule holds a rib without straps, on them, and at its
// deepest: a plan chooses nothing else.
func (t *trial) hopeless(bare, hung attempt) (bool, error) {
	list := both(held(bare), held(hung))
	if len(list) == 0 {
		return false, nil
	}
	deepest, err := t.bare(t.sizes.depths[len(t.sizes.depths)-1])
	if err != nil {
		return false, err
	}
	return len(both(list, held(deepest))) > 0, nil
}

// both lists what is in two lists.
func both(a, b []string) []string {
	return slices.DeleteFunc(slices.Clone(a), func(s string) bool { return !slices.Contains(b, s) })
}

// held lists the rules that hold an attempt.
func held(a attempt) (rules []string) {
	for _, f := range a.assessment.Findings {
		if f.Severity == engine.Hold {
			rules = append(rules, f.Rule.ID)
		}
	}
	return rules
}
