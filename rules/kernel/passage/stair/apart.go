package stair

import (
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/turns"
)

// apart looks for ways up a stair through cells of turns and areas of its plan.
type apart struct {
	turns.Mesh
	c      *confined
	plan   *plan
	fibres []fibre // of the mesh's cells
	all    []stay
	rooms  int        // that were worked out and not paid
	ways   turns.Ways // to stays
}

// fibre is a cell of turns with what of the plan P may be in at them.
type fibre struct {
	first, stays int
	open         areaSet
	widest       int  // the side over which the body swings furthest
	small        bool // it swings too little for more cuts to tell much
}

// stay is areas of the plan that touch and in which P may be at a cell's turns.
type stay struct {
	cell         int
	areas        areaSet
	around       areaSet // and those that touch them
	best         int     // the area with the most room
	most         float64 // that room at most
	foot, beyond bool
	weight       float64 // how nearly it is ruled out, up to 1; 0 where at the middle turn P may be in it
}

// How the search goes.
const (
	// probesALook is with how many probes the room in an area costs a look of a budget, and
	// roomsOfCell how many rooms what a cell costs besides.
	probesALook = 25
	roomsOfCell = 4
	// leastCuts is how many cells are cut before ways are looked for again, or this share
	// of all.
	leastCuts = 12
	cutShare  = 16
	// doubtShare is the share of the greatest doubt on a way from which cells are cut.
	doubtShare = 0.7
	// leastSwing is how far, in m, the body swings over a cell that is not cut.
	leastSwing = 0.003
	// freeCost is that of going through a stay that is in no doubt.
	freeCost = 0.01
)

// Apart proves, if it can, that no motion takes the body from below a stair's flight to
// above the one that goes on, or along the landing if none does. It ran out where more looks
// of the budget might tell. The landing at a half turn is as wide as both flights, at a
// quarter turn as one.
//
// Method. A cell of turns and an area of the plan are ruled out together if the body leaves
// no room between floor, soffit and walls at any turn of the cell with a place P of it in
// the area. P goes through the plan from one end to the other. If no way through what is not
// ruled out leads from the one to the other, no motion does. On each of the likeliest ways
// that there are the cells that are most nearly ruled out are cut in two. Derived.
func Apart(b *passage.Body, s Stair, budget *passage.Budget) (proven, ranOut bool) {
	if s.Risers < 1 || s.Turn == Half && s.Across < 2*s.Width || s.Turn == Quarter && s.Across < s.Width {
		return false, false
	}
	c := newConfined(b, s)
	if c == nil {
		return false, false
	}
	if budget == nil || budget.Looks <= 0 {
		return false, true
	}
	t := &apart{c: c, plan: s.plan()}
	t.Measure = t.look
	t.Glued = [4]turns.Alike{turns.Same, turns.Same, turns.Same, turns.Same}
	fronts := 4
	if c.even {
		t.Glued, fronts = [4]turns.Alike{turns.Same, turns.Same, turns.HalfZ, turns.HalfZ}, 2
	}
	return t.search(fronts, budget)
}

func (t *apart) search(fronts int, budget *passage.Budget) (proven, ranOut bool) {
	var whole fibre
	for i := range t.plan.count {
		whole.open[i/64] |= 1 << (i % 64)
	}
	for range fronts {
		t.fibres = append(t.fibres, whole)
	}
	free := &passage.Budget{} // cells are paid as rooms
	t.Begin(fronts, turns.FirstCuts, free)
	for {
		cut, through := t.doubtful()
		if len(cut) == 0 || through {
			return !through, false
		}
		for _, i := range cut {
			if t.pay(budget); budget.Looks <= 0 {
				return false, true
			}
			t.Cut(i, t.fibres[i].widest, free)
		}
	}
}

// pay takes off a budget what was looked at since.
func (t *apart) pay(budget *passage.Budget) {
	budget.Looks = max(0, budget.Looks-(t.rooms+roomsOfCell)*(1+len(t.c.at)/probesALook))
	t.rooms = 0
}

