package hanging

import (
	"math"
	"slices"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/kernel/timber"
)

// creep is what the load of years adds to the sag of the first day: solid
// timber in a heated building, EN 1995-1-1, k_def of service class 1, read on a
// page that reprints it.
const creep = 0.6

// slackShare is the share of the rib's weight below which a strap's force is
// roundoff and the strap is slack.
const slackShare = 1e-6

// read takes a solved case out of the solver's summary.
func (r *runner) read(a acts) Case {
	nodes, straps := len(r.rib.nodes), len(r.rib.straps)
	shown := 0 // nodes of a case whose shape is asked for: as hung, or with one strap set
	if len(a.misfits) <= 1 {
		shown = nodes
	}
	room := make([]float64, straps+len(r.rib.lifts)+len(r.brief.Supports)+shown) // of all lists
	take := func(n int) (part []float64) {
		part, room = room[:n:n], room[n:]
		return part
	}
	c := Case{supports: take(len(r.brief.Supports)), drops: take(shown)}
	copy(c.supports, r.brief.Supports)
	if straps > 0 {
		c.Straps, c.Slack = take(straps)[:0], make([]bool, 0, straps)
	}
	lifts := take(len(r.rib.lifts))[:0]
	clear(r.held)
	for i, s := range r.brief.Springs {
		switch r.rib.kinds[i] {
		case strapKind:
			c.Straps = append(c.Straps, s.Force)
			c.Slack = append(c.Slack, s.Slack || s.Force <= slackShare*r.rib.weight)
		case liftKind:
			if !slices.Contains(a.without, i) {
				lifts = append(lifts, -s.Force)
			}
		}
		if s.Force != 0 {
			r.held[r.sprung[i]] = true
		}
	}
	if len(lifts) > 0 {
		c.Lifts = slices.Clip(lifts) // so that who adds to it leaves what is kept
	}
	c.Feet = (r.brief.X[nodes-1] - r.brief.X[0]) / 2
	r.drops = r.drops[:0]
	for _, y := range r.brief.Y {
		r.drops = append(r.drops, -y)
	}
	copy(c.drops, r.drops)
	r.stresses(&c)
	c.Sag, c.ByRun = r.sags(r.drops, r.held)
	c.Margin = r.balance()
	return c
}

// stresses looks at both ends of every element.
func (r *runner) stresses(c *Case) {
	s, left := &r.rib.section, r.rib.section.left != r.rib.section.whole
	whole, most := 0.0, 0.0
	opens, moment, curved := 0.0, 0.0, 1.0 // what pulls the layers apart the most: a moment that flattens a curve
	moments, bends := r.brief.M, r.rib.bends
	for end, force := range r.brief.N { // comparing without max, which costs more for the sake of what is no number
		m := moments[end]
		if size := math.Abs(m); size > most {
			most = size
		}
		if stress := s.whole.stress(force, m); stress > whole {
			whole = stress
		}
		if left {
			c.joint = max(c.joint, s.left.stress(force, m))
		}
		if opening := m * bends[end]; opening > opens {
			opens, moment, curved = opening, m, bends[end]
		}
	}
	c.Moment, c.whole = most, whole
	c.Radial = timber.RadialStress(moment, 1/curved, s.width, s.depth)
	if !left {
		c.joint = c.whole
	}
}

// Stress is the greatest of the rib, in Pa: |N|/A + |M|/S at both ends of every
// element, of the section that its joints leave if it has such; 0 where they leave
// nothing, which is no stress: see [CarriesAtJoint]. Source: beam theory, axial
// force and bending moment superposed.
func (c *Case) Stress(jointed bool) float64 {
	if jointed {
		return c.joint
	}
	return c.whole
}

// Sag is a long-term drop below the chord between neighbouring supports, and the
// run between these. Past the last support the drop is the tip's below the
// support, and the run twice the overhang.
type Sag struct{ Drop, Run float64 }

// FirstDay is the drop before any creep, in m: Drop/(1 + 0.6). Source: EN 1995-1-1,
// k_def of service class 1, read on a page that reprints it.
func (s Sag) FirstDay() float64 { return s.Drop / (1 + creep) }

// larger is the sag that is the greater, the first of two alike.
func larger(a, b Sag) Sag {
	if b.Drop > a.Drop*(1+Alike) {
		return b
	}
	return a
}

// steeper is the sag that is the greater by its run, the first of two alike.
func steeper(a, b Sag) Sag {
	if a.Run == 0 || b.Drop*a.Run > a.Drop*b.Run*(1+Alike) {
		return b
	}
	return a
}

// sags finds the greatest sag, and that which is the greatest by its run.
func (r *runner) sags(drops []float64, held []bool) (most, byRun Sag) {
	at := r.supported[:0]
	for n := range drops {
		if held[n] {
			at = append(at, n)
		}
	}
	r.supported = at
	if len(at) == 0 {
		return most, byRun
	}
	consider := func(drop, run float64) {
		if run > apart {
			s := Sag{max(0, drop) * (1 + creep), run}
			most, byRun = larger(most, s), steeper(byRun, s)
		}
	}
	s := r.rib.at
	first, last := at[0], at[len(at)-1]
	consider(drops[0]-drops[first], 2*(s[first]-s[0]))
	consider(drops[len(drops)-1]-drops[last], 2*(s[len(s)-1]-s[last]))
	for i := range len(at) - 1 {
		a, b := at[i], at[i+1]
		for n := a + 1; n < b; n++ {
			t := (s[n] - s[a]) / (s[b] - s[a])
			consider(drops[n]-drops[a]-t*(drops[b]-drops[a]), s[b]-s[a])
		}
	}
	return most, byRun
}

// Station is a node of the rib as it first hangs, on its centre line.
type Station struct {
	At           float64 // arc length on the intrados
	Y, Z         float64 // in the section
	Moment       float64 // the greater of both sides, positive where it flattens the arch
	MoveY, MoveZ float64
}

// stations reads the whole rib out of the solver's result.
func (r *rib) stations(in *frame.Result) []Station {
	out := make([]Station, len(r.nodes))
	for i, n := range r.nodes {
		d := in.Nodes[i]
		out[i] = Station{At: r.at[i], Y: n.X, Z: n.Y, MoveY: d.X, MoveZ: d.Y}
	}
	for e := range len(out) - 1 {
		for k, at := range in.Ends(e) {
			if s := &out[e+k]; math.Abs(at.M) > math.Abs(s.Moment) {
				s.Moment = at.M
			}
		}
	}
	return out
}
