package main

import (
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/review"
)

// resolved reads one spec and works out its ceiling. A spec that can't be is
// reported as check reports it, and ends the command.
func resolved(s streams, path string, named []string, o review.Options) (single, error) {
	finder, err := oneFinder(named)
	if err != nil {
		return single{}, err
	}
	one := finder.open(inputAt(path), s.in, o)
	if one.sheet.Ceiling == nil {
		return one, unresolved(s, o.On, append(finder.sheets(), one.sheet)...)
	}
	for _, file := range one.options.Standards.Files {
		one.hashes = append(one.hashes, finder.hashes[file])
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
