package carrying

import (
	"math"

	"dryfit/rules/kernel/passage"
)

// Size is the clear size of a leg that has to change least for the panel to
// pass, and what is known of it.
type Size struct {
	Key  []any  // within the leg; nil where no one size does
	Name string // in words
	Is   float64
	// Impossible is the greatest size, the others as they are, that a bound proves
	// to be too small, 0 where none does; Passes one with which a motion is known,
	// which Motion names.
	Impossible, Passes float64
	Motion             string
	// More is by how much all clear sizes together have to be larger for a motion
	// to be known, where no one of them does.
	More float64
}

// The searches for a size.
const (
	growths   = 20   // how often a size is made larger by what is missing
	grownBy   = 1e-4 // and a tenth of a millimetre
	mostGrown = 6    // m, more than it is
	halvings  = 12
	// narrowing is the cells that a size's bounds are brought together with.
	narrowing = 2000
)

// size is the one that has to grow by the least share.
func (p *panel) size(w walls, d passage.Decision, left *passage.Budget) Size {
	best, least := Size{}, math.Inf(1)
	take := func(i int, passes float64, m passage.Motion) {
		if share := passes / w.dims[i].is; share < least {
			least = share
			best = Size{Key: w.dims[i].key, Name: w.dims[i].name, Is: w.dims[i].is, Passes: passes, Motion: w.words(m)}
		}
	}
	for i := range w.dims {
		if passes, m, ok := p.grown(w, i); ok {
			take(i, passes, m)
		}
		if passes, m, ok := p.threadedBy(w, i, left); ok {
			take(i, passes, m)
		}
	}
	for i := range w.dims {
		if best.Name == w.dims[i].name {
			best.Impossible = p.impossible(w, i, d, best.Passes)
			p.narrow(w, i, &best, left)
		}
	}
	if best.Key == nil {
		best.More, best.Motion = p.larger(w)
	}
	return best
}

// larger is by how much all sizes have to grow together.
func (p *panel) larger(w walls) (more float64, motion string) {
	for range growths {
		sizes := w.sizes()
		for i := range sizes {
			sizes[i] += more
		}
		d := w.decide(p.body, sizes, nil)
		if d.Outcome == passage.Passes {
			return more, w.words(d.Motion)
		}
		if math.IsInf(d.Motion.Margin, 0) {
			break
		}
		more += 2*-d.Motion.Margin + grownBy
	}
	return 0, ""
}

// narrow brings together the size that is impossible and the one that passes.
func (p *panel) narrow(w walls, i int, s *Size, left *passage.Budget) {
	if left == nil || left.Cells < narrowing {
		return
	}
	left.Cells -= narrowing
	share := &passage.Budget{Cells: narrowing}
	sizes, hi := w.sizes(), s.Passes
	for range halvings {
		sizes[i] = (s.Impossible + hi) / 2
		switch d := w.decide(p.body, sizes, share); d.Outcome {
		case passage.Cannot:
			s.Impossible = sizes[i]
		case passage.Passes:
			hi, s.Passes, s.Motion = sizes[i], sizes[i], w.words(d.Motion)
		default:
			hi = sizes[i]
		}
	}
	left.Cells += share.Cells
}

// grown makes one size larger by what the nearest plain motion is short of,
// until one passes.
func (p *panel) grown(w walls, i int) (float64, passage.Motion, bool) {
	sizes, last := w.sizes(), math.Inf(-1)
	for range growths {
		d := w.decide(p.body, sizes, nil)
		if d.Outcome == passage.Passes {
			return sizes[i], d.Motion, true
		}
		if !(d.Motion.Margin > last+grownBy/2) || math.IsInf(d.Motion.Margin, 0) || sizes[i] > w.dims[i].is+mostGrown {
			return 0, passage.Motion{}, false
		}
		last = d.Motion.Margin
		sizes[i] += 2*-d.Motion.Margin + grownBy
	}
	return 0, passage.Motion{}, false
}

// threadedBy makes a size larger by what the motion along the curve is short of.
func (p *panel) threadedBy(w walls, i int, left *passage.Budget) (float64, passage.Motion, bool) {
	if w.threaded == nil {
		return 0, passage.Motion{}, false
	}
	m, ok := w.threaded(p.body, left)
	if !ok || math.IsInf(m.Margin, 0) {
		return 0, passage.Motion{}, false
	}
	sizes := w.sizes()
	sizes[i] += 2*max(0, -m.Margin) + grownBy
	d := w.decide(p.body, sizes, left)
	return sizes[i], d.Motion, d.Outcome == passage.Passes
}

// impossible is the greatest size that is proven to be too small.
func (p *panel) impossible(w walls, i int, d passage.Decision, passes float64) float64 {
	sizes := w.sizes()
	proven := 0.0
	if d.Outcome == passage.Cannot {
		proven = w.dims[i].is
	}
	if w.barred == nil {
		return proven
	}
	lo, hi := proven, passes
	for range 2 * halvings {
		sizes[i] = (lo + hi) / 2
		if w.barred(p.body, sizes) {
			lo = sizes[i]
		} else {
			hi = sizes[i]
		}
	}
	return lo
}
