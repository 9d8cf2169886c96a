package strap

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

var hole = engine.Rule{
	ID:       "strap.hole",
	Title:    "the screws go through the strap's holes",
	Why:      "A hole widened on site weakens the strap at its weakest section.",
	Severity: engine.Hold,
	Needs:    []string{"strap.hole", "strap.screws.diameter"},
	Basis:    engine.Basis{Valid: "the shank against the hole", Source: cite.Derivation("two diameters")},
	Check: func(p *engine.Pass) {
		st := p.Ceiling.Strap
		if d := st.Screws.Diameter.Get(); d > st.Hole.Get() {
			p.Report(engine.Finding{
				At: "strap.hole", Related: []string{"strap.screws.diameter"},
				Text:     "a screw of {measured} does not go through a hole of {limit}",
				Measured: quantity.Length(d).Value(), Bound: p.Stated("strap.hole", quantity.Length(st.Hole.Get()).Value()),
				Offers: []engine.Offer{{Key: "strap.hole", Value: p.Above(d)}},
			})
		}
	},
}

var through = engine.Rule{
	ID:       "strap.through",
	Title:    "no screw is longer than the wood that it enters",
	Why:      "A screw that comes out of the rib spoils the visible face or holds the seam open.",
	Severity: engine.Hold,
	Needs:    []string{"strap.fixing", "strap.screws"},
	Basis: engine.Basis{
		Formula: "l − t − s ≤ D",
		Symbols: []engine.Symbol{
			{Name: "l", Means: "length of a screw under its head; if it is absent, the screw enters the wood by its thread alone", Unit: "m"},
			{Name: "t", Means: "thickness of the strap", Unit: "m"},
			{Name: "s", Means: "least actual thickness of the skin, if the skin covers the back to which the strap is fixed", Unit: "m"},
			{Name: "D", Means: "depth of the wood: the rib's depth at its back, or half of its width at a side, each less a reveal in the line of the screws; the member's width at the framing's side", Unit: "m"},
		},
		Valid:  "screws square to the face; a screw that comes out of the framing's other side is a query; the spec does not state the depth of framing above its underside",
		Source: cite.Derivation("lengths along a screw"),
	},
	Check: checkThrough,
}

func checkThrough(p *engine.Pass) {
	in, ok := entered(p, true)
	if !ok {
		return
	}
	if in <= 0 {
		p.Report(engine.Finding{
			At: "strap.screws.length", Related: []string{"strap.thickness", "skin.thickness"},
			Text:     "the screws are {measured} long and end in the strap or the skin on the rib's back, before they reach the rib",
			Measured: quantity.Length(p.Ceiling.Strap.Screws.Length.Get()).Value(),
		})
		return
	}
	checkRib(p, in)
	c := p.Ceiling
	if m := c.Room.Framing.Member; c.Strap.Fixing.Top.Get() == "side" && m.Given() {
		top, _ := entered(p, false)
		tooLong(p, top, m.Get(), "room.framing.member", "the screws go {measured} into the side of framing members {limit} wide, and come out of the other side", engine.Query)
	}
	if s := c.Strap.Screws; s.Length.Given() && s.Penetration.Given() {
		tooLong(p, s.Penetration.Get(), in-thickerSkin(c), "strap.screws.length", "the spec states {measured} of thread in the wood; only {limit} of the screws' length goes into the rib", engine.Hold)
	}
}

// checkRib compares what goes into the rib with its wood.
func checkRib(p *engine.Pass, in float64) {
	bottom := p.Ceiling.Strap.Fixing.Bottom.Get()
	wood, key, out := 0.0, "rib.width", "in the seam, which they hold open"
	switch bottom {
	case "back":
		wood, key, out = ribDepth(p), "rib.depth", "of the face that the room sees"
	case "seam":
		wood, out = ribSide(p), "of the side toward the coffer"
	default:
		wood = ribSide(p)
	}
	tooLong(p, in, wood, key, "the screws go {measured} into the rib from its "+side(bottom)+", where the wood is {limit} thick, and come out "+out, engine.Hold)
}

// side names the face of a rib or a framing member that a strap is fixed to.
func side(face string) string {
	if face == "seam" {
		return "seam side"
	}
	return face
}

// thickerSkin is how much less a screw in the back may go in than it does through
// the thinnest skin.
func thickerSkin(c *layout.Ceiling) float64 {
	if c.Strap.Fixing.Bottom.Get() != "back" || c.Skin.Between.Get() {
		return 0
	}
	return 2 * c.Skin.Spread()
}

// tooLong reports what goes further into the wood than this is deep.
func tooLong(p *engine.Pass, in, wood float64, key, text string, s engine.Severity) {
	if in > wood {
		p.Report(engine.Finding{
			At: screwKey(p), Related: []string{key, "strap.fixing"}, Severity: s, Text: text,
			Measured: quantity.Length(in).Value(), Bound: p.Stated(key, quantity.Length(wood).Value()),
		})
	}
}

// screwKey is the key that says how far the screws go in.
func screwKey(p *engine.Pass) string {
	if p.Ceiling.Strap.Screws.Length.Given() {
		return "strap.screws.length"
	}
	return "strap.screws.penetration"
}

