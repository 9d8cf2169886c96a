package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/design/begin"
	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
	"dryfit/spec/quantity"
)

// beginFlags are those of the begin command.
type beginFlags struct{ title, units, profile, span, rise, length, output string }

func beginCommand(s streams) *cobra.Command {
	var f beginFlags
	c := &cobra.Command{
		Use:   "begin",
		Short: "Write a first spec that passes",
		Long: "Writes a commented spec that passes its own check to the built-in standards. Sizes are\n" +
			"derived from the rules. The values that dryfit chose are marked \"confirm\". The keys that\n" +
			"you must supply, such as the allowable load of a strap, are commented out. On a terminal\n" +
			"it asks for what is missing. It never overwrites a file.\n" +
			"\n" +
			"Exit status: 0 written, 1 no sizes were found that pass, 2 bad usage or not written.",
		Example: "  dryfit begin --span 4200mm --rise 840mm --length 7080mm\n" +
			"  dryfit begin --span \"14ft\" --rise \"3ft\" --length \"23ft 6in\" --output hall.ceiling.toml\n" +
			"  dryfit begin --profile semicircular --span 3m --length 6m",
		Args: cobra.NoArgs,
		RunE: func(*cobra.Command, []string) error { return draft(s, f) },
	}
	flags := c.Flags()
	flags.StringVar(&f.span, "span", "", "springing to springing, on the finished underside: a `length`, 4200mm or 13ft 9in")
	flags.StringVar(&f.rise, "rise", "", "springing to crown: a `length`; flat and semicircular vaults have none of their own")
	flags.StringVar(&f.length, "length", "", "over all panels: a `length`")
	flags.StringVar(&f.profile, "profile", "segmental", "the `shape`: "+strings.Join(begin.Profiles(), ", "))
	flags.StringVar(&f.units, "units", "", "metric or imperial (default: as the span is written)")
	flags.StringVar(&f.title, "title", "", "what the drawings call the ceiling")
	flags.StringVar(&f.output, "output", "", "write to a new `file`, *"+extension+", instead of standard output")
	completeWith(c, "units", "metric", "imperial")
	completeWith(c, "profile", begin.Profiles()...)
	return c
}

func draft(s streams, f beginFlags) error {
	if !slices.Contains(begin.Profiles(), f.profile) {
		return fmt.Errorf("--profile %q is not one of %s", f.profile, strings.Join(begin.Profiles(), ", "))
	}
	if err := free(f.output); err != nil {
		return err
	}
	if terminal(s.in) {
		f.ask(s.in, s.err)
	}
	if missing := f.missing(); len(missing) > 0 {
		return fmt.Errorf("begin needs %s", strings.Join(missing, ", "))
	}
	w, err := f.wanted()
	if err != nil {
		return err
	}
	d, err := begin.Spec(w, catalog.Rules())
	var impossible *begin.ImpossibleError
	var none *begin.NoAnswerError
	switch {
	case errors.As(err, &impossible):
		return fmt.Errorf("--%s: %s", strings.TrimPrefix(impossible.Key, "vault."), impossible.Text)
	case errors.As(err, &none):
		said := fmt.Sprintf("dryfit: no spec was written. Profile %s, span %s, rise %s, length %s: nothing that was tried passes, and against what came nearest stands:",
			w.Profile, w.Span, orDash(w.Rise), w.Length)
		fmt.Fprintln(s.err, report.Paragraph(report.Safe(said)))
		for _, a := range none.Against {
			fmt.Fprintln(s.err, report.Paragraph(report.Safe(a.Rule.ID+": "+a.Text+".")))
		}
		return verdictError{exitFail}
	case err != nil:
		return err
	}
	if err := writeNew(f.output, s.out, d.Text); err != nil {
		return err
	}
	to := "the spec"
	if f.output != "" {
		to = f.output
	}
	fmt.Fprintln(s.err, report.Paragraph(report.Safe(drafted(to, d))))
	return nil
}

// drafted says what the draft is worth.
func drafted(to string, d *begin.Draft) string {
	text := fmt.Sprintf("%s passes its own check to the built-in standards (%s: %s); %d of its lines are to be confirmed.",
		to, d.Sheet.Verdict, d.Sheet.Counts, d.Confirm)
	for _, f := range d.Sheet.Findings {
		if f.Severity == engine.Query {
			text += " Queried, and to be answered: " + f.Rule.ID + ": " + f.Text + "."
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

// missing lists the flags without which there is nothing to draft.
func (f *beginFlags) missing() []string {
	var out []string
	for _, q := range f.questions() {
		if *q.to == "" {
			out = append(out, "--"+q.flag)
		}
	}
	return out
}

type question struct {
	flag, text string
	to         *string
}

func (f *beginFlags) questions() []question {
	out := []question{{"span", "Span, springing to springing on the finished underside (4200mm, 13ft 9in)", &f.span}}
	if begin.HasRise(f.profile) {
		out = append(out, question{"rise", "Rise, springing to crown", &f.rise})
	}
	return append(out, question{"length", "Length, over all panels", &f.length})
}

// ask asks for what is missing until each answer is a length; the end of the
// input leaves it missing.
func (f *beginFlags) ask(in io.Reader, out io.Writer) {
	answers := bufio.NewScanner(in)
	for _, q := range f.questions() {
		for *q.to == "" {
			fmt.Fprintf(out, "%s: ", q.text)
			if !answers.Scan() {
				fmt.Fprintln(out)
				return
			}
			answer := strings.TrimSpace(answers.Text())
			if _, err := quantity.Parse(quantity.Metre, answer); err != nil {
				fmt.Fprintln(out, "  "+report.Safe(err.Error()))
				continue
			}
			*q.to = answer
		}
	}
}

// wanted reads the units, which are those that the span is written in unless
// they are said.
func (f *beginFlags) wanted() (begin.Wanted, error) {
	w := begin.Wanted{Title: f.title, Profile: f.profile, Span: f.span, Rise: f.rise, Length: f.length, Units: quantity.Metric}
	switch {
	case f.units == "imperial", f.units == "" && !strings.HasSuffix(strings.TrimSpace(f.span), "m"):
		w.Units = quantity.Imperial
	case f.units != "" && f.units != "metric":
		return w, fmt.Errorf("--units %q is not metric or imperial", f.units)
	}
	return w, nil
}

// free refuses an output that is there, or that no check would find.
func free(path string) error {
	if path == "" {
		return nil
	}
	info, err := os.Lstat(path)
	switch {
	case err == nil && (info.Mode().IsRegular() || info.IsDir()):
		return fmt.Errorf("write %s: it is there already, and begin overwrites nothing", path)
	case err == nil:
		return nil // a device or a pipe
	case !strings.HasSuffix(path, extension):
		return fmt.Errorf("write %s: a spec's name ends in %s", path, extension)
	default:
		return nil
	}
}

// writeNew writes to standard output, through a device or a pipe, or to a file
// that was not there.
func writeNew(path string, stdout io.Writer, text []byte) error {
	write := func(w io.Writer) error { _, err := w.Write(text); return err }
	if info, err := os.Stat(path); path == "" || err == nil && !info.Mode().IsRegular() {
		return writeOutput(path, stdout, nil, write)
	}
	if err := mayWrite(path, nil); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return fmt.Errorf("write %s: %s", path, reason(err))
	}
	if err = errors.Join(write(f), f.Close()); err != nil {
		os.Remove(path) // half a spec is none
		return fmt.Errorf("write %s: %w", path, err)
	}
	return nil
}
