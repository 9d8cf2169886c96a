package fitting

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec/quantity"
)

// tooBig says where a fitting is larger than its coffer, wherever it is in it.
func tooBig(p *engine.Pass, f place) bool {
	around, along := f.clear()
	at := f.shape()
	for _, d := range []struct {
		size, clear       float64
		key, word, member string
	}{
		{2 * at.halfA, around, "width", "wide around the arc", "rail.width"},
		{2 * at.halfL, along, "length", "long along the axis", "rib.width"},
	} {
		if d.size <= d.clear {
			continue
		}
		key, word := d.key, d.word
		if at.round {
			key, word = "diameter", "across"
		}
		p.Report(engine.Finding{
			At: f.key("size", key), Related: []string{d.member, f.key("coffer")},
			Text:     p.Textf("the %s is {measured} %s; %s is %v clear", f.Name.Get(), word, f.where(), quantity.Length(d.clear)),
			Measured: quantity.Length(d.size).Value(),
			Offers:   []engine.Offer{{Key: f.key("size", key), Value: p.Below(d.clear)}},
		})
		return true
	}
	return false
}

var edge = engine.Rule{
	ID:       "fitting.edge",
	Title:    "every fitting has its least distance from the sides of its coffer",
	Why:      "A trim that touches a rib looks like a mistake and leaves no room for a hand.",
	Severity: engine.Query,
	Needs:    []string{"fitting"},
	Limits: []engine.Limit{{
		Key: "clear", Title: "distance from a fitting to a rib or rail", Value: quantity.Length(0.025).Value(), Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Source: cite.CommonPractice()},
	Check: func(p *engine.Pass) { checkNear(p, p.Limit("clear"), "", "") },
}

// checkNear reports the fittings of a kind, or all, that are clear of the
// members and nearer to one than a limit.
func checkNear(p *engine.Pass, limit engine.Bound, kind, why string) {
	for _, f := range places(p.Ceiling) {
		if kind != "" && f.Kind.Get() != kind || f.beyond() {
			continue
		}
		near := f.nearest()
		if near.clear < 0 || near.clear >= limit.SI {
			continue
		}
		p.Report(engine.Finding{
			At: f.key("at"), Related: []string{f.key("size"), f.key("coffer")},
			Text:     p.Textf("the %s in %s is {measured} from the %s %s; the minimum is {limit}%s", f.Name.Get(), f.where(), near.member, near.way, why),
			Measured: quantity.Length(near.clear).Value(), Bound: limit,
		})
	}
}
