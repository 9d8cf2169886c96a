package checking

import (
	"fmt"
	"path"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/cmd/dryfit/internal/usage"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// selection is which rules a check leaves out: those that --rule does not name,
// and those that --skip does. A pattern is the id of a rule or a glob.
type selection struct{ Only, Skip []string }

// leaves returns why a rule is left out, "" where it is not; nil where none is.
func (s selection) leaves(list []*engine.Rule) (func(*engine.Rule) string, error) {
	for i, p := range slices.Concat(s.Only, s.Skip) {
		if err := known(p, list); err != nil {
			return nil, fmt.Errorf("%s %w", map[bool]string{true: "--rule", false: "--skip"}[i < len(s.Only)], err)
		}
	}
	if len(s.Only)+len(s.Skip) == 0 {
		return nil, nil
	}
	return s.why, nil
}

func (s selection) why(r *engine.Rule) string {
	named := func(p string) bool { return matches(p, r) }
	if i := slices.IndexFunc(s.Skip, named); i >= 0 {
		return "left out by --skip " + s.Skip[i]
	}
	if len(s.Only) > 0 && !slices.ContainsFunc(s.Only, named) {
		return "left out, since --rule names only " + strings.Join(s.Only, ", ")
	}
	return ""
}

// stays says which rules --skip names that refer, which are not left out.
func (s selection) stays(list []*engine.Rule) string {
	var ids []string
	for _, r := range list {
		if r.Severity == engine.Refer && slices.Contains(s.Skip, r.ID) {
			ids = append(ids, r.ID)
		}
	}
	if len(ids) == 0 {
		return ""
	}
	return show.Paragraph("dryfit: --skip does not leave out rules that refer: " + strings.Join(ids, ", "))
}

func matches(pattern string, r *engine.Rule) bool {
	ok, err := path.Match(pattern, r.ID)
	return ok && err == nil
}

// known fails on a pattern that names no rule.
func known(pattern string, list []*engine.Rule) error {
	if _, err := path.Match(pattern, ""); err != nil {
		return fmt.Errorf("%q is not a valid pattern: a bracket or a backslash is not closed", pattern)
	}
	if slices.ContainsFunc(list, func(r *engine.Rule) bool { return matches(pattern, r) }) {
		return nil
	}
	return fmt.Errorf("%q names no rule%s", pattern, usage.IsIt(pattern, Patterns(list), "dryfit basis lists them"))
}

// Patterns are the ids of all rules, after a glob for each family.
func Patterns(list []*engine.Rule) []string {
	var globs, ids []string
	for _, r := range list {
		family, _, _ := strings.Cut(r.ID, ".")
		if glob := family + ".*"; !slices.Contains(globs, glob) {
			globs = append(globs, glob)
		}
		ids = append(ids, r.ID)
	}
	return append(globs, ids...)
}

// requirements are what the command names with --require.
func requirements(patterns []string) (out []standards.Requirement, err error) {
	var ids []string
	for _, r := range catalog.Rules() {
		ids = append(ids, r.ID)
	}
	for _, p := range patterns {
		need, ok := standards.RequirementOf(p, "--require", ids)
		if !ok {
			return nil, fmt.Errorf("--require %q names no rule and no key%s", p, usage.IsIt(p, append(ids, spec.Keys()...), "dryfit basis lists the rules, docs/format.md the keys"))
		}
		out = append(out, need)
	}
	return out, nil
}
