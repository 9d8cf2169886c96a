package drawing

import (
	"bytes"
	"flag"
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/drawing/pdf"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/svg"
	"dryfit/rules/engine/ruletest"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec"
)

// go test ./cmd/dryfit/internal/drawing -run Extreme -extremes 5000 looks further.
var extremes = flag.Int("extremes", 24, "how many specs of extreme values to draw")

var notNumbers = regexp.MustCompile(`NaN|[+-]Inf|%!`)

// Values at the ends of what the format takes are drawn, or it is said why not.
func TestExtremeValuesAreDrawn(t *testing.T) {
	names := sample.Names(t)
	random := rand.New(rand.NewPCG(10, 2026))
	sheets := 0
	for i := range *extremes {
		name := names[i%len(names)]
		doc, problems := spec.Parse(name, sample.Source(t, name))
		require.Empty(t, problems)
		doc, put := ruletest.Extreme(random, doc, 4)
		s := review.Spec(doc.Path, doc.Source, review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-26"})
		if s.Ceiling == nil {
			continue
		}
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			t.Log(doc.Path, strings.Join(put, ", ")) // a panic names it
			drawn, undrawn, err := All(sheet.Input{Assessment: s, Version: "1", On: "2026-11-26"}, sheet.Options{})
			require.NoError(t, err)
			notes := 0
			for _, sheet := range drawn {
				if strings.HasPrefix(sheet.Name, "notes") {
					notes++
				}
			}
			assert.Len(t, Names(), len(drawn)-notes+len(undrawn))
			for _, sheet := range drawn {
				sheets++
				var b bytes.Buffer
				require.NoError(t, svg.Write(&b, sheet))
				assert.NotRegexp(t, notNumbers, b.String(), sheet.Name)
			}
			require.NoError(t, pdf.Write(new(bytes.Buffer), pdf.Document{Title: "t"}, drawn))
		})
	}
	assert.Greater(t, sheets, *extremes)
}
