package begin

import (
	"bytes"
	"math"
	"slices"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// drafter looks for a spec that passes.
type drafter struct {
	wanted  Wanted
	sizes   sizes
	options review.Options

	span, length, arc, tightest, rise float64
	haunch                            float64
	room                              struct{ width, length, height float64 } // zero where it is chosen
	reviews                           int                                     // of the search at hand
	mostRise                          float64                                 // by span, of a vault that is worked from the room
	framing                           *float64                                // its underside over the springing, as measured
}

// attempt is a choice with what the rules say of it.
type attempt struct {
	choice     choice
	assessment *review.Assessment
}

// measure reads what is wanted and works out the curve.
func (d *drafter) measure() error {
	for _, q := range []struct {
		key, text string
		to        *float64
	}{{"span", d.wanted.Span, &d.span}, {"length", d.wanted.Length, &d.length}, {"rise", d.wanted.Rise, &d.rise}} {
		if q.text == "" && q.key == "rise" {
			continue
		}
		v, err := quantity.Parse(quantity.Metre, q.text)
		if err != nil {
			return &ImpossibleError{Key: q.key, Text: err.Error()}
		}
		if v.SI <= 0 {
			return &ImpossibleError{Key: q.key, Text: q.text + " is not greater than zero"}
		}
		*q.to = v.SI
	}
	if HasRise(d.wanted.Profile) == (d.wanted.Rise == "") {
		if d.wanted.Rise == "" {
			return &ImpossibleError{Key: "rise", Text: "a " + d.wanted.Profile + " vault needs its rise"}
		}
		return &ImpossibleError{Key: "rise", Text: "a " + d.wanted.Profile + " vault has no rise of its own; leave it out"}
	}
	return d.curve()
}

// curve lets the layout work out the intrados, and picks the haunches of a
// three-centred vault: as round as the strips and the skin still bend to.
func (d *drafter) curve() error {
	if err := d.takeable(); err != nil {
		return err
	}
	haunches := []float64{0}
	if d.wanted.Profile == string(spec.ThreeCentred) {
		haunches = nil
		for _, share := range []float64{0.6, 0.7, 0.8, 0.9, 0.95} {
			haunches = append(haunches, up(share*d.rise, d.sizes.step))
		}
	}
	for i, haunch := range haunches {
		c := choice{around: max(1, d.wanted.Around), along: max(1, int(d.length)), haunch: haunch}
		if d.wanted.Along > 0 {
			c.along = d.wanted.Along
		}
		d.haunch = haunch
		ceiling, faults := layout.Resolve(d.tree(d.provisional(c)), standards.BuiltIn(), nil)
		if len(faults) > 0 {
			key, text := faults[0].Key, faults[0].Text
			return &ImpossibleError{Key: key, Text: text}
		}
		d.arc, d.tightest = ceiling.Vault.Arc.Get(), ceiling.Vault.TightestRadius.Get()
		if d.tightest >= easy || i == len(haunches)-1 {
			return nil
		}
	}
	return nil
}

// easy is a radius that usual strips and skins bend to.
const easy = 0.6

// provisional is a choice to start from, in a room that is large enough.
func (d *drafter) provisional(c choice) choice {
	s := d.sizes
	c.depth, c.skin = s.depths[0], s.skins[0]
	c.setting, c.panel, c.height = s.settings[0], s.panels[0], s.heights[0]
	c.width, c.length, c.cover, c.people = 2*d.span+2, d.length+1, 1, 2
	if d.fromRoom() {
		c.width, c.length, c.height = d.room.width, d.room.length, d.room.height
		c.span, c.run, c.rise = d.span, d.length, d.rise
	}
	c.strip = d.firstStrip(c.depth)
	return c
}

// fromRoom reports whether the room is given, and the vault is worked from it.
func (d *drafter) fromRoom() bool { return d.wanted.Room != nil }

// usualStrip is the thickest that a shop bends unless the radius lets thicker
// ones do; wide is where it does.
const (
	usualStrip = 0.0065
	wide       = 550
)

func (d *drafter) firstStrip(depth float64) float64 {
	list := d.sizes.stripsOf(depth)
	for _, t := range list {
		if t <= usualStrip || d.tightest/t >= wide && !math.IsInf(d.tightest, 1) {
			return t
		}
	}
	return list[len(list)-1]
}

func (d *drafter) tree(c choice) map[string]any {
	text, _ := write(d.wanted, c, nil, d.sizes)
	doc, problems := spec.Parse("draft", []byte(text))
	if len(problems) > 0 {
		panic("begin: " + problems[0].Message) // the writer's mistake
	}
	return doc.Tree
}

// review checks a choice. What makes it no ceiling is an *ImpossibleError.
func (d *drafter) review(c choice) (*review.Assessment, error) {
	d.reviews++
	text, _ := write(d.wanted, c, nil, d.sizes)
	s := review.Spec("draft", []byte(text), d.options)
	if len(s.Problems) > 0 {
		return nil, &ImpossibleError{Key: s.Problems[0].Key, Text: s.Problems[0].Message}
	}
	return s, nil
}

// stiff reports whether the curve is tighter than what the thinnest strip or skin
// is bent to.
func stiff(a attempt) bool {
	return slices.ContainsFunc(a.assessment.Findings, func(f engine.Finding) bool {
		return f.Rule.ID == "bend.lamination" || f.Rule.ID == "bend.skin-radius" && f.Severity == engine.Hold
	})
}

// breaks reports whether the thinnest strip or skin breaks on the form.
func breaks(a attempt) bool { return slices.ContainsFunc(a.assessment.Findings, breaking) }

// breaking reports whether a finding says that a strip or a skin breaks: of
// strips, that it goes by the strength of the species.
func breaking(f engine.Finding) bool {
	return f.Rule.ID == "bend.lamination" && f.Bound.Name == "rib.species" || f.Rule.ID == "bend.skin-radius" && f.Severity == engine.Hold
}

func (a attempt) better(b *attempt) bool {
	x, y := a.assessment.Counts, b.assessment.Counts
	if h, k := x.Held+x.Uncomputed, y.Held+y.Uncomputed; h != k {
		return h < k
	}
	return x.Queried < y.Queried
}

// inRoom makes the room as wide as the vault with its tolerances, and as long
// as the row of panels with the run that the last of them takes.
func (d *drafter) inRoom(c choice) (choice, error) {
	if d.fromRoom() {
		return d.fitted(c)
	}
	assessment, err := d.review(c)
	if err != nil {
		return c, err
	}
	ceiling, s := assessment.Ceiling, d.sizes
	c.width = up(ceiling.Vault.Width.Get()+2*s.gap, s.room)
	spare := s.loose + float64(c.along)*c.panel + float64(c.along-1)*s.seam[1]
	c.length = up(s.gap+ceiling.BuiltLength()+s.tenon[2]/2+spare, s.room)
	c.cover = s.gap
	return c, nil
}

// settle reviews a choice, mends what can be mended by itself, and reviews it
// again.
func (d *drafter) settle(c choice) (attempt, error) {
	const most = 60
	var last attempt
	var by string             // the rule whose mend was the last
	idle := map[string]bool{} // rules whose mend changes what is taken as given, and so nothing
	for range most {
		assessment, err := d.review(c)
		if err != nil {
			return attempt{}, err
		}
		if last.assessment != nil && bytes.Equal(assessment.Document.Source, last.assessment.Document.Source) {
			c, idle[by] = last.choice, true
		}
		last = attempt{c, assessment}
		if !slices.ContainsFunc(assessment.Findings, func(f engine.Finding) bool {
			by = f.Rule.ID
			return !idle[by] && d.mend(&c, f, assessment)
		}) {
			return last, nil
		}
	}
	return last, nil
}

// mend changes a choice by what a rule finds; false where there is nothing to
// change. What is noted of the gaps of a measured room its survey answers.
func (d *drafter) mend(c *choice, f engine.Finding, assessment *review.Assessment) bool {
	if f.Severity == engine.Note && d.wanted.Survey != nil && strings.HasPrefix(f.Rule.ID, "close.") {
		return false
	}
	if f.Rule.ID == "survey.strap" {
		return d.under(c, assessment.Ceiling)
	}
	mend, ok := mends[f.Rule.ID]
	return ok && mend(d, c, f)
}

// mends says what to change for a rule's finding; false where that is at its
// end.
var mends = map[string]func(*drafter, *choice, engine.Finding) bool{
	"bend.lamination":   thinnerStrip,
	"bend.springback":   thinnerStrip,
	"bend.skin-radius":  thinnerSkin,
	"close.cover":       widerCover,
	"close.line":        truerPanels,
	"close.probability": longerRoom,
	"close.side":        widerRoom,
	"close.slide":       longerRoom,
	"install.tilt":      widerRoom,
	"moisture.end-gap":  longerRoom,
	"moisture.feet":     widerRoom,
	"rib.feet":          widerRoom,
	"survey.cover":      widerCover,
	"survey.end":        longerOrCovered,
	"survey.fits":       widerRoom,
	"raise.hands":       morePeople,
	"transit.room":      higherRoom,
	"transit.weight":    morePeople,
	"vault.fits":        largerRoom,
}

func thinnerStrip(d *drafter, c *choice, _ engine.Finding) (ok bool) {
	c.strip, ok = next(d.sizes.stripsOf(c.depth), c.strip)
	return ok
}

func thinnerSkin(d *drafter, c *choice, _ engine.Finding) (ok bool) {
	c.skin, ok = next(d.sizes.skins, c.skin)
	return ok
}

func truerPanels(d *drafter, c *choice, _ engine.Finding) (ok bool) {
	c.panel, ok = next(d.sizes.panels, c.panel)
	return ok
}

func widerCover(d *drafter, c *choice, f engine.Finding) bool {
	c.cover = up(max(f.Measured.SI, c.cover+d.sizes.step), d.sizes.room/2)
	return true
}

func widerRoom(d *drafter, c *choice, _ engine.Finding) bool {
	if d.fromRoom() {
		return d.narrower(c)
	}
	c.width += d.sizes.room
	return c.width < 2*d.span+2
}

func longerRoom(d *drafter, c *choice, _ engine.Finding) bool {
	if d.fromRoom() {
		return d.shorter(c)
	}
	c.length += d.sizes.room
	return c.length < d.length+1
}

func largerRoom(d *drafter, c *choice, f engine.Finding) bool {
	switch f.At {
	case "room.width":
		return widerRoom(d, c, f)
	case "room.length":
		return longerRoom(d, c, f)
	default:
		return false
	}
}

func higherRoom(d *drafter, c *choice, _ engine.Finding) bool {
	i := slices.Index(d.sizes.heights, c.height) + 1
	if d.fromRoom() || i == len(d.sizes.heights) {
		return false
	}
	c.height = d.sizes.heights[i]
	return true
}

// mostPeople is how many can get a hand to a panel, at 0.6m of its edge each: common
// practice.
const mostPeople = 16

func morePeople(_ *drafter, c *choice, _ engine.Finding) bool {
	if c.people == mostPeople {
		return false
	}
	c.people++
	return true
}
