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
	// All sizes grow together by so much at least, in m, until the panel passes, and then
	// less until so much margin is left. The margin of a plain motion grows by
	// marginRate of them at most: 2 − √2 in a corner and half elsewhere.
	growsBy, moreTo = 0.01, 0.001
	marginRate      = 2 - math.Sqrt2
	halvings        = 12
	// narrowing is the cells that a size's bounds are brought together with.
	narrowing = 2000
)

// size is the one that has to grow by the least share.
func (p *panel) size(w walls, d passage.Decision, left *passage.Budget) Size {
	best, least := Size{}, math.Inf(1)
	plain := w.decide(p.body, w.sizes(), nil).Motion.Margin
	take := func(i int, passes float64, m passage.Motion) {
		if share := passes / w.dims[i].is; share < least {
			least = share
			best = Size{Key: w.dims[i].key, Name: w.dims[i].name, Is: w.dims[i].is, Passes: passes, Motion: w.words(m)}
		}
	}
	for i := range w.dims {
		if passes, m, ok := p.grown(w, i, plain, least); ok {
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
		best.More, best.Motion = p.larger(w, plain)
	}
	return best
}

// larger is by how much all sizes have to grow together, to moreTo, where the plain
// motions have a margin as they are.
func (p *panel) larger(w walls, margin float64) (more float64, motion string) {
	decide := func(more float64) passage.Decision {
		sizes := w.sizes()
		for i := range sizes {
			sizes[i] += more
		}
		return w.decide(p.body, sizes, nil)
	}
	var d passage.Decision
	low := 0.0
	for range growths {
		if math.IsInf(margin, 0) {
			return 0, ""
		}
		low, more = more, more+max(2*-margin+grownBy, growsBy)
		if d = decide(more); d.Outcome == passage.Passes {
			break
		}
		margin = d.Motion.Margin
	}
	if d.Outcome != passage.Passes {
		return 0, ""
	}
	for more-low > moreTo && d.Motion.Margin > moreTo {
		less := more - d.Motion.Margin/marginRate
		if less <= low {
			less = (low + more) / 2
		}
		if at := decide(less); at.Outcome == passage.Passes {
			more, d = less, at
		} else {
			low = less
		}
	}
	return more, w.words(d.Motion)
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

// grown makes one size larger by what the nearest plain motion is short of, at first
// by a margin's, until one passes; until that does not matter to the margin, which a
// larger size may also worsen while the panel is in the wall; or until it is most of its
// own, of which a smaller one is known for another size.
func (p *panel) grown(w walls, i int, margin, most float64) (float64, passage.Motion, bool) {
	sizes, last := w.sizes(), math.Inf(-1)
	for range growths {
		if math.Abs(margin-last) <= grownBy/2 || math.IsInf(margin, 0) || sizes[i] > w.dims[i].is+mostGrown {
			break
		}
		last = margin
		sizes[i] += 2*-margin + grownBy
		if sizes[i]/w.dims[i].is >= most {
			break
		}
		d := w.decide(p.body, sizes, nil)
		if d.Outcome == passage.Passes {
			return sizes[i], d.Motion, true
		}
		margin = d.Motion.Margin
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
