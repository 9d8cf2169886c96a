package begin

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/rules/engine"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// Room is what a draft from the room begins with, as a spec writes it.
type Room struct{ Width, Length, Height string }

// TooSmallError says by how much a room is too small for any vault.
type TooSmallError struct{ Text string }

// Error is the text.
func (e *TooSmallError) Error() string { return e.Text }

// from reads the room, and works out the vault that it starts with: as wide and
// long as the least gaps leave.
func (d *drafter) from(r Room) error {
	if d.wanted.Survey != nil {
		measured, err := d.surveyed(r)
		if err != nil {
			return err
		}
		r, d.wanted.Room = measured, &measured
	}
	for _, q := range []struct {
		name, text string
		to         *float64
	}{{"width", r.Width, &d.room.width}, {"length", r.Length, &d.room.length}, {"height", r.Height, &d.room.height}} {
		v, err := quantity.Parse(quantity.Metre, q.text)
		if err != nil {
			return &ImpossibleError{Key: "room", Text: q.name + ": " + err.Error()}
		}
		if v.SI <= 0 {
			return &ImpossibleError{Key: "room", Text: "the " + q.name + " of " + q.text + " is not greater than zero"}
		}
		*q.to = v.SI
	}
	if err := d.large(r); err != nil {
		return err
	}
	d.span = down(d.room.width-2*(d.sizes.gap+d.sizes.depths[0]), d.sizes.room)
	d.length = down(d.room.length-d.ends(), d.sizes.room)
	return nil
}

// ends is what the row leaves at the two end walls: the first gap, the run that
// the last panel takes to slide home, and the room's tolerance.
func (d *drafter) ends() float64 { return d.sizes.gap + d.sizes.tenon[2]/2 + d.sizes.loose }

// large refuses a room that the smallest vault does not go into: one coffer each
// way, between ribs of the least depth, with its gaps.
func (d *drafter) large(r Room) error {
	var short []string
	for _, side := range []struct {
		name, text string
		has, needs float64
	}{
		{"width", r.Width, d.room.width, leastModule + 2*(d.sizes.gap+d.sizes.depths[0])},
		{"length", r.Length, d.room.length, leastModule + d.ends()},
	} {
		if needs := up(side.needs, d.sizes.room); side.has < needs-1e-9 {
			short = append(short, fmt.Sprintf("its %s of %s is %s less than the minimum of %s", side.name, side.text,
				d.sizes.written(up(needs-side.has, d.sizes.step)), d.sizes.written(needs)))
		}
	}
	if len(short) == 0 {
		return nil
	}
	return &TooSmallError{"the room is too small for any vault: " + strings.Join(short, ", and ")}
}

// down is the greatest length on a step that is not over m.
func down(m, step float64) float64 { return math.Floor(m/step+1e-9) * step }

// mostRises are the greatest rises by span that a draft chooses by itself: half a
// circle, and the pointed arch on an equilateral triangle.
var mostRises = map[spec.Profile]float64{
	spec.Segmental: 0.5, spec.Elliptical: 0.48, spec.ThreeCentred: 0.48, spec.Pointed: math.Sqrt(3) / 2,
}

// leastRises are the least: at a tenth of the span a vault still reads as one, and
// a pointed one is no lower than half of its span.
var leastRises = map[spec.Profile]float64{
	spec.Segmental: 0.1, spec.Elliptical: 0.1, spec.ThreeCentred: 0.1, spec.Pointed: 0.52,
}

// vaultIn is what is wanted with the vault that a choice has in its room.
func (w Wanted) vaultIn(c choice, s sizes) Wanted {
	if w.Room == nil {
		return w
	}
	w.Span, w.Length = s.written(c.span), s.written(c.run)
	if given, err := quantity.Parse(quantity.Metre, w.Rise); c.rise > 0 && (err != nil || math.Abs(given.SI-c.rise) > 1e-9) {
		w.Rise = s.written(c.rise)
	}
	return w
}

