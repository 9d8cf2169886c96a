package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/begin"
	"dryfit/rules/engine"
	"dryfit/rules/review/catalog"
	"dryfit/spec/quantity"
)

// beginFlags are those of the begin command.
type beginFlags struct {
	title, units, profile, span, rise, length, output string
	room, survey, height                              string
	measured                                          *begin.Survey
	curved                                            bool // the profile is given
	around, along                                     int
	species, construction, skin                       string
	take                                              []string
}

func beginCommand(s console.Streams) *cobra.Command {
	var f beginFlags
	c := &cobra.Command{
		Use:   "begin",
		Short: "Write a first spec that passes",
		Long: "Writes a commented spec that passes its own check to the built-in standards. Sizes are\n" +
			"derived from the rules. The values that dryfit chose are marked \"confirm\". The keys that\n" +
			"you must supply, such as the allowable load of a strap, are commented out. On a\n" +
			"terminal, begin asks for each missing value (room, curve, grid) and shows the result of\n" +
			"each answer. It never overwrites a file.\n" +
			"\n" +
			"With --room or --survey, dryfit chooses the vault. The span and the length are the\n" +
			"greatest that leave the gaps, the seasonal movement and the travel of the last panel.\n" +
			"The rise is the greatest with which a panel comes through the route and tilts into\n" +
			"place. A value that you give is kept. If no spec passes with it, dryfit prints values\n" +
			"that would pass and writes nothing.\n" +
			"\n" +
			"Exit status: 0 written, 1 no sizes found that pass, 2 bad usage or not written.",
		Example: "  dryfit begin --room 4.57m,5.1m,2.7m --output hall.ceiling.toml\n" +
			"  dryfit begin --room 15ft,20ft,9ft --around 7 --species ash --take crew.people=4\n" +
			"  dryfit begin --survey room.toml --height 2.7m\n" +
			"  dryfit begin --span 4200mm --rise 840mm --length 7080mm\n" +
			"  dryfit begin --span \"14ft\" --rise \"3ft\" --length \"23ft 6in\" --output hall.ceiling.toml\n" +
			"  dryfit begin --profile semicircular --span 3m --length 6m",
		Args: cobra.NoArgs,
		RunE: func(c *cobra.Command, _ []string) error {
			f.curved = c.Flags().Changed("profile")
			return draft(c.Context(), s, f)
		},
	}
	flags := c.Flags()
	flags.StringVar(&f.span, "span", "", "the `length` from springing to springing, on the finished underside: 4200mm or 13ft 9in")
	flags.StringVar(&f.rise, "rise", "", "the `length` from springing to crown; not for flat and semicircular vaults")
	flags.StringVar(&f.length, "length", "", "the `length` of the vault, over all panels")
	flags.StringVar(&f.room, "room", "", "the `room`, in place of --span and --length: width,length,height from floor to springing")
	flags.StringVar(&f.survey, "survey", "", "a `file` with the table [survey], the measured room, in place of --room; needs --height")
	flags.StringVar(&f.height, "height", "", "the `length` from floor to springing, with --survey")
	flags.IntVar(&f.around, "around", 0, "the `count` of coffers around the arc (default: dryfit chooses)")
	flags.IntVar(&f.along, "along", 0, "the `count` of coffers along the vault (default: dryfit chooses)")
	flags.StringVar(&f.species, "species", "", "the `wood` of ribs and rails (default white oak)")
	flags.StringVar(&f.construction, "construction", "", "how ribs are made: "+usage.OneOf(constructions)+" (default laminated)")
	flags.StringVar(&f.skin, "skin", "", "the `material` of the skin (default bendable plywood)")
	flags.StringArrayVar(&f.take, "take", nil, "set a key of the spec, `KEY=VALUE`; may be repeated")
	flags.StringVar(&f.profile, "profile", "segmental", "the `shape` of the curve: "+strings.Join(begin.Profiles(), ", "))
	flags.StringVar(&f.units, "units", "", "metric or imperial (default: the units of the span)")
	flags.StringVar(&f.title, "title", "", "the ceiling's title on drawings")
	flags.StringVar(&f.output, "output", "", "write to a new `file`, *"+source.Extension+", instead of standard output")
	usage.CompleteWith(c, "units", "metric", "imperial")
	usage.CompleteWith(c, "profile", begin.Profiles()...)
	usage.CompleteWith(c, "construction", constructions...)
	return c
}

