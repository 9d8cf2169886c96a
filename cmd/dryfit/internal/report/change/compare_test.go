package change

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"

	"github.com/rivo/uniseg"
	"github.com/santhosh-tekuri/jsonschema/v5"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/compare"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/schema"
)

// comparison is the demo against itself with much changed, and a title that
// means harm.
func comparison(t *testing.T) Comparison {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	src := sample.Source(t, sample.ReadingRoom)
	after := sample.Source(t, sample.ReadingRoom,
		"Reading room", `<script>|\u001b[2J\u202e`, `"4200mm"`, `"13ft 9in"`, "rise    = \"840mm\"\n", "",
		`"segmental"`, `"flat"`, `width  = "900mm"`, `width  = "500mm"`, `"box van"`, `"a|b @c <d>"`)
	a, b := review.Spec("a|b.ceiling.toml", src, o), review.Spec("new.ceiling.toml", after, o)
	require.Empty(t, a.Problems)
	require.Empty(t, b.Problems)
	return Comparison{Comparison: compare.Of(a, b, 0.005), Version: "(devel)", On: "2026-11-25"}
}

func TestCompareJSONSatisfiesItsSchema(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, CompareJSON(&b, comparison(t)))
	var document any
	require.NoError(t, json.Unmarshal(b.Bytes(), &document))
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	require.NoError(t, c.AddResource("https://dryfit.example/schema/compare-1.json", bytes.NewReader(schema.CompareSchema())))
	require.NoError(t, c.MustCompile("https://dryfit.example/schema/compare-1.json").Validate(document))
}

// Columns and rows stay what they are, and nothing of the title takes effect.
func TestComparisonsAreSafe(t *testing.T) {
	for name, write := range map[string]func(io.Writer, Comparison) error{"text": CompareText, "markdown": CompareMarkdown} {
		var first, second bytes.Buffer
		require.NoError(t, write(&first, comparison(t)))
		require.NoError(t, write(&second, comparison(t)))
		assert.Equal(t, first.String(), second.String(), "the same each time")
		for _, line := range strings.Split(first.String(), "\n") {
			assert.True(t, show.IsSafe(line), line)
			if name == "text" {
				assert.LessOrEqual(t, uniseg.StringWidth(line), show.TextWidth, line)
				continue
			}
			assert.NotContains(t, line, "<")
			assert.NotContains(t, line, "@")
			if strings.HasPrefix(line, "|") {
				cells := strings.Count(line, "|") - strings.Count(line, `\|`)
				assert.Contains(t, []int{4, 5}, cells, line)
			}
		}
	}
}

// A comparison for people begins with the verdicts and lists few figures; with all
// of them those that are the same by symmetry are one line, and none is left out.
func TestComparisonsAreBrief(t *testing.T) {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	a := review.Spec("a.ceiling.toml", sample.Source(t, sample.ReadingRoom), o)
	b := review.Spec("b.ceiling.toml", sample.Source(t, sample.ReadingRoom, `rise    = "840mm"`, `rise    = "800mm"`), o)
	c := Comparison{Comparison: compare.Of(a, b, 0.005), On: "2026-11-25"}
	brief, whole := lines(t, CompareText, c), lines(t, CompareText, Comparison{Comparison: c.Comparison, On: c.On, All: true})
	assert.Contains(t, brief[:11], c.ending())
	assert.Less(t, len(brief), 60)
	require.Greater(t, len(c.Figures), 100)
	assert.Contains(t, strings.Join(brief, "\n"), c.others())
	for _, text := range []string{strings.Join(whole, "\n"), strings.Join(lines(t, CompareMarkdown, Comparison{Comparison: c.Comparison, On: c.On, All: true}), "\n")} {
		for _, f := range c.Figures {
			assert.Contains(t, text, f.Key)
		}
		assert.Contains(t, text, "likewise strap.length.4")
	}
}

func lines(t *testing.T, write func(io.Writer, Comparison) error, c Comparison) []string {
	var b bytes.Buffer
	require.NoError(t, write(&b, c))
	return strings.Split(b.String(), "\n")
}
