package survey

import (
	"dryfit/rules/engine"
	"dryfit/rules/kernel/cite"
	"dryfit/spec"
)

var bow = engine.Rule{
	ID:       "survey.bow",
	Title:    "the stations are close enough together to find a bow",
	Why:      "The walls count as straight between two stations, because nothing is measured there.",
	Severity: engine.Note,
	Needs:    []string{table},
	Quiet:    true,
	Limits: []engine.Limit{{
		Key: "apart", Title: "distance between adjacent stations", Value: length(1.5),
		Sense: engine.AtMost, Lowest: 0, Most: 100, Source: cite.CommonPractice(),
	}},
	Basis: engine.Basis{Valid: "walls of any material", Source: cite.CommonPractice()},
	Check: checkBow,
}

func checkBow(p *engine.Pass) {
	limit, list := p.Limit("apart"), p.Ceiling.Survey.Station.Get()
	worst, most := 0, 0.0
	for i := 1; i < len(list); i++ {
		if apart := list[i].At.Get() - list[i-1].At.Get(); apart > most {
			worst, most = i, apart
		}
	}
	if most > limit.SI {
		p.Report(engine.Finding{
			At: spec.Key("survey", "station", worst+1, "at"), Measured: length(most), Bound: limit,
			Text: p.Textf("stations %d and %d are {measured} apart; the maximum is {limit}, beyond which the readings can miss a bow", worst, worst+1),
		})
	}
}
