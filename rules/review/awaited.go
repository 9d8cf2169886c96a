package review

import (
	"cmp"
	"slices"

	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/standards"
)

// Awaited is an absent key and the rules that are not checked, or not in full,
// without it.
type Awaited struct {
	Key   string
	Rules []*engine.Rule
}

// mostAwaited is how many keys an author is asked for first.
const mostAwaited = 3

// awaited are the absent keys of the spec that most rules wait for, the most awaited
// first, three at most.
func awaited(c *layout.Ceiling, list []engine.NotChecked) []Awaited {
	wait := map[string][]*engine.Rule{}
	var keys []string
	for _, n := range list {
		if n.Why != "" || standards.OwnLeg(n.Key) {
			continue
		}
		for _, key := range append([]string{n.Key}, missing(c, n.Rule)...) {
			if wait[key] == nil {
				keys = append(keys, key)
			}
			if !slices.Contains(wait[key], n.Rule) {
				wait[key] = append(wait[key], n.Rule)
			}
		}
	}
	var most []Awaited
	for _, key := range keys {
		most = append(most, Awaited{key, wait[key]})
	}
	slices.SortStableFunc(most, func(a, b Awaited) int { return cmp.Compare(len(b.Rules), len(a.Rules)) })
	return most[:min(len(most), mostAwaited)]
}

// missing are the keys that a rule needs and the spec does not have.
func missing(c *layout.Ceiling, r *engine.Rule) []string {
	var keys []string
	for _, key := range r.Needs {
		if !c.Has(key) {
			keys = append(keys, key)
		}
	}
	return keys
}