// fitted gives a choice the vault that goes into the room: the span that is left
// by the gaps and by what the feet stand out, the length by the run of the last
// panel.
func (d *drafter) fitted(c choice) (choice, error) {
	assessment, err := d.review(c)
	if err != nil {
		return c, err
	}
	ceiling, s := assessment.Ceiling, d.sizes
	d.under(&c, ceiling)
	c.span = down(d.room.width-2*s.gap-(ceiling.Vault.Width.Get()-c.span), s.room)
	spare := s.loose + float64(c.along)*c.panel + float64(c.along-1)*s.seam[1]
	c.run = down(d.room.length-s.gap-(ceiling.BuiltLength()-c.run)-s.tenon[2]/2-spare, s.room)
	c.cover = s.gap
	d.lower(&c)
	return c, nil
}

// narrower takes a step off the span.
func (d *drafter) narrower(c *choice) bool {
	c.span -= d.sizes.room
	d.lower(c)
	return c.span >= leastModule
}

// lower takes off the rise what the profile does not have over the span.
func (d *drafter) lower(c *choice) {
	if most := d.mostRise * c.span; c.rise > most {
		c.rise = down(most, d.sizes.room)
	}
	if c.haunch > 0 {
		c.haunch = min(c.haunch, down(0.95*c.rise, d.sizes.step))
	}
}

func (d *drafter) shorter(c *choice) bool {
	c.run -= d.sizes.room
	return c.run >= leastModule
}

// mostGiven is the greatest rise by span that a profile has at all, less a little
// where it has to stay under that.
func mostGiven(profile string) float64 {
	switch spec.Profile(profile) {
	case spec.Pointed:
		return math.Inf(1)
	case spec.Segmental:
		return 0.5
	default:
		return 0.499
	}
}

// inside drafts from the room, with the rise that is wanted, or with the
// greatest that goes.
func (d *drafter) inside() (*attempt, error) {
	if err := d.from(*d.wanted.Room); err != nil {
		return nil, err
	}
	d.mostRise = mostGiven(d.wanted.Profile)
	if d.wanted.Rise != "" || !HasRise(d.wanted.Profile) {
		best, err := d.risen(0)
		if err == nil && best != nil && best.choice.rise < d.rise-1e-9 {
			err = &ImpossibleError{Key: "rise", Text: fmt.Sprintf("%s is too much for a %s vault with a span of %s, which the room permits; the maximum is %s",
				d.wanted.Rise, d.wanted.Profile, d.sizes.written(best.choice.span), d.sizes.written(best.choice.rise))}
		}
		return best, err
	}
	profile := spec.Profile(d.wanted.Profile)
	d.mostRise = mostRises[profile]
	low, high := up(leastRises[profile]*d.span, d.sizes.room), down(mostRises[profile]*d.span, d.sizes.room)
	if d.framing != nil {
		high = max(low, min(high, down(*d.framing-d.sizes.depths[0], d.sizes.room)))
	}
	best, err := d.risen(high)
	if err != nil || best != nil && goes(*best) {
		return best, err
	}
	least, err := d.risen(low)
	if err != nil {
		return nil, err
	}
	switch {
	case least != nil && goes(*least):
		return d.halved(low, high, least)
	case best != nil && least != nil && len(both(held(*best), held(*least))) > 0:
		return nearer(best, least), nil // what holds the least rise and the greatest, holds those between
	default:
		return d.between(low, high, nearer(best, least))
	}
}

// between looks for a rise that goes where neither the least nor the greatest does:
// an ellipse may be too tight for its strips at the one, and under the framing at the
// other. The nearest so far is what is left where none goes.
func (d *drafter) between(low, high float64, best *attempt) (*attempt, error) {
	const steps = 8
	over := high
	for i := steps - 1; i > 0; i-- {
		rise := down(low+(high-low)*float64(i)/steps, d.sizes.room)
		a, err := d.risen(rise)
		if err != nil {
			return nil, err
		}
		if a != nil && goes(*a) {
			return d.halved(rise, over, a)
		}
		best, over = nearer(best, a), rise
	}
	return best, nil
}