// ribDepth is the least depth of the layers that the screws in the back go into,
// in the middle of the rib at a panel's edge, less a reveal that reaches under
// them.
func ribDepth(p *engine.Pass) float64 {
	c := p.Ceiling
	middle, half := edgeRib(p)/2, c.Strap.Screws.Diameter.Get()/2
	at, depth := 0.0, math.Inf(1)
	for _, l := range c.RibLayers.Get() {
		if at < middle+half && at+l.Width > middle-half {
			depth = min(depth, l.To-l.From)
		}
		at += l.Width
	}
	depth = min(depth, c.Rib.Depth.Get())
	if wide, deep := reveal(p); wide > middle-half {
		depth -= deep
	}
	return depth
}

// ribSide is the width of the wood that the screws in a side go into, less a
// reveal at their height.
func ribSide(p *engine.Pass) float64 {
	r, wood := rowOf(p), edgeRib(p)
	lowest := r.first + r.length() + r.diameter/2
	if wide, deep := reveal(p); p.Ceiling.Strap.Lap.Given() && lowest > p.Ceiling.Rib.Depth.Get()-deep {
		wood -= wide
	}
	return wood
}

var mortise = engine.Rule{
	ID:       "strap.mortise",
	Title:    "no strap screw enters the mortise of a tenon",
	Why:      "A screw in a mortise holds nothing and stops the tenon.",
	Severity: engine.Query,
	Needs:    []string{"strap.stations", "strap.fixing", "strap.screws", "strap.lap"},
	Basis: engine.Basis{
		Formula: "|station + i·p − tenon| ≥ (w + a + d)/2, or clear of the mortise's depth or height",
		Symbols: []engine.Symbol{
			{Name: "station", Means: "middle of the strap along the arc", Unit: "m"},
			{Name: "i·p", Means: "place of a screw in the row, along the arc on the rib's back", Unit: "m"},
			{Name: "tenon", Means: "middle of the tenon", Unit: "m"},
			{Name: "w", Means: "width of the tenon", Unit: "m"},
			{Name: "a", Means: "excess of a wide mortise's width over its tenon's, and of two mortises' depth over the tenon's length, 1/16 in", Unit: "m"},
			{Name: "d", Means: "diameter of the screw", Unit: "m"},
		},
		Valid:  "straps on the back or the side of the rib; one row on the strap's centre line, evenly spaced over the lap unless strap.screws.spacing is given; tenons in the middle of the wood that the reveal leaves. joint.strap checks straps in the seam",
		Source: cite.Derivation("a screw and a mortise in one half rib"),
	},
	Check: checkMortise,
}

func checkMortise(p *engine.Pass) {
	c := p.Ceiling
	if c.Seam.Count.Get() == 0 || c.Strap.Fixing.Bottom.Get() == "seam" {
		return
	}
	in, ok := entered(p, true)
	if !ok {
		return
	}
	places := screwsAtMortise(p, in)
	tenons := c.TenonStations(c.Panel.Arc.Get())
	need := (c.Seam.Tenon.Width.Get() + c.Strap.Screws.Diameter.Get()) / 2
	if c.Seam.Mortise.Get() != "all snug" {
		need += layout.MortiseAir / 2
	}
	for i, s := range c.Strap.Stations.Get() {
		at := math.Mod(s*c.Vault.Arc.Get(), c.Panel.Arc.Get())
		if k, off := nearestTenon(at, places, tenons); off < need {
			p.Report(engine.Finding{
				At: c.Strap.Stations.Place(i), Related: []string{"strap.screws", "seam.spacing", "seam.edge"},
				Text: p.Textf("a screw of strap %d goes %v into the rib, {measured} from the middle of tenon %d and into its mortise; clear of the mortise the distance is %v",
					i+1, quantity.Length(in), k+1, quantity.Length(need)),
				Measured: quantity.Length(off).Value(),
			})
		}
	}
}

// nearestTenon is the tenon nearest to one of the screws of a strap, and how far
// they are apart along the arc.
func nearestTenon(at float64, places, tenons []float64) (k int, off float64) {
	off = math.Inf(1)
	for _, place := range places {
		for i, t := range tenons {
			if d := math.Abs(at + place - t); d < off {
				k, off = i, d
			}
		}
	}
	return k, off
}

// screwsAtMortise are the places along the arc, from the strap's middle, of the
// screws that go deep enough to meet a mortise and are at its height.
func screwsAtMortise(p *engine.Pass, in float64) (places []float64) {
	c, r := p.Ceiling, rowOf(p)
	tenon, wide := c.Seam.Tenon, edgeRib(p)
	middle := (c.Rib.Depth.Get() - groove(p)) / 2 // of the tenon, from the back
	half := (tenon.Thickness.Get() + r.diameter) / 2
	deep := (tenon.Length.Get() + layout.MortiseAir) / 2
	for i := range r.count {
		along := float64(i)*r.pitch - r.length()/2
		if c.Strap.Fixing.Bottom.Get() == "back" {
			if in > middle-tenon.Thickness.Get()/2 && wide/2-r.diameter/2 < deep {
				places = append(places, along)
			}
			continue
		}
		if down := r.first + float64(i)*r.pitch; in > wide-deep && math.Abs(down-middle) < half {
			places = append(places, 0)
		}
	}
	return places
}
