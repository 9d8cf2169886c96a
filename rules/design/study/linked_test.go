package study_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/design/study"
	"dryfit/rules/model/sample"
	"dryfit/rules/review"
	"dryfit/spec"
)

// Keys that are linked change together, and each is a key of its own in the table; the
// keys of a table likewise; a row of a list may be named.
func TestLinkedKeys(t *testing.T) {
	for _, tt := range []struct {
		vary []string
		want [][]any // the values of each option
	}{
		{
			[]string{"span,rise=4.2m/0.84m,4.0m/0.9m", "grid.along=5,6"},
			[][]any{{"4.2m", "0.84m", int64(5)}, {"4.2m", "0.84m", int64(6)}, {"4.0m", "0.9m", int64(5)}, {"4.0m", "0.9m", int64(6)}},
		},
		{[]string{"grid.along,panels.along=4/4,6/3"}, [][]any{{int64(4), int64(4)}, {int64(6), int64(3)}}},
		{[]string{"skin.thickness,rib.depth=1/4in/2 1/2in,9mm/3in"}, [][]any{{"1/4in", "2 1/2in"}, {"9mm", "3in"}}},
		{
			[]string{"grid.along=5,6", `skin={thickness="9mm",material="bendable plywood"},{material="bendable plywood",thickness="6mm"}`},
			[][]any{
				{int64(5), "bendable plywood", "9mm"},
				{int64(5), "bendable plywood", "6mm"},
				{int64(6), "bendable plywood", "9mm"},
				{int64(6), "bendable plywood", "6mm"},
			},
		},
	} {
		s := newStudy(t, "reading-room", tt.vary...)
		require.Equal(t, len(tt.want), s.Total, tt.vary)
		for i, want := range tt.want {
			assert.Equal(t, want, s.Values(i+1), "%v, option %d", tt.vary, i+1)
			tree := s.Tree(i + 1)
			for k, d := range s.Vary {
				got, _ := spec.Lookup(tree, d.Key)
				assert.Equal(t, want[k], got, d.Key)
			}
		}
	}
}

func TestARowOfAListByItsName(t *testing.T) {
	src := append(sample.Source(t, "reading-room"), "\n[[route]]\nname = \"way out\"\nkind = \"door\"\nwidth = \"1.5m\"\nheight = \"2.3m\"\n"...)
	b := review.Spec("named", src, options())
	require.NotNil(t, b.Ceiling, "%v", b.Problems)
	byName, err := study.New(b, []string{`route."way out".width=1m,2m`}, options())
	require.NoError(t, err)
	rows, _ := spec.Lookup(b.Document.Tree, "route")
	assert.Equal(t, spec.Key("route", len(rows.([]any)), "width"), byName.Vary[0].Key)
	_, err = study.New(b, []string{`route."way oot".width=1m,2m`}, options())
	assert.ErrorContains(t, err, `route: none is named "way oot"; is it "way out"?`)
}

func TestLinkedKeysThatCannotBe(t *testing.T) {
	for text, says := range map[string]string{
		"vault.span,rise=4.2m":                       "is not one value for each of 2 keys",
		"vault.span,rise=4.2m/0.8m/3m":               "is not one value for each of 2 keys",
		"vault.span,vault.span=4.2m/4m":              "vault.span is varied twice",
		"vault.span,rise=4.2m/0.8m,4.2m/0.8m":        "given twice",
		"vault.span,ris=4.2m/0.8m":                   "there is no key vault.ris; is it vault.rise?",
		"width,depth=4cm/5cm":                        "width is a key of several tables",
		`skin={thickness="9mm"},{layers=2}`:          "skin.layers is in one table and not in all",
		`skin={thickness="9mm"},{}`:                  "is no table with keys",
		`skin={thickness="9mm"`:                      "can't be read",
		`skin={thickness="9kg"}`:                     "skin.thickness: ",
		`skin={thickness="9mm"},{thickness="9mm"}`:   "given twice",
		`skin={layers=1},{layers=2,thickness="9mm"}`: "in one table and not in all",
	} {
		_, err := study.New(base(t, "reading-room"), []string{text}, options())
		assert.ErrorContains(t, err, says, text)
	}
}
