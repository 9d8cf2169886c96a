package moisture

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/seasons"
	"dryfit/spec/quantity"
)

var feet = engine.Rule{
	ID:       "moisture.feet",
	Title:    "the feet stay clear of the walls in the season that spreads them",
	Why:      "An arc opens when a rib swells in depth and not in length. Feet that meet the wall push on it.",
	Severity: engine.Query,
	Figures:  []string{"season.wet.foot", "season.dry.foot", "panel.side-gap"},
	Limits: []engine.Limit{{
		Key: "clear", Title: "between a foot and the wall", Value: quantity.Length(0.001).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{
		Formula: "φ' = φ/(1 + e), R' = R·(1 + e)",
		Symbols: []engine.Symbol{
			{Name: "φ", Means: "half the angle of the arc", Unit: "rad"},
			{Name: "R", Means: "radius", Unit: "m"},
			{Name: "e", Means: "relative change of the rib's depth", Unit: "1"},
		},
		Valid:  "the rib's length, along the grain, does not change; the rib is free to move",
		Source: cite.Derivation("geometry of a curve of constant length and changing depth"),
	},
	Check: checkFeet,
}

func checkFeet(p *engine.Pass) {
	s, limit, gap := p.Results.Seasons(), p.Limit("clear"), p.Ceiling.SideGap()
	if gap < 0 {
		p.NotChecked("room.width", "the panel does not go between the walls at all, which close.side says")
		return
	}
	eachSeason(p, "rib.species", func(season seasons.Season) error {
		moved := season.Foot.Get()
		foot := moved.Value
		if left := gap - foot; moved.Err == nil && foot > 0 && left < limit.SI {
			p.Report(engine.Finding{
				At: "room.width", Related: []string{"vault.span", "rib.cut", "climate." + season.Name},
				Text: p.Textf("in the %s season each foot moves %v outward%s",
					season.Name, quantity.Length(foot), p.Lacking(gap, foot, limit.SI, "beside the panel at its widest")),
				Measured: quantity.Length(left).Value(), Bound: limit,
			})
		}
		return moved.Err
	}, s.Wet, s.Dry)
}