// constructions are those that a rib may have.
var constructions = []string{"laminated", "sawn", "solid"}

func draft(ctx context.Context, s console.Streams, f beginFlags) error {
	if !slices.Contains(begin.Profiles(), f.profile) {
		return fmt.Errorf("--profile %q is not one of %s", f.profile, strings.Join(begin.Profiles(), ", "))
	}
	if err := free(f.output); err != nil {
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
	if err := writeNew(f.output, s.Out, d.Text); err != nil {
		return err
	}
	to := "the spec"
	if f.output != "" {
		to = f.output
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
		said := fmt.Sprintf("dryfit: no spec was written. Profile %s, %s: nothing that was tried passes, and against what came nearest stands:", w.Profile, size)
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

// wanted reads the flags. The units are those that the span, or the room's width,
// is written in unless they are said.
func (f *beginFlags) wanted() (begin.Wanted, error) {
	w := begin.Wanted{
		Title: f.title, Profile: f.profile, Span: f.span, Rise: f.rise, Length: f.length, Units: quantity.Metric,
		Around: f.around, Along: f.along, Species: f.species, Construction: f.construction, Skin: f.skin,
	}
	first := f.span
	if f.room != "" || f.survey != "" {
		r, err := f.inRoom()
		if err != nil {
			return w, err
		}
		w.Room, first = r, r.Width
	}
	if f.measured != nil {
		w.Survey, first = f.measured, f.measured.Written()
	}
	switch {
	case f.units == "imperial", f.units == "" && !strings.HasSuffix(strings.TrimSpace(first), "m"):
		w.Units = quantity.Imperial
	case f.units != "" && f.units != "metric":
		return w, fmt.Errorf("--units %q is not metric or imperial", f.units)
	case f.around < 0 || f.along < 0:
		return w, errors.New("--around and --along are counts, from 1")
	case f.construction != "" && !slices.Contains(constructions, f.construction):
		return w, fmt.Errorf("--construction %q is not %s", f.construction, usage.OneOf(constructions))
	}
	for _, text := range f.take {
		c, err := begin.Take(text)
		if err != nil {
			return w, fmt.Errorf("--take %s: %w", text, err)
		}
		w.Take = append(w.Take, c)
	}
	return w, nil
}

// inRoom reads the room, which is given in place of span and length.
func (f *beginFlags) inRoom() (*begin.Room, error) {
	switch {
	case f.span != "" || f.length != "":
		return nil, errors.New("the room is given in place of --span and --length: both follow from it")
	case f.survey != "" && f.room != "":
		return nil, errors.New("--survey is given in place of --room: the readings say how wide and long it is")
	case f.survey != "":
		return &begin.Room{Height: f.height}, nil
	case f.height != "":
		return nil, errors.New("--height goes with --survey; --room has its own")
	}
	parts := strings.Split(f.room, ",")
	if len(parts) != 3 {
		return nil, fmt.Errorf("--room %q is not width,length,height, as in 4.57m,5.1m,2.7m", f.room)
	}
	for i := range parts {
		parts[i] = strings.TrimSpace(parts[i])
	}
	return &begin.Room{Width: parts[0], Length: parts[1], Height: parts[2]}, nil
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
	case !strings.HasSuffix(path, source.Extension):
		return fmt.Errorf("write %s: a spec's name ends in %s", path, source.Extension)
	default:
		return nil
	}
}

// writeNew writes to standard output, through a device or a pipe, or to a file
// that was not there.
func writeNew(path string, stdout io.Writer, text []byte) error {
	write := func(w io.Writer) error { _, err := w.Write(text); return err }
	if info, err := os.Stat(path); path == "" || err == nil && !info.Mode().IsRegular() {
		return outfile.Write(path, stdout, nil, write)
	}
	if err := outfile.MayWrite(path, nil); err != nil {
		return fmt.Errorf("write %s: %w", path, err)
	}
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return fmt.Errorf("write %s: %s", path, source.Reason(err))
	}
	if err = errors.Join(write(f), f.Close()); err != nil {
		os.Remove(path) // half a spec is none
		return fmt.Errorf("write %s: %w", path, err)
	}
	return nil
}
