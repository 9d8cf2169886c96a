package passage

import "math"

// Outcome is the answer of a search that can prove only so much.
type Outcome uint8

// The outcomes.
const (
	Passes    Outcome = iota + 1 // with a motion that was followed
	Jams                         // every motion is cut off somewhere
	Undecided                    // neither could be shown
)

// String says the outcome of something that is carried.
func (o Outcome) String() string {
	switch o {
	case Passes:
		return "passes"
	case Jams:
		return "does not pass"
	case Undecided:
		return "not decided"
	default:
		return "not tried"
	}
}

// Bend is how a plan shape gets around a right-angled turn.
type Bend struct {
	Outcome  Outcome
	From, To float64 // angles of the shape coming in and going on, where it passes
	Margin   float64 // least clearance on the widest way found, of the far wall and of the inner corner
}

// arc is a stretch of angles about a middle one.
type arc struct {
	at, half float64
	corner   float64 // clearance in the corner at the middle
	in, on   float64 // clearance in the corridor coming in and going on
}

// sweep is how finely the angles are cut at first, and how often a stretch that
// is not decided is halved.
const (
	sweepFirst = 128
	sweepDeep  = 6
)

// Around takes any plan shape, as the corners of a polygon, from a corridor of
// width a around a right-angled turn into one of width b. Both corridors are as
// long as need be.
//
// Method. At a fixed angle the shape is freest when it lies hard against both
// outer walls: any other place is nearer to the inner corner. So the search is
// over the angle alone. From one angle to the next no clearance changes by more
// than the shape's diameter by the difference, so that a stretch of angles is
// free, or blocked, beyond doubt where its middle is by more than that. The
// shape passes if it can come in and go on at angles of one unbroken free
// stretch; it jams if it could not even were every doubtful angle free.
func Around(shape []Point, a, b float64) Bend {
	d := diameter(shape)
	var arcs []arc
	for i := range sweepFirst {
		half := math.Pi / sweepFirst
		arcs = cutUp(arcs, shape, a, b, d, arc{at: 2 * half * (float64(i) + 0.5), half: half}, 0)
	}
	if from, to, margin, ok := connected(arcs, d, true); ok {
		return Bend{Passes, from, to, margin}
	}
	if _, _, _, ok := connected(arcs, d, false); ok {
		return Bend{Outcome: Undecided}
	}
	return Bend{Outcome: Jams}
}

// cutUp measures a stretch, and halves it while it is in doubt.
func cutUp(arcs []arc, shape []Point, a, b, d float64, v arc, depth int) []arc {
	v.corner, v.in, v.on = clearances(shape, v.at, a, b)
	doubt := math.Abs(v.corner) <= d*v.half
	near := math.Abs(v.in) <= d*v.half || math.Abs(v.on) <= d*v.half
	if depth == sweepDeep || !doubt && !(near && v.corner > 0) {
		return append(arcs, v)
	}
	half := v.half / 2
	arcs = cutUp(arcs, shape, a, b, d, arc{at: v.at - half, half: half}, depth+1)
	return cutUp(arcs, shape, a, b, d, arc{at: v.at + half, half: half}, depth+1)
}

// CornerClearance is that of the inner corner from a plan shape that is turned by
// an angle and lies hard against both outer walls, as Around has it; below
// nothing where the shape reaches over the corner.
func CornerClearance(shape []Point, angle, a, b float64) float64 {
	corner, _, _ := clearances(shape, angle, a, b)
	return corner
}

// clearances are, at one angle: of the inner corner when the shape lies hard in
// the outer one, and of the far wall in each corridor.
func clearances(shape []Point, angle, a, b float64) (corner, in, on float64) {
	s, c := math.Sincos(angle)
	lowX, lowY := math.Inf(1), math.Inf(1)
	highX, highY := math.Inf(-1), math.Inf(-1)
	turned := func(p Point) Point { return Point{p.X*c - p.Y*s, p.X*s + p.Y*c} }
	for _, p := range shape {
		q := turned(p)
		lowX, highX = min(lowX, q.X), max(highX, q.X)
		lowY, highY = min(lowY, q.Y), max(highY, q.Y)
	}
	corner = math.Inf(1)
	last := turned(shape[len(shape)-1])
	for _, p := range shape {
		q := turned(p)
		corner = min(corner, edgeClearance(Point{a - last.X + lowX, b - last.Y + lowY}, Point{a - q.X + lowX, b - q.Y + lowY}))
		last = q
	}
	return corner, a - (highX - lowX), b - (highY - lowY)
}

// edgeClearance is the least over an edge of the greater of two distances: from
// the line of the inner wall coming in, and of that going on. Where both are
// below nothing the edge is in the wall.
func edgeClearance(p, q Point) float64 {
	m := min(max(p.X, p.Y), max(q.X, q.Y))
	// Where the two distances are equal on the way, their greater one is least.
	dp, dq := p.X-p.Y, q.X-q.Y
	if dp*dq < 0 {
		t := dp / (dp - dq)
		m = min(m, p.X+t*(q.X-p.X))
	}
	return m
}

// connected looks for the widest unbroken run of free stretches, around the whole turn,
// in which the shape fits the corridor coming in at one and that going on at
// another. Sure asks for stretches that are free beyond doubt; else those that
// are not blocked beyond doubt count.
func connected(arcs []arc, d float64, sure bool) (from, to, margin float64, ok bool) {
	slack := func(v arc) float64 {
		if sure {
			return d * v.half
		}
		return -d * v.half
	}
	free := func(v arc) bool { return v.corner > slack(v) }
	n := len(arcs)
	start := 0
	for start < n && free(arcs[start]) {
		start++
	}
	if start == n {
		start = 0 // free all around
	}
	best := math.Inf(-1)
	// The widest way so far from an angle to come in at, and from one to go on at.
	type way struct{ at, margin float64 }
	none := way{margin: math.Inf(-1)}
	in, on := none, none
	through := func(a, b way) {
		if m := min(a.margin, b.margin); m > best {
			best, from, to, ok = m, a.at, b.at, true
		}
	}
	for k := range n + 1 {
		v := arcs[(start+k)%n]
		if k == n || !free(v) {
			in, on = none, none
			continue
		}
		in.margin, on.margin = min(in.margin, v.corner), min(on.margin, v.corner)
		if v.in > slack(v) {
			here := way{v.at, min(v.corner, v.in)}
			through(here, on)
			if here.margin > in.margin {
				in = here
			}
		}
		if v.on > slack(v) {
			here := way{v.at, min(v.corner, v.on)}
			through(in, here)
			if here.margin > on.margin {
				on = here
			}
		}
	}
	return from, to, best, ok
}
