// Package checking checks specs as the check command is asked to: which of them, by
// which rules and standards, once or again at each save, in each format.
package checking

import (
	"context"
	"errors"
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/review/catalog"
)

// Flags are those of the check command.
type Flags struct {
	Format    string
	Output    string
	Colour    string
	On        string
	StdinName string
	Strict    bool
	Thorough  bool
	Jobs      usage.Jobs
	Standards []string
	From      string // a revision, whose standards hold
	Since     string // a revision
	Baseline  string // a revision, whose findings fail nothing
	Part      string // K/N
	Watch     bool
	Summary   bool
	Rules     selection
	Require   []string // rules that must be checked, keys that must be given
}

// Run checks specs and folders by their paths. The verdict is the exit status of
// the error that it returns.
func Run(ctx context.Context, s console.Streams, paths []string, f Flags) error {
	if stay := f.Rules.stays(catalog.Rules()); stay != "" {
		fmt.Fprintln(s.Err, stay)
	}
	if f.Watch {
		return watch(ctx, s, paths, f)
	}
	format, err := f.format(s)
	if err != nil {
		return err
	}
	c, err := f.prepare(ctx, s, paths)
	if err != nil {
		return err
	}
	err = outfile.Stream(f.Output, s.Out, append(source.InputsAt(f.Standards), c.inputs...), func(w io.Writer) error {
		err := c.run(ctx, f, format(w, c.Report))
		if ctx.Err() != nil { // what is not whole is not written
			return errors.New("interrupted")
		}
		return err
	})
	if err != nil {
		return err
	}
	return exit.Outcome(c.Verdict())
}