// halved halves between a rise that goes and one that does not, to a fiftieth of the
// span.
func (d *drafter) halved(low, high float64, least *attempt) (*attempt, error) {
	for high-low > max(d.sizes.room*1.5, d.span/50) {
		middle := down((low+high)/2, d.sizes.room)
		a, err := d.risen(middle)
		if err != nil {
			return nil, err
		}
		if a != nil && goes(*a) {
			least, low = a, middle
		} else {
			high = middle
		}
	}
	return least, nil
}

// nearer is the better of two attempts, of which any may be none.
func nearer(a, b *attempt) *attempt {
	if a == nil || b != nil && b.better(a) {
		return b
	}
	return a
}

// risen is the search at one rise; at none, with that which is wanted.
func (d *drafter) risen(rise float64) (*attempt, error) {
	asked := d.wanted
	defer func() { d.wanted = asked }()
	d.reviews = 0
	w := &d.wanted
	w.Span, w.Length = d.sizes.written(d.span), d.sizes.written(d.length)
	if rise > 0 {
		w.Rise = d.sizes.written(rise)
	}
	if err := d.measure(); err != nil {
		return nil, err
	}
	return d.search()
}

// passes reports whether nothing holds an attempt.
func passes(a attempt) bool {
	return a.assessment.Counts.Held+a.assessment.Counts.Uncomputed == 0 && !breaks(a)
}

// goes reports whether an attempt passes, and nothing is asked of the way in, the
// height or the bends.
func goes(a attempt) bool {
	return passes(a) && !slices.ContainsFunc(a.assessment.Findings, func(f engine.Finding) bool {
		family, _, _ := strings.Cut(f.Rule.ID, ".")
		asked := family == "transit" || family == "install" || family == "bend" || f.Rule.ID == "vault.fits"
		return f.Severity == engine.Query && asked
	})
}

// instead says which of the things that were asked for stands in the way: what
// would do in its place, each alone.
func instead(w Wanted, list []*engine.Rule) []string {
	var out []string
	for _, o := range []struct {
		given bool
		flag  string
		free  func(*Wanted)
		has   func(choice) string
	}{
		{w.Around > 0, fmt.Sprintf("--around %d", w.Around), func(w *Wanted) { w.Around = 0 }, func(c choice) string { return fmt.Sprintf("--around %d", c.around) }},
		{w.Along > 0, fmt.Sprintf("--along %d", w.Along), func(w *Wanted) { w.Along = 0 }, func(c choice) string { return fmt.Sprintf("--along %d", c.along) }},
		{w.Species != "", "--species " + w.Species, func(w *Wanted) { w.Species = "" }, func(choice) string { return "--species " + species }},
		{w.Construction != "", "--construction " + w.Construction, func(w *Wanted) { w.Construction = "" }, func(choice) string { return "--construction " + laminated }},
		{w.Skin != "", "--skin " + w.Skin, func(w *Wanted) { w.Skin = "" }, func(choice) string { return "--skin " + skinMaterial }},
		{w.Rise != "" && w.Room != nil, "--rise " + w.Rise, func(w *Wanted) { w.Rise = "" }, func(c choice) string { return "--rise " + sizesOf(w.Units).written(c.rise) }},
	} {
		if !o.given {
			continue
		}
		other := w
		o.free(&other)
		if _, best, err := attempted(other, list); err == nil && best != nil && passes(*best) {
			out = append(out, o.has(best.choice)+" would do in place of "+o.flag)
		}
	}
	return out
}

// Instead is what would do in place of what an error stands against: nothing where
// the error is of another kind.
func Instead(err error) []string {
	var none *NoAnswerError
	var impossible *ImpossibleError
	switch {
	case errors.As(err, &none):
		return none.Instead
	case errors.As(err, &impossible):
		return impossible.Instead
	default:
		return nil
	}
}
