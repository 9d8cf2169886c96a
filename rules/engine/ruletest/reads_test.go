package ruletest

import (
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

var turns = flag.Int("turns", 3, "each ceiling has one in so many of its keys put otherwise")

// every is the rules of all families.
var every = catalog.Rules()

// said is all that a rule says of a ceiling, in full figures.
func said(o engine.Outcome) map[*engine.Rule]string {
	out := map[*engine.Rule]string{}
	for _, f := range o.Findings {
		out[f.Rule] += fmt.Sprintln(f.At, f.Related, f.Severity, f.Text, f.Measured, f.Bound, f.Offers)
	}
	for _, n := range o.NotChecked {
		out[n.Rule] += fmt.Sprintln("not checked", n.Key, n.Why, n.Failed)
	}
	return out
}

// shown is all that the calculation sheet shows of a figure but its symbol,
// which numbers the pieces of a panel.
func shown(f figure.Figure) string {
	var b strings.Builder
	fmt.Fprintln(&b, f.Name, f.Value, f.Formula, f.Method)
	for _, t := range f.Terms {
		fmt.Fprintln(&b, t.Symbol, t.Key, t.Value)
	}
	return b.String()
}

// state is what is said and shown of a spec, with the keys that were read for
// it.
type state struct {
	outcome engine.Outcome
	said    map[*engine.Rule]string
	figures map[string]figure.Figure
}

// presented are the keys that change how a spec is printed, and nothing else.
var presented = spec.IDs("project.units")

func stateOf(tree map[string]any, std *standards.Standards, m engine.Means, list ...*engine.Rule) (state, bool) {
	c, faults := layout.Resolve(tree, std, nil)
	if len(faults) > 0 {
		return state{}, false
	}
	s := state{outcome: engine.Run(list, c, std, m), figures: map[string]figure.Figure{}}
	s.said = said(s.outcome)
	return s, true
}

func (s *state) work() {
	for _, f := range s.outcome.Results.Figures() {
		s.figures[f.Key] = f
	}
}

// Whatever key of a spec is put otherwise, what no rule and no figure was seen
// to read changes nothing of it. Each ceiling takes its turn of the changes, so
// that all keys are put otherwise in some of them.
func TestNothingChangesUnread(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and nothing in it runs side by side")
	}
	for turn, name := range sample.Names(t) {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			tree := sample.Tree(t, name, nil)
			before, ok := stateOf(tree, standards.BuiltIn(), engine.Means{}, every...)
			require.True(t, ok)
			before.work()
			for i, v := range variants(tree, func(keys record.Set) bool { return keys.And(presented).Empty() }) {
				if (i+turn)%*turns == 0 {
					checkUnread(t, before, v, i / *turns)
				}
			}
		})
	}
}

// checkUnread compares what did not read the keys of a variant with the same of
// the variant.
func checkUnread(t *testing.T, before state, v variant, i int) {
	unread := slices.DeleteFunc(slices.Clone(every), func(r *engine.Rule) bool {
		return !before.outcome.Inputs[r].And(v.keys).Empty()
	})
	after, ok := stateOf(v.tree, standards.BuiltIn(), engine.Means{}, unread...)
	if !ok {
		return // no ceiling
	}
	for _, r := range unread {
		if after.outcome.Inputs[r].And(v.keys).Empty() {
			assert.Equal(t, before.said[r], after.said[r], "%s follows %s, %s, and has not read it", r.ID, v.key, v.what)
		}
	}
	if i%3 != 0 { // the figures cost the most
		return
	}
	after.work()
	for key, f := range before.figures {
		if !f.Inputs.And(v.keys).Empty() {
			continue
		}
		now, ok := after.figures[key]
		if assert.True(t, ok, "%s is gone with %s, %s, and has not read it", key, v.key, v.what) && now.Inputs.And(v.keys).Empty() {
			assert.Equal(t, shown(f), shown(now), "%s follows %s, %s, and has not read it", key, v.key, v.what)
		}
	}
}

// chosen are the keys by which a figure's formula is chosen, and which its value
// therefore comes from though no term does.
var chosen = map[string][]string{
	"vault.arc-length":     {"vault.profile"},
	"grid.module-along":    {"grid.ends"}, // whether a rib's width comes off
	"joint.tenons-in-seam": {"panels.around"},
	"panel.height":         {"panels.around"},
	"rib.curvature-factor": {"rib.species"}, // whether it has a figure at all
	"close.growth":         {"strap.hung"},  // whether the shop's state counts
	"close.last-gap.least": {"strap.hung"},
	"close.projection":     {"panels.along", "close.last"}, // whether there is one
	"raise.slide":          {"panels.along"},               // whether there is a neighbour
	// Measured on the section: with plumb feet it is the span, whatever is cut off.
	"panel.width": {"panels.around", "springing.cut", "vault.profile", "vault.rise", "rib.depth", "rail.depth", "skin"},
	// Which pieces there are, and of a split arch which is the heaviest.
	"panel.mass": {"strap", "room.above", "panels.around", "fitting"},
}

