package review_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// An acceptance counts for a year, and for as long as standards say, which is
// listed with what they loosen.
func TestTermOfAcceptances(t *testing.T) {
	longer, problems := catalog.ReadStandards("s", []byte("dryfit = 1\nname = \"s\"\n[limit]\n\"accept.in-force.term\" = { value = 730, source = \"house rule\" }\n"))
	require.Empty(t, problems)
	house := standards.With(longer)
	for _, c := range []struct {
		until    string
		to       *standards.Standards
		accepted int
		loosened bool
	}{
		{"2026-11-25", standards.BuiltIn(), 1, false},
		{"2027-11-26", standards.BuiltIn(), 1, false}, // 366 days
		{"2027-11-27", standards.BuiltIn(), 0, false},
		{"9999-12-31", standards.BuiltIn(), 0, false},
		{"2027-11-27", house, 1, true},
		{"2028-11-25", house, 0, true}, // 731 days
	} {
		src := []byte(example(t, "reading-room") + "\n[[accept]]\nrule = \"strap.setting\"\nreason = \"measured\"\nby = \"the shop\"\nuntil = " + c.until + "\n")
		o := options()
		o.On, o.Standards = "2026-11-25", c.to
		s := review.Spec("spec", src, o)
		require.Empty(t, s.Problems)
		assert.Equal(t, c.accepted, s.Counts.Accepted, c.until)
		assert.Equal(t, c.accepted == 0, find(s, "accept.in-force") != nil, c.until)
		if c.until == "9999-12-31" { // more days than a Duration holds
			assert.Contains(t, find(s, "accept.in-force").Text, " 2912114 days after ")
		}
		assert.Equal(t, c.loosened, len(s.Loosened) == 1, c.until)
	}
}
