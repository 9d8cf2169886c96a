package paper

import "math"

const (
	// fine is how many steps a millimetre has, of the grid that all places of a
	// sheet are on.
	fine = 1000
	// nudge, in steps, moves the point at which numbers round up away from the
	// middle between two: plain sizes fall there, and would go either way with
	// the last bits of a product, which differ between processors.
	nudge = 1e-6
	// thinnest is the width in mm under which a figure is none.
	thinnest = 0.002
)

// OnGrid is a number of millimetres to a thousandth.
func OnGrid(x float64) float64 { return math.Floor(x*fine+0.5+nudge) / fine }

func (p Point) onGrid() Point { return Point{OnGrid(p.X), OnGrid(p.Y)} }

// Settled is the items with their places on the grid, without points that fall
// together there or at which a figure does not turn, and without figures that
// have no width.
func Settled(items []Item) []Item {
	out := make([]Item, 0, len(items))
	for _, item := range items {
		switch i := item.(type) {
		case Line:
			i.A, i.B = i.A.onGrid(), i.B.onGrid()
			item = i
		case Arc:
			i.C, i.R = i.C.onGrid(), OnGrid(i.R)
			item = i
		case Poly:
			if i.settle(); !i.drawn() {
				continue
			}
			item = i
		case Hatching:
			lines := make([][2]Point, len(i.Lines))
			for k, l := range i.Lines {
				lines[k] = [2]Point{l[0].onGrid(), l[1].onGrid()}
			}
			i.Lines = lines
			item = i
		case Text:
			i.At = i.At.onGrid()
			item = i
		case Group:
			i.Items = Settled(i.Items)
			item = i
		}
		out = append(out, item)
	}
	return out
}

func (p *Poly) settle() {
	var points []Point
	for _, q := range p.Points {
		if q = q.onGrid(); len(points) == 0 || q != points[len(points)-1] {
			points = append(points, q)
		}
	}
	for p.Closed && len(points) > 1 && points[0] == points[len(points)-1] {
		points = points[:len(points)-1]
	}
	p.Points = points
	if p.Closed && p.Tone != Clear {
		p.straighten()
	}
}

// straighten leaves out the corners at which a figure does not turn, which what
// it was cut with has left there.
func (p *Poly) straighten() {
	var kept []Point
	for i, q := range p.Points {
		before := p.Points[(i+len(p.Points)-1)%len(p.Points)]
		if len(kept) > 0 {
			before = kept[len(kept)-1]
		}
		after := p.Points[(i+1)%len(p.Points)]
		chord := Point{after.X - before.X, after.Y - before.Y}
		off := math.Abs(chord.X*(q.Y-before.Y)-chord.Y*(q.X-before.X)) / math.Hypot(chord.X, chord.Y)
		between := (q.X-before.X)*(after.X-q.X)+(q.Y-before.Y)*(after.Y-q.Y) > 0
		if !(off < thinnest/2 && between) {
			kept = append(kept, q)
		}
	}
	p.Points = kept
}

// drawn reports whether anything of the figure is to be seen.
func (p *Poly) drawn() bool {
	if len(p.Points) < 2 {
		return false
	}
	if !p.Closed || p.Tone == Clear {
		return true
	}
	area, around := 0.0, 0.0
	for i, a := range p.Points {
		b := p.Points[(i+1)%len(p.Points)]
		area += (a.X*b.Y - b.X*a.Y) / 2
		around += math.Hypot(b.X-a.X, b.Y-a.Y)
	}
	return math.Abs(area) > thinnest*around/2
}
