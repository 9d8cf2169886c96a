package drawing

import (
	"errors"
	"fmt"
	"slices"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/section"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/spec/quantity"
)

// All makes every sheet that the spec has the keys for, and those of notes; what
// can't be drawn is said.
func All(in sheet.Input, o sheet.Options) (drawn []paper.Sheet, undrawn []string, err error) {
	if o, err = onePaper(in, o); err != nil {
		return nil, nil, err
	}
	in = placed(in, o, section.RibName)
	for i := range sheets {
		s, err := composed(in, i, len(drawn)+1, o)
		switch {
		case cannot(err):
			undrawn = append(undrawn, err.Error())
		case err != nil:
			return nil, nil, err
		default:
			drawn = append(drawn, s)
		}
	}
	drawn = append(drawn, sheet.Notes(in, drawn, len(drawn)+1)...)
	Number(drawn)
	return drawn, undrawn, nil
}

// cannot reports whether an error says why a sheet can't be drawn of a ceiling.
func cannot(err error) bool {
	var needs *sheet.NeedsError
	var limit *sheet.LimitError
	var plan *NoPlanError
	return errors.As(err, &needs) || errors.As(err, &limit) || errors.As(err, &plan)
}

// onePaper is the largest that a sheet takes of its own accord, for all (common
// practice).
func onePaper(in sheet.Input, o sheet.Options) (sheet.Options, error) {
	if o.Paper != "" {
		return o, nil
	}
	imperial, all := in.Ceiling().Units == quantity.Imperial, o
	for i := range sheets {
		s, err := made(in, i, i+1)
		var size draft.Size
		if err == nil {
			size, err = in.SizeOf(s, o)
		}
		switch {
		case cannot(err):
		case err != nil:
			return o, err
		default:
			all.Least = max(all.Least, slices.Index(draft.Series(imperial), size))
		}
	}
	return all, nil
}

// placed numbers the sheets that can be drawn, up to one of a name and to that of the
// rib, to which another refers.
func placed(in sheet.Input, o sheet.Options, name string) sheet.Input {
	in.Places = map[string]int{}
	for i := range max(slices.Index(Names(), name), slices.Index(Names(), section.RibName)) + 1 {
		s, err := made(in, i, len(in.Places)+1)
		if err == nil {
			_, err = in.SizeOf(s, o)
		}
		if !cannot(err) {
			in.Places[sheets[i].name] = len(in.Places) + 1
		}
	}
	return in
}

func composed(in sheet.Input, i, place int, o sheet.Options) (paper.Sheet, error) {
	s, err := made(in, i, place)
	if err != nil {
		return paper.Sheet{}, err
	}
	return sheet.Compose(in, o, s)
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
