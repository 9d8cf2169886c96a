package draft

import (
	"cmp"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/paper"
)

// Dim is a dimension: level above or below its figure, upright to the left or
// the right of it.
type Dim struct {
	From, To paper.Point
	Side     Side
	Text     string
}

// Dim leaves a dimension of the present figure to be placed.
func (b *Board) Dim(d Dim) { b.figure.dims = append(b.figure.dims, d) }

// The tiers of dimensions, in mm.
const (
	firstTier = 8
	nextTier  = 6.5
	offTier   = 1.5 // of an extension line, from what is measured
	pastTier  = 1.2 // of an extension line, over the dimension line
	tick      = 1   // half of the stroke at the end of a dimension line
)

// laid is a dimension with its tier: across is where its line lies, from and to
// where it begins and ends.
type laid struct {
	Dim
	from, to, across float64
	tier             int
}

func (d Dim) upright() bool { return d.Side == Left || d.Side == Right }

// dimensions lays those of all figures: on each side in tiers, the shorter ones
// nearer. All lines are drawn before any text is, so that no text meets one.
func (b *Board) dimensions() {
	var all []laid
	for _, f := range b.all {
		var of []laid
		for _, side := range []Side{Above, Below, Left, Right} {
			of = append(of, tiers(f, side)...)
		}
		for _, d := range of {
			b.dimLines(d)
			x := boxOf(d.text(0, -overLine)) // the next figure's lie outside of it
			b.figure.extent = b.figure.extent.with(paper.Point{X: x.x0, Y: x.y0}).with(paper.Point{X: x.x1, Y: x.y1})
		}
		all = append(all, of...)
	}
	for _, d := range all {
		b.dimText(d)
	}
}

func tiers(f *figure, side Side) []laid {
	var out []laid
	for _, d := range f.dims {
		if d.Side != side {
			continue
		}
		from, to := d.From.X, d.To.X
		if d.upright() {
			from, to = d.From.Y, d.To.Y
		}
		out = append(out, laid{Dim: d, from: min(from, to), to: max(from, to)})
	}
	slices.SortStableFunc(out, func(a, b laid) int {
		return cmp.Or(cmp.Compare(a.to-a.from, b.to-b.from), cmp.Compare(a.from, b.from))
	})
	const touching = 0.1
	for i := range out {
		d := &out[i]
		taken := func(o laid) bool { return o.tier == d.tier && d.from < o.to-touching && o.from < d.to-touching }
		for slices.ContainsFunc(out[:i], taken) {
			d.tier++
		}
		off := firstTier + nextTier*float64(d.tier)
		d.across = map[Side]float64{Above: f.extent.y0 - off, Below: f.extent.y1 + off, Left: f.extent.x0 - off, Right: f.extent.x1 + off}[side]
	}
	return out
}
