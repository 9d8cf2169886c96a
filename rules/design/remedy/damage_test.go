package remedy

import (
	"context"
	"flag"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
	"dryfit/spec/edit"
)

// go test ./rules/design/remedy -run Damaged -damaged 200 is the full test, which takes
// a minute or two.
var damaged = flag.Int("damaged", 12, "how many damaged specs to restore")

func reviewing(strict bool) review.Options {
	return review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25", Strict: strict}
}

// damage changes one to three keys of a spec at random, so that it fails.
func damage(t testing.TB, random *rand.Rand, src []byte, o Options) ([]byte, []string) {
	doc, problems := spec.Parse("", src)
	require.Empty(t, problems)
	tr := newTrial(context.Background(), doc.Tree, o)
	may, err := allow(nil)
	require.NoError(t, err)
	knobs := tr.base.knobs(may)
	for {
		st := &state{tree: tr.base.tree}
		var said []string
		for range 1 + random.IntN(3) {
			k := knobs[random.IntN(len(knobs))]
			all := dialsFor(k.key, k.was, k.property)
			d := all[random.IntN(len(all))]
			v, ok := d.at(random.IntN(d.up+d.down+1) - d.down)
			if !ok {
				continue
			}
			if next, ok := tr.change(st, k, v); ok {
				st = next
			}
		}
		for _, c := range st.changes {
			said = append(said, fmt.Sprintf("%s %v to %v", c.Key, c.Was, c.Value))
		}
		if len(st.changes) == 0 {
			continue
		}
		s := &search{trial: tr}
		out, err := edit.Apply(src, s.written(st))
		require.NoError(t, err)
		assessment := review.Spec("", out, o.Review)
		if assessment.Ceiling != nil && len(open(assessment, level(o.Review))) > 0 {
			return out, said
		}
	}
}

// Specs that are damaged at random in one to three keys pass again. Those that
// do not are printed.
func TestDamagedSpecsAreRestored(t *testing.T) {
	random := rand.New(rand.NewPCG(13, 2026))
	restored, reviews := 0, 0
	for i := range *damaged {
		o := Options{Review: reviewing(i%2 == 1), Answers: 1}
		src, said := damage(t, random, changed(t), o)
		got, err := Search(context.Background(), "d.ceiling.toml", src, o)
		require.NoError(t, err)
		reviews += got.Reviews
		if len(got.Answers) > 0 {
			restored++
			if testing.Verbose() {
				var cure []string
				for _, c := range got.Answers[0].Changes {
					cure = append(cure, fmt.Sprintf("%s %v to %v", c.Key, c.Was, c.Value))
				}
				t.Logf("%d: %s; %d reviews: %s", i, strings.Join(said, ", "), got.Reviews, strings.Join(cure, ", "))
			}
			continue
		}
		t.Logf("%d not restored: %s; %d open; %d reviews", i, strings.Join(said, ", "), len(got.Open), got.Reviews)
		for _, f := range got.Open {
			t.Logf("    %s %s: %s", f.Severity, f.Rule.ID, f.Text)
		}
		for _, r := range got.Against {
			t.Logf("    against: %s", r.ID)
		}
	}
	t.Logf("%d of %d restored, %d reviews", restored, *damaged, reviews)
	assert.GreaterOrEqual(t, float64(restored), 0.95*float64(*damaged))
}
