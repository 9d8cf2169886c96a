// Package beginning drafts a first spec from the flags of the begin command and the
// answers at a terminal.
package beginning

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/begin"
	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
)

// Flags are those of the begin command.
type Flags struct {
	Title, Units, Profile, Span, Rise, Length, Output string
	Room, Survey, Height                              string
	measured                                          *begin.Survey
	Curved                                            bool // the profile is given
	Around, Along                                     int
	Species, Construction, Skin                       string
	Take                                              []string
}

// Constructions are those that a rib may have.
var Constructions = []string{"laminated", "sawn", "solid"}

// Run writes a first spec, after it has asked at a terminal for what the flags do
// not give.
func Run(ctx context.Context, s console.Streams, f Flags) error {
	if !slices.Contains(begin.Profiles(), f.Profile) {
		return fmt.Errorf("--profile %q is not one of %s", f.Profile, strings.Join(begin.Profiles(), ", "))
	}
	if err := free(f.Output); err != nil {
		return err
	}
	if err := f.measure(s); err != nil {
		return err
	}
	if console.Terminal(s.In) {
		f.ask(ctx, s.In, s.Err)
	}
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if missing := f.missing(); len(missing) > 0 {
		return fmt.Errorf("begin needs %s", strings.Join(missing, ", "))
	}
	w, err := f.wanted()
	if err != nil {
		return err
	}
	d, err := begin.Spec(w, catalog.Rules())
	if ctx.Err() != nil {
		return ctx.Err()
	}
	if err != nil {
		return undrafted(s, w, err)
	}
	if err := writeNew(f.Output, s.Out, d.Text); err != nil {
		return err
	}
	to := "the spec"
	if f.Output != "" {
		to = f.Output
	}
	fmt.Fprintln(s.Err, show.Paragraph(show.Safe(drafted(to, d))))
	return nil
}

// undrafted says why there is no draft, and what would do.
func undrafted(s console.Streams, w begin.Wanted, err error) error {
	var impossible *begin.ImpossibleError
	var none *begin.NoAnswerError
	switch {
	case errors.As(err, &impossible) && w.Survey != nil && strings.HasPrefix(impossible.Key, "survey"):
		return atReading(w.Survey.Document, impossible.Key, impossible.Text)
	case errors.As(err, &impossible):
		said := fmt.Errorf("--%s: %s", strings.TrimPrefix(strings.TrimPrefix(impossible.Key, "vault."), "grid."), impossible.Text)
		if len(impossible.Instead) > 0 {
			said = fmt.Errorf("%w; %s", said, strings.Join(impossible.Instead, "; "))
		}
		return said
	case errors.As(err, &none):
		size := fmt.Sprintf("span %s, rise %s, length %s", w.Span, orDash(w.Rise), w.Length)
		if r := w.Room; r != nil {
			size = fmt.Sprintf("room %s by %s by %s", r.Width, r.Length, r.Height)
		}
		said := fmt.Sprintf("dryfit: no spec was written. Profile %s, %s: no draft passes; the nearest draft fails these rules:", w.Profile, size)
		fmt.Fprintln(s.Err, show.Paragraph(show.Safe(said)))
		for _, a := range none.Against {
			fmt.Fprintln(s.Err, show.Paragraph(show.Safe(a.Rule.ID+": "+a.Text+".")))
		}
		for _, other := range none.Instead {
			fmt.Fprintln(s.Err, show.Paragraph(show.Safe(other+".")))
		}
		return exit.VerdictError{Status: exit.Fail}
	default:
		return err
	}
}

// drafted says what the draft is worth.
func drafted(to string, d *begin.Draft) string {
	text := fmt.Sprintf("%s passes its own check to the built-in standards (%s: %s); %d of its lines are marked confirm.",
		to, d.Assessment.Verdict, d.Assessment.Counts, d.Confirm)
	for _, f := range d.Assessment.Findings {
		if f.Severity == engine.Query {
			text += " Query to answer: " + f.Rule.ID + ": " + f.Text + "."
		}
	}
	return text
}

func orDash(rise string) string {
	if rise == "" {
		return "its own"
	}
	return rise
}
