package ruletest

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// More of some keys can't be worse for some rules: a key, with a star for any
// element, and what its rules begin with.
var better = []struct{ key, rules string }{
	{"route.*.width", "transit."},
	{"route.*.height", "transit."},
	{"route.*.onward", "transit."},
	{"route.*.headroom", "transit."},
	{"route.*.before", "transit."},
	{"route.*.after", "transit."},
	{"route.*.beside", "transit."},
	{"route.*.landing.width", "transit."},
	{"route.*.landing.length", "transit."},
	{"route.*.inside.length", "transit."},
	{"route.*.inside.height", "transit."},
	{"route.*.inside.width", "transit."},
	{"route.*.door.width", "transit."},
	{"route.*.door.height", "transit."},
	{"route.*.capacity", "transit."},
	{"room.height", "transit."},
	{"strap.allowable.load", "strap."},
	{"edge.cover", "close.cover"},
	{"lift.capacity", "install.lift-share"},
	{"lift.reach", "install.lift-reach"},
	{"crew.people", "transit.weight"},
}

// mostTried is a share of the random specs: each key is tried in no more.
const mostTried = 20

// More room, a stronger strap, a wider moulding, a better lift and more hands add
// nothing to what is found, and make nothing of it worse.
func TestRandomWithMore(t *testing.T) {
	tried := map[string]int{}
	for i, d := range random(t) {
		t.Run(d.name, func(t *testing.T) {
			by := []float64{1.02, 1.1, 1.4}[i%3]
			before := map[string]map[string]engine.Severity{} // by the beginning of rules
			for _, b := range better {
				for _, key := range keysLike(d.tree, b.key) {
					if tried[b.key] >= *specs/mostTried {
						continue
					}
					more, ok := enlarged(d.tree, key, b.key, by)
					if !ok {
						continue
					}
					tried[b.key]++
					if before[b.rules] == nil {
						before[b.rules] = worst(t, d.tree, b.rules)
					}
					for rule, severity := range worst(t, more, b.rules) {
						assert.LessOrEqual(t, severity, before[b.rules][rule], "more %s: %s", key, rule)
					}
				}
			}
		})
	}
	for _, b := range better {
		assert.Positive(t, tried[b.key], "no spec has %s", b.key)
	}
}

// keysLike are the keys of a spec that a pattern fits.
func keysLike(tree map[string]any, pattern string) (out []string) {
	before, after, each := strings.Cut(pattern, "*")
	if !each {
		if _, ok := spec.Lookup(tree, pattern); ok {
			return []string{pattern}
		}
		return nil
	}
	for i := range list(tree, strings.TrimSuffix(before, ".")) {
		if key := before + strconv.Itoa(i+1) + after; keysLike(tree, key) != nil {
			out = append(out, key)
		}
	}
	return out
}

// enlarged is a spec with so many times what it has at a key, or one more.
func enlarged(tree map[string]any, key, path string, by float64) (map[string]any, bool) {
	v, _ := spec.Lookup(tree, key)
	if n, ok := v.(int64); ok {
		return spec.With(tree, key, n+1)
	}
	unit := properties()[path].Unit
	q, err := quantity.Parse(unit, v.(string))
	if err != nil {
		return nil, false
	}
	return spec.With(tree, key, plainly(q.SI*by)+unitTexts[unit])
}

// worst is the worst that each rule of those that begin so says at each leg, or in the
// whole spec; a figure that could not be computed is a hold.
func worst(t *testing.T, tree map[string]any, prefix string) map[string]engine.Severity {
	t.Helper()
	var some []*engine.Rule
	for _, r := range every {
		if strings.HasPrefix(r.ID, prefix) {
			some = append(some, r)
		}
	}
	s, faults := review.Tree(tree, review.Options{Rules: some, Standards: standards.BuiltIn(), On: On})
	require.Empty(t, faults)
	out := map[string]engine.Severity{}
	for _, f := range s.Findings {
		if f.Severity < engine.Refer {
			at := f.Rule.ID + legOf(f.At)
			out[at] = max(out[at], f.Severity)
		}
	}
	for _, n := range s.NotChecked {
		if n.Failed {
			out[n.Rule.ID+legOf(n.Key)] = engine.Hold
		}
	}
	return out
}

func legOf(key string) string {
	if parts := spec.SplitKey(key); parts[0] == "route" && len(parts) > 1 {
		return " of leg " + parts[1]
	}
	return ""
}
