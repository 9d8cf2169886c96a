package begin

import (
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
)

// attempted is the best that was found, which may be none or not pass.
func attempted(w Wanted, list []*engine.Rule) (d *drafter, best *attempt, err error) {
	d = &drafter{wanted: w, sizes: sizesOf(w.Units), options: review.Options{Rules: deciding(list), Standards: standards.BuiltIn()}}
	if err := d.known(); err != nil {
		return d, nil, err
	}
	if w.Room != nil {
		best, err := d.inside()
		return d, best, err
	}
	if err := d.measure(); err != nil {
		return d, nil, err
	}
	best, err = d.search()
	return d, best, err
}

// deciding are the rules that may query or hold, or whose finding a draft mends: the
// search does not wait for what only notes, such as the sheets of a skin.
func deciding(list []*engine.Rule) []*engine.Rule {
	return slices.DeleteFunc(slices.Clone(list), func(r *engine.Rule) bool {
		_, mended := mends[r.ID]
		return r.Severity == engine.Note && !mended
	})
}

// known refuses a wood or a sheet that the standards do not know.
func (d *drafter) known() error {
	if d.wanted.Species != "" {
		if _, err := d.options.Standards.Species(d.wanted.Species); err != nil {
			return &ImpossibleError{Key: "species", Text: err.Error()}
		}
	}
	if d.wanted.Skin != "" {
		if _, err := d.options.Standards.SheetMaterial(d.wanted.Skin); err != nil {
			return &ImpossibleError{Key: "skin", Text: err.Error()}
		}
	}
	return nil
}

// against lists what holds a draft.
func against(s *review.Assessment) []engine.Finding {
	var out []engine.Finding
	for _, f := range s.Findings {
		if f.Severity == engine.Hold || breaking(f) {
			out = append(out, f)
		}
	}
	for _, n := range s.NotChecked {
		if n.Failed {
			out = append(out, engine.Finding{Rule: n.Rule, Text: n.Why})
		}
	}
	return out
}
