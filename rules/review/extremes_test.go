package review_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/model/sample"
	"dryfit/rules/review"
	"dryfit/spec"
)

// go test ./rules/review -run Extreme -extremes 20000 looks further.
var extremes = flag.Int("extremes", 300, "how many specs of extreme values to review")

// notNumbers is what a figure that was not a number, or had no end, is printed
// as.
var notNumbers = regexp.MustCompile(`\b(NaN|Inf|unlimited|no figure)\b|%!`)

// endless are the radii that a flat ceiling has not.
var endless = regexp.MustCompile(`^(vault.radius|vault.tightest-radius|skin.radius)$`)

// sane lists what is in an assessment that no reader can use.
func sane(s *review.Assessment) []string {
	var out []string
	number := func(where string, v float64) {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			out = append(out, fmt.Sprintf("%s: %v", where, v))
		}
	}
	text := func(where, v string) {
		if v == "" || notNumbers.MatchString(v) {
			out = append(out, fmt.Sprintf("%s: %q", where, v))
		}
	}
	for _, p := range s.Problems {
		text(p.Key, p.Message)
	}
	for _, f := range s.Findings {
		text(f.Rule.ID, f.Text)
		number(f.Rule.ID+" measured", f.Measured.SI)
		number(f.Rule.ID+" limit", f.Bound.SI)
	}
	for _, n := range s.NotChecked {
		text(n.Rule.ID+" not checked", n.Key+n.Why)
	}
	if s.Ceiling == nil {
		return out
	}
	for _, f := range s.Results.Figures() {
		if s.Ceiling.Vault.Profile.Get() == "flat" && endless.MatchString(f.Key) {
			continue
		}
		number(f.Key, f.Value.SI)
		arithmetic, result := f.Worked(s.Ceiling.Units)
		text(f.Key+" worked", arithmetic+result+".")
	}
	for _, table := range s.Results.Tables() {
		for _, row := range table.Rows {
			text(table.Title, row.Label)
			for _, v := range row.Values {
				if strings.HasSuffix(table.Key, ".held") && math.IsInf(v.SI, 1) {
					continue // a support that gives no way
				}
				number(table.Key+" "+row.Label, v.SI)
			}
		}
	}
	return out
}

// bases are specs of every profile, construction and kind of leg.
func bases(t testing.TB) []*spec.Document {
	var out []*spec.Document
	for _, name := range sample.Names(t) {
		d, problems := spec.Parse(name, sample.Source(t, name))
		require.Empty(t, problems, name)
		out = append(out, d)
	}
	return out
}

// Values at the ends of what the format takes, alone and several at a time,
// give findings, or say what is wrong: no panic, nothing that is not a number.
func TestExtremeValues(t *testing.T) {
	random := rand.New(rand.NewPCG(14, 2026))
	all := bases(t)
	resolved := 0
	for i := range *extremes {
		doc, put := ruletest.Extreme(random, all[i%len(all)], 5)
		o := options()
		o.Offers = i%8 == 0
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			t.Log(doc.Path, strings.Join(put, ", ")) // a panic names it
			s := review.Spec(doc.Path, doc.Source, o)
			assert.Empty(t, sane(s))
			if s.Ceiling != nil {
				resolved++
			}
		})
	}
	assert.Greater(t, resolved, *extremes/4, "most are looked at whole")
}

// Very many of everything is reviewed, with offers, by a number of runs that has
// an end: without one, a hundred legs would take minutes.
func TestCrowdedSpecs(t *testing.T) {
	base, _ := ruletest.Compose("")
	before, route, _ := strings.Cut(base, "[[route]]")
	_, after, _ := strings.Cut(route, "[[fitting]]")
	many := func(n int, entry string) string {
		var b strings.Builder
		for i := range n {
			fmt.Fprintf(&b, entry, i)
		}
		return b.String()
	}
	var stations []string
	for i := range 100 {
		stations = append(stations, fmt.Sprintf(`"%.4f%%"`, 0.25+99.5*float64(i)/99))
	}
	for name, src := range map[string]string{
		"legs":     before + many(300, "[[route]]\nname = \"door %d\"\nkind = \"door\"\nwidth = \"700mm\"\nheight = \"1500mm\"\nwall = \"220mm\"\n") + "[[fitting]]" + after,
		"fittings": before + many(300, "[[fitting]]\nname = \"light %d\"\nkind = \"luminaire\"\ncoffer = [3, 3]\nsize = { diameter = \"900mm\" }\n"),
		"stations": strings.Replace(base, `["10%", "36%", "64%", "90%"]`, "["+strings.Join(stations, ", ")+"]", 1),
		"coffers": strings.NewReplacer(
			"around = 6", "around = 10000", "along  = 6", "along = 10000", "along     = 6", "along = 10000", "around    = 1", "around = 100",
			`"4200mm"`, `"4200m"`, `"840mm"`, `"840m"`, `"7080mm"`, `"7080m"`, `spacing = "400mm"`, `spacing = "4m"`, `spacing   = "300mm"`, `spacing = "1m"`,
		).Replace(base),
	} {
		t.Run(name, func(t *testing.T) {
			s := review.Spec(name, []byte(src), options())
			require.Empty(t, s.Problems)
			assert.Empty(t, sane(s))
			assert.NotEmpty(t, s.Findings)
			if name == "coffers" {
				assert.ErrorContains(t, s.Results.Shop().Sheets.Get().Err, "pieces of skin; the maximum is 2000")
			}
		})
	}
}

// More like parts than are worked with are refused at the key that makes them.
func TestTooManyAlike(t *testing.T) {
	base, _ := ruletest.Compose("")
	for _, tt := range []struct{ was, is, key, says string }{
		{`spacing   = "300mm"`, `spacing = "0.01mm"`, "seam.spacing", "more than 10000 tenons in a seam"},
		{`lamination   = "6mm"`, `lamination = "0.001mm"`, "rib.lamination", "more than 10000 laminations"},
		{`spacing = "400mm"`, `spacing = "0.1mm"`, "room.framing.spacing", "more than 10000 members"},
	} {
		s := review.Spec("x", []byte(strings.Replace(base, tt.was, tt.is, 1)), options())
		require.Len(t, s.Problems, 1, tt.key)
		assert.Equal(t, tt.key, s.Problems[0].Key)
		assert.Contains(t, s.Problems[0].Message, tt.says)
	}
}
