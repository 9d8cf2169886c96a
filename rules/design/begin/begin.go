// Package begin drafts the first spec of a ceiling from its span, rise and
// length. What it chooses it takes in stock sizes, puts through every rule, and
// changes until nothing is held or, where that can be had, queried. It does no
// input or output.
package begin

import (
	"errors"
	"fmt"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/review"
	"dryfit/spec"
	"dryfit/spec/edit"
	"dryfit/spec/quantity"
)

// Wanted is what the designer says. The lengths are as a spec writes them.
type Wanted struct {
	Title   string
	Units   quantity.System
	Profile string
	Span    string
	Rise    string // empty where the profile has none of its own
	Length  string
	// Room is where the span and the length are worked out, and not given.
	Room *Room
	// Survey is the room as measured, of which Room has the height alone.
	Survey *Survey
	// What is taken as given; empty or none: chosen.
	Around, Along               int
	Species, Construction, Skin string
	// Take are keys with the values that they are to have, whatever is chosen.
	Take []edit.Change
}

// Profiles lists the profiles, the usual one first.
func Profiles() []string {
	out := []string{string(spec.Segmental)}
	for _, p := range spec.Profiles() {
		if p != spec.Segmental {
			out = append(out, string(p))
		}
	}
	return out
}

// HasRise reports whether a profile needs its rise to be said.
func HasRise(profile string) bool { return layout.ShapeOf(spec.Profile(profile)).ChoosesRise }

// Draft is a spec that passes, and its assessment.
type Draft struct {
	Text       []byte
	Assessment *review.Assessment
	// Confirm is how many of its lines are guesses for the designer to confirm.
	Confirm int
}

// Spec drafts a spec and reviews it to the built-in standards. Its errors are
// an *ImpossibleError, a *NoAnswerError and a *TooSmallError.
func Spec(w Wanted, list []*engine.Rule) (*Draft, error) {
	d, best, err := attempted(w, list)
	var impossible *ImpossibleError
	switch {
	case errors.As(err, &impossible):
		impossible.Instead = instead(w, list)
		return nil, impossible
	case err != nil:
		return nil, err
	case best == nil:
		return nil, fmt.Errorf("no grid of coffers fits %s by %s", d.sizes.written(d.span), d.sizes.written(d.length))
	}
	d.options.Rules = list
	if best.assessment, err = d.review(best.choice); err != nil {
		return nil, err
	}
	if !passes(*best) {
		return nil, &NoAnswerError{against(best.assessment), instead(w, list)}
	}
	text, confirm := write(d.wanted, best.choice, best.assessment, d.sizes)
	return &Draft{Text: []byte(text), Assessment: best.assessment, Confirm: confirm}, nil
}
