// Package single opens the one spec of a command that takes one, and reports it where
// there is nothing to go on with.
package single

import (
	"fmt"
	"io"
	"slices"

	"dryfit/cmd/dryfit/internal/console"
	"dryfit/cmd/dryfit/internal/exit"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Open reads one spec and works out its ceiling. A spec that can't be is
// reported as check reports it, and ends the command.
func Open(s console.Streams, path string, named []string, o review.Options) (source.Opened, error) {
	finder, err := source.OneFinder(named)
	if err != nil {
		return source.Opened{}, err
	}
	one := finder.Open(source.InputAt(path), s.In, o)
	if one.Assessment.Ceiling == nil {
		return one, Unresolved(s, o.On, append(finder.Assessments(), one.Assessment)...)
	}
	for _, file := range one.Options.Standards.Files {
		one.Hashes = append(one.Hashes, finder.Hashes[file])
	}
	return one, nil
}

// Unresolved reports specs that can't be checked at all.
func Unresolved(s console.Streams, on string, assessments ...*review.Assessment) error {
	if on == "" {
		on, _ = usage.JudgedOn("") // today is always a date
	}
	if err := report.Write(s.Err, report.Report{On: on, Runs: []report.Run{{Assessments: assessments}}}, report.Text(false)); err != nil {
		return err
	}
	return exit.VerdictError{Status: exit.NotChecked}
}

// Withheld prints what fails a spec, and what there is therefore none of.
func Withheld(s console.Streams, to io.Writer, one source.Opened, on, none string) error {
	failing := *one.Assessment
	failing.Findings = slices.DeleteFunc(slices.Clone(failing.Findings), func(f engine.Finding) bool {
		return f.Accepted != nil || f.Severity != engine.Hold && (f.Severity != engine.Query || !one.Options.Strict)
	})
	failing.NotChecked = slices.DeleteFunc(slices.Clone(failing.NotChecked), func(n engine.NotChecked) bool { return !n.Failed })
	failing.Assumed, failing.Awaited, failing.Loosened = nil, nil, nil
	if err := report.Write(to, report.Report{On: on, Runs: []report.Run{{Assessments: []*review.Assessment{&failing}}}}, report.Text(false)); err != nil {
		return err
	}
	fmt.Fprintln(s.Err, "dryfit: "+none)
	return exit.Outcome(one.Assessment.Verdict)
}
