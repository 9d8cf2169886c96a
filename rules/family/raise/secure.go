package raise

import (
	"errors"
	"fmt"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/hanging"
	"dryfit/rules/model/result/raising"
)

var secure = engine.Rule{
	ID:       "raise.secure",
	Title:    "the fixed straps hold the panel without its lifts, even if any one strap is lost",
	Why:      "A strap can slip while people fix the next one. The panel must stay on its lifts until the other straps can hold it after the loss of any one.",
	Severity: engine.Query,
	Needs:    []string{"lift.stations", "strap.stations", "strap.allowable"},
	Basis: engine.Basis{
		Formula: "F ≤ F_a, |N|/A + |M|/S ≤ k·MOR/f",
		Symbols: []engine.Symbol{
			{Name: "F", Means: "force of a strap, for the greatest mass of the panel", Unit: "N"},
			{Name: "F_a", Means: "allowable load of a strap", Unit: "N"},
			{Name: "f", Means: "rib.stress.factor; the other symbols are those of rib.stress", Unit: "1"},
		},
		Valid: "each strap fixed unloaded, in the shape that the panel has on its lifts, and all lifts gone; each piece of a split arch by itself, before it is joined. " +
			"A loss that comes suddenly can double a force, which is not counted",
		Source: cite.Derivation("plane frame of at least 72 elements, from the shape on the lifts"),
	},
	Check: checkSecure,
}

func checkSecure(p *engine.Pass) {
	c, h := p.Ceiling, p.Results.Hanging()
	if _, ok := engine.Hung(p, h.First); !ok {
		return
	}
	p.Unweighed()
	limits, unknown := raising.LimitsOf(c, p.Results.Shop())
	if unknown != "" {
		p.NotChecked("rib.construction", "the rib's stress is not judged: "+unknown)
	}
	never, err := raising.NeverSecure(h, limits)
	var none *hanging.NoLiftsError
	switch {
	case errors.As(err, &none):
		p.NotChecked("lift.stations", err.Error()+", which install.lift-balance says")
	case err != nil:
		p.Failed("strap.stations", err)
	}
	var why []string
	for _, n := range never {
		why = append(why, because(n))
	}
	if len(why) > 0 {
		p.Report(engine.Finding{
			At: "strap.stations", Related: []string{"strap.allowable.load"},
			Text: "the panel is never secure without its lifts: " + strings.Join(why, "; "),
		})
	}
}

// because says what does not hold.
func because(n raising.Insecure) string {
	on := "on all its straps "
	if n.Strap > 0 {
		on = fmt.Sprintf("with strap %d lost ", n.Strap)
	}
	if n.Piece > 0 {
		return on + n.Why + fmt.Sprintf(" (piece %d, before the arch is joined)", n.Piece)
	}
	return on + n.Why
}
