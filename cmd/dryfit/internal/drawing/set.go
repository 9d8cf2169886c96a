package drawing

import (
	"errors"
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/spec/quantity"
)

// All makes every sheet that the spec has the keys for, and those of notes; what
// can't be drawn is said.
func All(in Input, o Options) (drawn []paper.Sheet, undrawn []string, err error) {
	if o, err = in.onePaper(o); err != nil {
		return nil, nil, err
	}
	in = in.placed(o, ribName)
	for i := range sheets {
		s, err := in.drawn(i, len(drawn)+1, o)
		switch {
		case cannot(err):
			undrawn = append(undrawn, err.Error())
		case err != nil:
			return nil, nil, err
		default:
			drawn = append(drawn, s)
		}
	}
	drawn = append(drawn, in.notes(drawn, len(drawn)+1)...)
	Number(drawn)
	return drawn, undrawn, nil
}

// cannot reports whether an error says why a sheet can't be drawn of a ceiling.
func cannot(err error) bool {
	var needs *NeedsError
	var limit *LimitError
	var plan *NoPlanError
	return errors.As(err, &needs) || errors.As(err, &limit) || errors.As(err, &plan)
}

// onePaper is the largest that a sheet takes of its own accord, for all (common
// practice).
func (in Input) onePaper(o Options) (Options, error) {
	if o.Paper != "" {
		return o, nil
	}
	imperial, all := in.ceiling().Units == quantity.Imperial, o
	for i := range sheets {
		s, err := in.subject(i, i+1)
		var size draft.Size
		if err == nil {
			size, _, err = s.roomy(imperial, o).fit(imperial, o)
		}
		switch {
		case cannot(err):
		case err != nil:
			return o, err
		default:
			all.least = max(all.least, slices.Index(draft.Series(imperial), size))
		}
	}
	return all, nil
}

// placed numbers the sheets that can be drawn, up to one of a name and to that of the
// rib, to which another refers.
func (in Input) placed(o Options, name string) Input {
	in.numbered = map[string]int{}
	for i := range max(slices.Index(Names(), name), slices.Index(Names(), ribName)) + 1 {
		s, err := in.subject(i, len(in.numbered)+1)
		if err == nil {
			imperial := in.ceiling().Units == quantity.Imperial
			_, _, err = s.roomy(imperial, o).fit(imperial, o)
		}
		if !cannot(err) {
			in.numbered[sheets[i].name] = len(in.numbered) + 1
		}
	}
	return in
}

func (in Input) drawn(i, place int, o Options) (paper.Sheet, error) {
	s, err := in.subject(i, place)
	if err != nil {
		return paper.Sheet{}, err
	}
	return compose(in, o, s)
}

// Number writes on each sheet which of how many it is.
func Number(set []paper.Sheet) {
	for n, s := range set {
		for _, item := range s.Items {
			if g, ok := item.(paper.Group); ok && g.ID == draft.SheetOf {
				t := g.Items[0].(paper.Text)
				t.Text = fmt.Sprintf("sheet %d of %d", n+1, len(set))
				g.Items[0] = t
			}
		}
	}
}
