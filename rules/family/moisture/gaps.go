package moisture

import (
	"math"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/rules/model/result/seasons"
	"dryfit/spec/quantity"
)

var endGap = engine.Rule{
	ID:       "moisture.end-gap",
	Title:    "the vault still has room at its ends in the wet season",
	Why:      "A vault that grows against its end walls buckles, and its seams open.",
	Severity: engine.Query,
	Figures:  []string{"season.wet.along"},
	Limits: []engine.Limit{{
		Key: "spare", Title: "total gap left at both ends", Value: quantity.Length(0.003).Value(),
		Sense: engine.AtLeast, Lowest: 0, Most: 1, Source: cite.CommonPractice(),
	}},
	Basis: movement,
	Check: checkEndGap,
}

func checkEndGap(p *engine.Pass) {
	c, along, limit := p.Ceiling, p.Results.Seasons().Wet.Along.Get(), p.Limit("spare")
	if along.Err != nil {
		p.Lacks("rib.species", along.Err)
		return
	}
	if !p.Ordered() {
		return
	}
	gap := c.Room.Length.Get() - c.Room.Tolerance.Get() - c.BuiltLength()
	if left := gap - along.Value; left < limit.SI {
		p.Report(engine.Finding{
			At: "room.length", Related: []string{"vault.length", "rib.cut", "climate.wet"},
			Text: p.Textf("the vault grows in length by %v in the wet season%s",
				quantity.Length(along.Value), p.Lacking(gap, along.Value, limit.SI, "at its ends")),
			Measured: quantity.Length(left).Value(), Bound: limit,
			Offers: []engine.Offer{{Key: "rib.cut", Value: "vertical"}},
		})
	}
}

// eachSeason checks the seasons one by one, so that a figure that one of them
// lacks does not hide the other's, and says once what is lacking.
func eachSeason(p *engine.Pass, species string, check func(seasons.Season) error, list ...seasons.Season) {
	var lacking error
	for _, s := range list {
		if err := check(s); err != nil {
			lacking = err
		}
	}
	if lacking != nil {
		p.Lacks(species, lacking)
	}
}

var rails = engine.Rule{
	ID:       "moisture.rails",
	Title:    "the rails' movement across their width is small, because the skin that they are glued to does not move",
	Why:      "Plywood keeps its size. A wide rail glued to it pulls the skin into waves or breaks the glue line.",
	Severity: engine.Note,
	Figures:  []string{"season.dry.rail-width", "season.wet.rail-width"},
	Limits: []engine.Limit{{
		Key: "most", Title: "change of a rail's width since the shop", Value: quantity.Length(0.0015).Value(),
		Sense: engine.AtMost, Lowest: 0, Most: 0.1, Source: cite.CommonPractice(),
	}},
	Basis: movement,
	Check: checkRails,
}

func checkRails(p *engine.Pass) {
	s, limit := p.Results.Seasons(), p.Limit("most")
	eachSeason(p, "rail.species", func(season seasons.Season) error {
		change := season.RailWidth.Get()
		if by := math.Abs(change.Value); change.Err == nil && by > limit.SI {
			p.Report(engine.Finding{
				At: "rail.width", Related: []string{"rail.cut", "climate." + season.Name},
				Text:     "in the " + season.Name + " season a rail's width changes by {measured} and the skin keeps its size; the maximum is {limit}, above which the movement shows in the skin or the glue line",
				Measured: quantity.Length(by).Value(), Bound: limit,
				Offers: []engine.Offer{{Key: "rail.cut", Value: "vertical"}},
			})
		}
		return change.Err
	}, s.Dry, s.Wet)
}