// idle are the keys of terms that are multiplied by nothing.
var idle = map[string][]string{
	// There are no seams around the arc, or none along the axis.
	"joint.count": {"vault", "grid", "rib.width", "seam", "panels.around"},
}

func union(keys []string) (set record.Set) {
	for _, key := range keys {
		set = set.Or(spec.IDs(key))
	}
	return set
}

// The value of a figure with a formula comes from the keys that its terms come
// from, and from no other but those that choose the formula.
func TestTermsAreWhatAFigureComesFrom(t *testing.T) {
	for _, name := range sample.Names(t) {
		s, ok := stateOf(sample.Tree(t, name, nil), standards.BuiltIn(), engine.Means{})
		require.True(t, ok)
		s.work()
		for key, f := range s.figures {
			if f.Formula == "" {
				continue
			}
			var terms record.Set
			for _, term := range f.Terms {
				terms = terms.Or(term.From)
			}
			assert.Empty(t, spec.Names(f.From.Without(terms).Without(union(chosen[key]))), "%s, %s: no term of it comes from these", name, key)
			assert.Empty(t, spec.Names(terms.Without(f.From).Without(union(idle[key]))), "%s, %s: a term comes from these, and the figure does not", name, key)
		}
	}
}

// What the pages, the help and dryfit basis say that a rule reads is what it was
// last seen to read.
func TestReadsAreFresh(t *testing.T) {
	specs := map[string][]byte{}
	for _, folder := range Examples {
		err := filepath.WalkDir(filepath.Join("..", "..", "..", folder), func(path string, _ fs.DirEntry, err error) error {
			if err == nil && strings.HasSuffix(path, ".ceiling.toml") {
				specs[path], err = os.ReadFile(path)
			}
			return err
		})
		require.NoError(t, err)
	}
	seen, err := Reads(catalog.Families(), specs)
	require.NoError(t, err)
	for _, r := range every {
		assert.Equal(t, spec.Names(seen[r.ID]), spec.Names(catalog.Reads(r.ID)), "%s: run go generate ./...", r.ID)
	}
}

// unread are the keys of the format that no rule and no figure reads, with the
// reason.
var unread = map[string]string{
	"dryfit":              "it is read before all else",
	"project.title":       "it heads what is printed",
	"project.sheet":       "it heads what is printed",
	"project.revision":    "it heads what is printed",
	"project.owner":       "it stands in the title block of drawings",
	"project.drawn":       "it stands in the title block of drawings",
	"project.approved":    "it stands in the title block of drawings",
	"project.issued":      "it stands in the title block of drawings",
	"project.north":       "it turns the north arrow of the plan",
	"project.units":       "it says how figures are printed, and changes none",
	"room.door":           "it places the eye of the view from the entry",
	"room.door.wall":      "it places the eye of the view from the entry",
	"room.door.offset":    "it places the eye of the view from the entry",
	"survey.date":         "it says when the readings were taken, beside them",
	"survey.by":           "it says who took the readings, beside them",
	"lift.units":          "the lifts are counted by their stations",
	"route.*.tried.date":  "it counts where the standards let it, which the built-in ones do not",
	"route.*.tried.by":    "it counts where the standards let it, which the built-in ones do not",
	"route.*.tried.how":   "it counts where the standards let it, which the built-in ones do not",
	"route.*.tried.until": "it counts where the standards let it, which the built-in ones do not",
}

// A key that nothing reads is a mistake of the format, or of a rule.
func TestEveryKeyIsRead(t *testing.T) {
	var read record.Set
	add := func(tree map[string]any) {
		s, faults := review.Tree(tree, review.Options{Rules: every, Standards: standards.BuiltIn(), On: On})
		require.Empty(t, faults)
		for _, keys := range s.Inputs {
			read = read.Or(keys)
		}
		for _, f := range s.Results.Figures() {
			read = read.Or(f.Inputs)
		}
	}
	for _, name := range sample.Names(t) {
		add(sample.Tree(t, name, nil))
	}
	for _, r := range every {
		for _, tree := range casesOf(t, r) {
			add(tree)
		}
	}
	for _, key := range spec.Keys() {
		if spec.IDs(key).And(read).Empty() {
			assert.NotEmpty(t, unread[key], "nothing reads %s", key)
		} else {
			assert.Empty(t, unread[key], "%s is read", key)
		}
	}
}

