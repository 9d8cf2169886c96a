package source

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
)

// Gather lists the specs at the paths: a file as it is named, a folder with
// all specs under it, - for standard input; and a standards file, where the walk
// takes one, with all specs that it rules. A path that is not there is listed too;
// reading it says so. No spec at all is an error, but not of a standards file.
func (w *Walker) Gather(paths []string, stdinName string) ([]Input, error) {
	var inputs []Input
	for _, named := range paths {
		if named == "-" {
			inputs = append(inputs, Input{Name: stdinName, Stdin: true})
			continue
		}
		matches, err := expanded(named)
		if err != nil {
			return nil, err
		}
		for _, p := range matches {
			inputs = append(inputs, w.under(p)...)
		}
	}
	if len(inputs) == 0 && len(w.rule) > 0 {
		fmt.Fprintln(w.warnings, show.Safe("dryfit: no spec is checked to "+strings.Join(w.rule, ", ")+w.leftOut()))
		return nil, nil
	}
	if len(inputs) == 0 {
		return nil, fmt.Errorf("no *%s under %s%s", Extension, strings.Join(paths, ", "), w.leftOut())
	}
	return unique(inputs), nil
}

// under are the specs that one path stands for.
func (w *Walker) under(path string) []Input {
	switch {
	case IsFolder(path):
		return w.walk(path)
	case w.Rules && IsStandards(path):
		return w.ruled(path)
	default:
		return []Input{NewInput(path)}
	}
}

// unique drops an input that was named twice.
func unique(inputs []Input) []Input {
	seen := map[string]bool{}
	return slices.DeleteFunc(inputs, func(in Input) bool {
		twice := seen[in.Name]
		seen[in.Name] = true
		return twice
	})
}
