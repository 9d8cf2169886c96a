package transit

import (
	"math"

	"dryfit/rules"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/layout"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

var door = rules.Rule{
	ID:       "transit.door",
	Title:    "the panel in its wrap passes each door, a vehicle's included",
	Why:      "A panel that stops at a door is cut there, or goes back.",
	Severity: rules.Hold,
	Needs:    []string{"route"},
	Reads: []string{
		"wrap.allowance", "vault.profile", "vault.span", "vault.rise", "vault.length", "grid.along", "panels.along",
		"panels.around", "rib.depth", "skin.thickness", "springing.cut",
	},
	Figures: []string{"panel.end-length", "panel.width", "panel.height"},
	Limits: []rules.Limit{{
		Key: "clearance", Title: "free space on every side of the wrap",
		Value: quantity.Length(0.010).Value(), Sense: rules.AtLeast, Lowest: 0, Most: 1,
		Source: cite.CommonPractice(),
	}},
	Basis: rules.Basis{
		Formula: "b·(p² + q²) ≥ 2·p·q·a + (p² − q²)·√(p² + q² − a²), where p > a",
		Symbols: []rules.Symbol{
			{Name: "p", Means: "longer side of the wrapped panel's box, square to the way it is carried", Unit: "m"},
			{Name: "q", Means: "its shorter side", Unit: "m"},
			{Name: "a", Means: "longer side of the opening, less the clearance", Unit: "m"},
			{Name: "b", Means: "shorter side of the opening, less the clearance", Unit: "m"},
		},
		Valid:  "the panel's box, carried straight on any of its three axes and turned in the plane of the door; a curved panel may pass where its box does not, which is then not decided",
		Source: cite.Wetzel2000.At("Carver's theorem"),
	},
	Check: checkDoor,
}

func checkDoor(p *rules.Pass) {
	limit := p.Limit("clearance")
	for i, leg := range p.Ceiling.Spec.Route {
		switch leg.Kind {
		case "door":
			checkOpening(p, leg, spec.Key("route", i+1), float64(*leg.Width), float64(*leg.Height), limit)
		case "vehicle":
			checkOpening(p, leg, spec.Key("route", i+1, "door"), float64(leg.Door.Width), float64(leg.Door.Height), limit)
		}
	}
}

// checkOpening compares the best way of carrying the panel's box with one
// opening.
func checkOpening(p *rules.Pass, leg spec.Leg, key string, width, height float64, limit rules.Bound) {
	c := p.Ceiling
	margin := boxMargin(c, width, height)
	if margin >= limit.SI {
		return
	}
	f := rules.Finding{
		At:       key + ".width",
		Related:  []string{key + ".height", "panels.along"},
		Measured: quantity.Length(margin).Value(),
		Bound:    limit,
	}
	switch {
	case margin >= 0:
		f.Severity = rules.Query
		f.Text = p.Textf("the wrapped panel passes the %s with {measured} to spare on each side; the least is {limit}", leg.Name)
	case math.IsInf(c.Vault.TightestRadius, 1):
		f.Bound = p.Stated(key, quantity.Length(0).Value())
		f.Text = p.Textf("the wrapped panel is %v too large on each side for the %s", quantity.Length(-margin), leg.Name)
	default:
		f.Severity = rules.Query
		f.Text = p.Textf("the wrapped panel's box is %v too large on each side for the %s; whether the curved panel passes is not decided", quantity.Length(-margin), leg.Name)
	}
	p.Report(f)
}

// boxMargin is the best clearance of the panel's wrapped box in an opening, over
// the three ways of carrying it.
func boxMargin(c *layout.Ceiling, width, height float64) float64 {
	wrap := 2 * float64(*c.Spec.Wrap.Allowance)
	l, w, h := c.Panel.EndLength+wrap, c.Panel.Width+wrap, c.Panel.Height+wrap
	best := math.Inf(-1)
	for _, section := range [][2]float64{{w, h}, {l, h}, {l, w}} {
		best = max(best, passage.RectangleInRectangle(section[0], section[1], width, height).Margin)
	}
	return best
}
