package main

import (
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/source"
	"dryfit/rules/review"
)

// resolved reads one spec and works out its ceiling. A spec that can't be is
// reported as check reports it, and ends the command.
func resolved(s streams, path string, named []string, o review.Options) (source.Opened, error) {
	finder, err := source.OneFinder(named)
	if err != nil {
		return source.Opened{}, err
	}
	one := finder.Open(source.InputAt(path), s.in, o)
	if one.Sheet.Ceiling == nil {
		return one, unresolved(s, o.On, append(finder.Sheets(), one.Sheet)...)
	}
	for _, file := range one.Options.Standards.Files {
		one.Hashes = append(one.Hashes, finder.Hashes[file])
	}
	return one, nil
}

// unresolved reports specs that can't be checked at all.
func unresolved(s streams, on string, sheets ...*review.Sheet) error {
	if on == "" {
		on, _ = judgedOn("") // today is always a date
	}
	if err := report.Text(s.err, report.Report{On: on, Runs: []report.Run{{Sheets: sheets}}}, false); err != nil {
		return err
	}
	return verdictError{exitNotChecked}
}
