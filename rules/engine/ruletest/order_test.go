package ruletest

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// spelled is a tree as a spec's text, its keys and tables in a random order, each
// table under a header or in one line.
func spelled(r *rand.Rand, tree map[string]any) string {
	var top, tables strings.Builder
	names := sortedKeys(tree)
	r.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	for _, name := range names {
		switch v := tree[name].(type) {
		case map[string]any:
			fmt.Fprintf(&tables, "[%s]\n%s", name, lines(r, v))
		case []any:
			for _, x := range v {
				fmt.Fprintf(&tables, "[[%s]]\n%s", name, lines(r, x.(map[string]any)))
			}
		default:
			fmt.Fprintf(&top, "%s = %s\n", name, value(r, v))
		}
	}
	return top.String() + tables.String()
}

func lines(r *rand.Rand, table map[string]any) string {
	names := sortedKeys(table)
	r.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
	var out strings.Builder
	for _, name := range names {
		fmt.Fprintf(&out, "%s = %s\n", name, value(r, table[name]))
	}
	return out.String()
}

func value(r *rand.Rand, v any) string {
	switch v := v.(type) {
	case string:
		return strconv.Quote(v)
	case []any:
		var out []string
		for _, x := range v {
			out = append(out, value(r, x))
		}
		return "[" + strings.Join(out, ", ") + "]"
	case map[string]any:
		return "{ " + strings.Join(strings.Split(strings.TrimSpace(lines(r, v)), "\n"), ", ") + " }"
	default:
		return fmt.Sprint(v)
	}
}

var stationKeys = regexp.MustCompile(`(strap\.stations|lift\.stations|fitting)\.\d+`)

// unlisted is a shot whose stations and fittings are known by their table alone.
func unlisted(s shot) shot {
	out := shot{s.figures, map[string]bool{}}
	for line := range s.found {
		out.found[stationKeys.ReplaceAllString(line, "$1")] = true
	}
	found := shot{map[string]quantity.Value{}, nil}
	for key, v := range s.figures {
		found.most(stationKeys.ReplaceAllString(key, "$1"), v)
	}
	out.figures = found.figures
	return out
}

// The order of keys, of tables, of stations and of fittings means nothing. That of
// legs does: they are passed, and the search spent, one after another.
func TestRandomInAnotherOrder(t *testing.T) {
	for i, d := range random(t) {
		t.Run(d.name, func(t *testing.T) {
			r := rand.New(rand.NewPCG(*seed, uint64(i)))
			sheet := func(tree map[string]any) shot {
				s := review.Spec("x", []byte(spelled(r, tree)), review.Options{Rules: every, Standards: standards.BuiltIn(), On: On})
				require.Empty(t, s.Problems)
				return unlisted(shotFrom(s))
			}
			other := shuffled(r, d.tree)
			same(t, sheet(d.tree), sheet(other))
		})
	}
}

// shuffled is a spec whose stations and fittings are in another order.
func shuffled(r *rand.Rand, tree map[string]any) map[string]any {
	for _, key := range []string{"strap.stations", "lift.stations", "fitting"} {
		v, _ := spec.Lookup(tree, key)
		if l, ok := v.([]any); ok {
			l = slices.Clone(l)
			r.Shuffle(len(l), func(i, j int) { l[i], l[j] = l[j], l[i] })
			tree, _ = spec.With(tree, key, l)
		}
	}
	return tree
}
