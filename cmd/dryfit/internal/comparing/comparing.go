// Package comparing reads and checks the two specs of the compare command, and writes
// what changed between them.
package comparing

import (
	"context"
	"errors"
	"fmt"
	"io"

	"dryfit/cmd/dryfit/internal/build"
	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/outfile"
	"dryfit/cmd/dryfit/internal/report/change"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/design/compare"
	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

// Flags are those of the compare command.
type Flags struct {
	Format, Output, Threshold, FailOn, On string
	Standards                             []string
	Strict, All                           bool
	JudgeBy                               string
}

// Run compares the two specs that args name, the old one first.
func Run(ctx context.Context, s console.Streams, args []string, f Flags) error {
	write, ok := map[string]func(io.Writer, change.Comparison) error{
		"text": change.CompareText, "markdown": change.CompareMarkdown, "json": change.CompareJSON,
		"html": comparePage, "svg": compareSVG,
	}[f.Format]
	if !ok {
		return fmt.Errorf("--format %q is not text, markdown, json, html or svg", f.Format)
	}
	least, ok := map[string]engine.Severity{"": 0, "new-hold": engine.Hold, "new-query": engine.Query}[f.FailOn]
	if !ok {
		return fmt.Errorf("--fail-on %q is not new-hold or new-query", f.FailOn)
	}
	threshold, err := quantity.Parse(quantity.Fraction, f.Threshold)
	if err != nil || threshold.SI < 0 {
		return fmt.Errorf("--threshold %q is not a share; write 0.5%%", f.Threshold)
	}
	on, err := usage.JudgedOn(f.On)
	if err != nil {
		return err
	}
	if args[0] == "-" && args[1] == "-" {
		return errors.New("standard input can be one of the two specs, not both")
	}
	assessments, inputs, err := bothSides(ctx, s, args, f, on)
	if err != nil {
		return err
	}
	c := compare.Of(assessments[0], assessments[1], threshold.SI)
	r := change.Comparison{Comparison: c, Version: build.Version(), On: on, All: f.All}
	if err := outfile.Write(f.Output, s.Out, inputs, func(w io.Writer) error { return write(w, r) }); err != nil {
		return err
	}
	if least > 0 && c.Worse(least) {
		return exit.VerdictError{Status: exit.Fail}
	}
	return nil
}
