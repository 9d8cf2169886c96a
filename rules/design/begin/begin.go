// Package begin drafts the first spec of a ceiling from its span, rise and
// length. What it chooses it takes in stock sizes, puts through every rule, and
// changes until nothing is held or, where that can be had, queried. It does no
// input or output.
package begin

import (
	"fmt"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
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

// Draft is a spec that passes, and its sheet.
type Draft struct {
	Text  []byte
	Sheet *review.Sheet
	// Confirm is how many of its lines are guesses for the designer to confirm.
	Confirm int
}

// ImpossibleError says that what is wanted is no ceiling at all.
type ImpossibleError struct{ Key, Text string }

func (e *ImpossibleError) Error() string { return e.Key + ": " + e.Text }

// NoAnswerError says what stands against every draft: the findings of the one
// that came nearest.
type NoAnswerError struct{ Against []engine.Finding }

func (e *NoAnswerError) Error() string {
	var said []string
	for _, f := range e.Against {
		said = append(said, f.Rule.ID+": "+f.Text)
	}
	return "nothing that was tried passes; against the nearest stands " + strings.Join(said, "; ")
}

// Spec drafts a spec and reviews it to the built-in standards. Its errors are
// an *ImpossibleError and a *NoAnswerError.
func Spec(w Wanted, list []*engine.Rule) (*Draft, error) {
	d := &drafter{wanted: w, sizes: sizesOf(w.Units), options: review.Options{Rules: list, Standards: standards.BuiltIn()}}
	if err := d.measure(); err != nil {
		return nil, err
	}
	best := d.search()
	if best == nil {
		return nil, fmt.Errorf("no grid of coffers fits %s by %s", w.Span, w.Length)
	}
	if best.sheet.Counts.Held+best.sheet.Counts.Uncomputed > 0 || breaks(*best) {
		return nil, &NoAnswerError{against(best.sheet)}
	}
	text, confirm := write(w, best.choice, best.sheet, d.sizes)
	return &Draft{Text: []byte(text), Sheet: best.sheet, Confirm: confirm}, nil
}

// against lists what holds a draft.
func against(s *review.Sheet) []engine.Finding {
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
