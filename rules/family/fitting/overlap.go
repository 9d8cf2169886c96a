package fitting

import (
	"fmt"
	"slices"

	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

var overlap = engine.Rule{
	ID:       "fitting.overlap",
	Title:    "no two fittings of a coffer overlap",
	Why:      "Two trades may each place a fitting in the middle of one coffer.",
	Severity: engine.Hold,
	Needs:    []string{"fitting"},
	Basis:    engine.Basis{Source: geometry},
	Check: func(p *engine.Pass) {
		all := places(p.Ceiling)
		for i, f := range all {
			checkOverlap(p, f, all[:i])
		}
	},
}

// checkOverlap reports the fitting that a fitting overlaps most, of some others.
func checkOverlap(p *engine.Pass, f place, others []place) {
	most, by, count := place{}, 0.0, 0
	for _, other := range others {
		if !slices.Equal(f.Coffer.Get(), other.Coffer.Get()) {
			continue
		}
		if over := -gap(f.shape(), other.shape()); over > 0 {
			count++
			if over > by {
				most, by = other, over
			}
		}
	}
	if count == 0 {
		return
	}
	more := ""
	if count > 1 {
		more = fmt.Sprintf(", and %d more", count-1)
	}
	p.Report(engine.Finding{
		At: f.key("at"), Related: []string{most.key()},
		Text:     p.Textf("the %s overlaps the %s in %s by {measured}%s", f.Name.Get(), most.Name.Get(), f.where(), more),
		Measured: quantity.Length(by).Value(),
	})
}
