// Package survey holds the rules on the room as measured: whether the panels go
// between its walls, what is left for the moulding to hide, how the seats and the
// straps come out, and whether the readings can be believed.
package survey

import (
	"embed"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/placement"
	"dryfit/rules/model/result/seasons"
	"dryfit/rules/model/result/survey"
	"dryfit/spec/quantity"
)

//go:embed testdata
var cases embed.FS

// Family lists the rules in report order.
func Family() engine.Family {
	return engine.Family{
		Name: "survey", Title: "the room as measured", Cases: cases,
		Rules: []engine.Rule{fits, cover, end, level, strap, differs, closes, bow},
	}
}

// Keys of the readings.
const (
	table    = "survey"
	stations = "survey.station"
	springs  = "survey.springing"
)

// placed is the row where it is set out; it says why where there is no such place.
func placed(p *engine.Pass) (v *survey.Survey, at placement.Placed, ok bool) {
	v = p.Results.Survey()
	at, ok = v.Placed()
	if !ok {
		err := p.Ceiling.Survey.SetOut.Get().Err
		if err == nil {
			err = v.Least.Get().Err
		}
		p.Failed(table, err)
	}
	return v, at, ok
}

// moves is how far the seasons move a foot at most, outward of sense 1 and inward of
// −1; not known where the wood's movement is not.
func moves(p *engine.Pass, sense float64) (float64, bool) {
	s := p.Results.Seasons()
	most := 0.0
	for _, foot := range []seasons.Change{s.Dry.Foot.Get(), s.Wet.Foot.Get()} {
		if foot.Err != nil {
			p.Lacks("rib.species", foot.Err)
			return 0, false
		}
		most = max(most, sense*foot.Value)
	}
	return most, true
}

// length prints as one.
func length(m float64) quantity.Value { return quantity.Length(m).Value() }