// casesOf are a rule's cases, those that fail first.
func casesOf(t *testing.T, r *engine.Rule) (trees []map[string]any) {
	f, _, ok := catalog.Find(r.ID)
	require.True(t, ok)
	cases, err := f.CasesOf(r)
	require.NoError(t, err)
	for _, fails := range []bool{true, false} {
		for _, c := range cases {
			if c.Fails() == fails {
				src, _ := Compose(c.Text)
				d, problems := spec.Parse("case", []byte(src))
				require.Empty(t, problems)
				trees = append(trees, d.Tree)
			}
		}
	}
	return trees
}

// strict are standards under which every rule that has limits finds something
// wherever it has a figure, so that what it measures is said.
func strict(t *testing.T) *standards.Standards {
	var b strings.Builder
	b.WriteString("dryfit = 1\nname = \"strict\"\n[limit]\n")
	for _, r := range every {
		for _, l := range r.Limits {
			end := l.Most
			if l.Sense == engine.AtMost {
				end = max(l.Lowest, 1e-6) // a force of nothing is no limit
			}
			value := strconv.FormatFloat(end, 'f', -1, 64)
			if l.Value.Unit != quantity.One {
				value = strconv.Quote(written(end, l.Value.Unit))
			}
			fmt.Fprintf(&b, "%q = { value = %s, source = \"a test\" }\n", r.Full(l.Key), value)
		}
	}
	layer, problems := catalog.ReadStandards("strict", []byte(b.String()))
	require.Empty(t, problems)
	return standards.With(layer)
}

// Each key that a rule was seen to read matters to it somewhere: what it says of
// one of its cases or of a whole ceiling changes with it, under the built-in
// limits or under such that it says what it measures.
func TestEachKeyThatIsReadMatters(t *testing.T) {
	if testing.Short() {
		t.Skip("long, and nothing in it runs side by side")
	}
	full := sample.Tree(t, sample.ReadingRoom, nil)
	var whole []map[string]any
	for _, name := range sample.Names(t) {
		whole = append(whole, sample.Tree(t, name, nil))
	}
	telling := []*standards.Standards{strict(t), standards.BuiltIn()}
	for _, r := range every {
		t.Run(r.ID, func(t *testing.T) {
			t.Parallel()
			seen, left := record.Set{}, catalog.Reads(r.ID).Without(quietFor(r))
			for _, std := range telling {
				for _, tree := range append(casesOf(t, r), whole...) {
					more := matter(tree, full, r, std, left)
					seen, left = seen.Or(more), left.Without(more)
				}
			}
			for _, key := range spec.Names(left) {
				assert.True(t, acts(key, seen), "%s reads %s, and never follows it", r.ID, key)
			}
		})
	}
}

// quietFor are the keys that are quiet for a rule.
func quietFor(r *engine.Rule) (keys record.Set) {
	for _, q := range quiet {
		if slices.ContainsFunc(q.rules, func(id string) bool { return id == r.ID || strings.HasPrefix(r.ID, id+".") }) {
			keys = keys.Or(union(q.keys))
		}
	}
	return keys
}

// acts reports whether a key matters, or one through which it acts.
func acts(key string, seen record.Set) bool {
	id, _ := spec.ID(key)
	return seen.Has(id) || slices.ContainsFunc(through[key], func(other string) bool { return acts(other, seen) })
}

// matter are those of some keys with which what a rule says of a spec changes. The legs
// of the way in that a change leaves as they are need not be decided again.
func matter(tree, full map[string]any, r *engine.Rule, std *standards.Standards, left record.Set) (seen record.Set) {
	memory := carrying.NewMemory()
	state := func(tree map[string]any) (state, bool) {
		return stateOf(tree, std, engine.Means{Search: carrying.Search{Memory: memory.Next()}}, r)
	}
	before, ok := state(tree)
	if !ok {
		return seen
	}
	wanted := func(keys record.Set) bool {
		return !keys.And(left).And(before.outcome.Inputs[r]).Without(seen).Empty()
	}
	for _, v := range append(variants(tree, wanted), added(tree, full, wanted)...) {
		if !wanted(v.keys) {
			continue
		}
		if after, ok := state(v.tree); ok && after.said[r] != before.said[r] {
			seen = seen.Or(v.keys)
		}
	}
	return seen
}

// added are variants of a spec with a key, or a table, that it leaves out and
// another has.
func added(tree, full map[string]any, wanted func(record.Set) bool) (out []variant) {
	for _, key := range spec.Keys() {
		key = spec.Pattern(key)
		keys := spec.IDs(key)
		if !wanted(keys) {
			continue
		}
		value, has := spec.Lookup(full, key)
		if _, had := spec.Lookup(tree, key); had || !has {
			continue
		}
		if changed, ok := spec.With(tree, key, value); ok && schema.Fits(changed) {
			out = append(out, variant{key, keys, "added", changed})
		}
	}
	return out
}