// look works out a new cell.
func (t *apart) look(parent int, cell turns.Cube) bool {
	widest, swing := t.c.look(cell)
	f := fibre{first: len(t.all), widest: widest, small: swing < leastSwing}
	open := t.fibres[parent].open
	for _, i := range t.plan.tops {
		t.ask(&f, &open, i, swing)
	}
	f.stays = len(t.all) - f.first
	for k := f.first; k < len(t.all) && !f.small; k++ {
		t.weigh(&t.all[k])
	}
	t.fibres = append(t.fibres, f)
	return f.stays == 0
}

// ask takes an area that is not ruled out at the turns of a cell, or what of it is not. It is
// cut as long as the body swings less than it is wide.
func (t *apart) ask(f *fibre, open *areaSet, i int, swing float64) {
	a := &t.plan.areas[i]
	if !a.least.meets(open) {
		return
	}
	t.rooms++
	most := t.c.most(a.area)
	if most < 0 {
		return
	}
	if len(a.kids) > 0 && a.size() > swing {
		for _, k := range a.kids {
			t.ask(f, open, k, swing)
		}
		return
	}
	t.stay(f, stay{cell: len(t.fibres), areas: a.least, around: a.around, best: i, most: most, foot: a.foot, beyond: a.beyond})
	f.open.add(&a.least)
}

// stay adds one to those of a cell that is looked at, joined with all that it touches.
func (t *apart) stay(f *fibre, s stay) {
	kept := t.all[:f.first]
	for _, o := range t.all[f.first:] {
		if !o.areas.meets(&s.around) {
			kept = append(kept, o)
			continue
		}
		s.areas.add(&o.areas)
		s.around.add(&o.around)
		s.foot, s.beyond = s.foot || o.foot, s.beyond || o.beyond
		if o.most > s.most {
			s.most, s.best = o.most, o.best
		}
	}
	t.all = append(kept, s)
}

// weigh finds how nearly a stay is ruled out.
func (t *apart) weigh(s *stay) {
	t.rooms++
	if at := t.c.inMiddle(t.plan.areas[s.best].area); at < 0 {
		s.weight = -at / (s.most - at)
	}
}

// doubtful are the cells to be cut next, those in most doubt on the ways of least cost from
// the end of the plan beyond the landing to the foot. Where all on a way is too small to be
// cut, there is a way through.
func (t *apart) doubtful() (cells []int, through bool) {
	t.ways.Clear(len(t.all))
	for i := range t.all {
		if s := &t.all[i]; t.Cells[s.cell].Kids == 0 && s.beyond {
			t.ways.Reach(i, -1, freeCost+s.weight)
		}
	}
	atFoot := func(i int) bool { return t.all[i].foot }
	return t.ways.Doubtful(max(leastCuts, len(t.Cells)/cutShare), atFoot, t.goOn, t.inDoubt)
}

// goOn reaches the stays of the cells around that share an area with the end of a way.
func (t *apart) goOn(end turns.WayEnd) {
	s := &t.all[end.Node]
	for _, n := range t.Cells[s.cell].Near {
		f := &t.fibres[n]
		for k := f.first; k < f.first+f.stays; k++ {
			if next := &t.all[k]; s.areas.meets(&next.areas) {
				t.ways.Reach(k, end.Node, end.Cost+freeCost+next.weight)
			}
		}
	}
}

// inDoubt are the cells on the way to a stay that are most nearly ruled out; all that may be
// cut if none is in doubt.
func (t *apart) inDoubt(end int) (cells []int) {
	doubt := 0.0
	for i := range t.ways.Back(end) {
		doubt = max(doubt, t.all[i].weight)
	}
	for i := range t.ways.Back(end) {
		if s := &t.all[i]; !t.fibres[s.cell].small && s.weight >= doubtShare*doubt {
			cells = append(cells, s.cell)
		}
	}
	return cells
}
