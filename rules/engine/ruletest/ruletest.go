// Package ruletest runs the cases of a family's rules. A case is a fragment of
// a spec: each table that it has replaces that whole table of the base spec.
// What a rule must find stands in a comment on the line where it must find it:
//
//	lamination = "12mm"   #: query bend.lamination "R/t 83"
//
// gives the severity, the rule, and words that must be in the sentence. A
// missing finding, a surplus one and one on another line all fail.
package ruletest

import (
	_ "embed"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

// base is the spec that every case starts from. It passes every rule.
//
//go:embed base.ceiling.toml
var base string

// Run runs every case of every rule of a family.
func Run(t *testing.T, f engine.Family) {
	t.Helper()
	for _, r := range f.List() {
		cases, err := f.CasesOf(r)
		require.NoError(t, err)
		for _, c := range cases {
			t.Run(r.ID+"/"+c.Name, func(t *testing.T) { runCase(t, r, c) })
		}
	}
}

func runCase(t *testing.T, r *engine.Rule, c engine.Case) {
	src, shift := Compose(c.Text)
	assessment := review.Spec("case.ceiling.toml", []byte(src), review.Options{
		Rules: []*engine.Rule{r}, Standards: stated(t, c.Text), On: On, Offers: true, Require: required(c.Text),
	})
	for _, p := range assessment.Problems {
		t.Errorf("line %d of the case: %s: %s", p.Position.Line-shift, p.Key, p.Message)
	}
	want := expectations(t, c.Text)
	assert.Equal(t, c.Fails(), len(want) > 0, "a case that fails expects a finding, one that passes none")
	for _, f := range assessment.Findings {
		assert.False(t, f.Severity == engine.Refer && r.RefersTo == "", "%s refers to nobody", r.ID)
		i := matching(want, f, f.Start.Line-shift)
		if i < 0 {
			t.Errorf("surplus: line %d: %s %s: %s: %s", f.Start.Line-shift, f.Severity, f.Rule.ID, f.At, f.Text)
			continue
		}
		want = append(want[:i], want[i+1:]...)
	}
	for _, w := range want {
		t.Errorf("missing: %v (not checked: %v)", w, assessment.NotChecked)
	}
}

// required are the keys that a case names as required: #require lift.stations
func required(text string) (out []standards.Requirement) {
	for _, found := range mark.FindAllStringSubmatch(text, -1) {
		out = append(out, standards.Requirement{Pattern: found[1], By: "this test"})
	}
	return out
}

var mark = regexp.MustCompile(`(?m)^#require (\S+)$`)

// stated are the built-in standards under what a case says of the shop: #shop press = "4m"
func stated(t *testing.T, text string) *standards.Standards {
	t.Helper()
	lines := ""
	for _, found := range bench.FindAllStringSubmatch(text, -1) {
		lines += found[1] + "\n"
	}
	if lines == "" {
		return standards.BuiltIn()
	}
	doc, problems := spec.Parse("dryfit.toml", []byte("dryfit = 1\nname = \"this test\"\n[shop]\n"+lines))
	require.Empty(t, problems)
	layer, problems := standards.Read(doc, nil, nil)
	require.Empty(t, problems)
	return standards.With(layer)
}

var bench = regexp.MustCompile(`(?m)^#shop (.+)$`)

// Compose puts a fragment in place of the base spec's tables of the same
// names. A line n of the fragment is line n + shift of the result.
func Compose(fragment string) (src string, shift int) {
	replaced := map[string]bool{}
	for _, line := range strings.Split(fragment, "\n") {
		if name, ok := table(line); ok {
			replaced[name] = true
		}
	}
	var kept strings.Builder
	keep := true
	for _, line := range strings.SplitAfter(base, "\n") {
		if name, ok := table(line); ok {
			keep = !replaced[name]
		}
		if keep {
			kept.WriteString(line)
		}
	}
	head := strings.TrimRight(kept.String(), "\n") + "\n"
	return head + fragment, strings.Count(head, "\n")
}

var header = regexp.MustCompile(`^\[\[?([a-z]+)`)

// table is the first word of a table's header line.
func table(line string) (string, bool) {
	m := header.FindStringSubmatch(line)
	if m == nil {
		return "", false
	}
	return m[1], true
}

type expectation struct {
	line     int
	severity string
	rule     string
	words    []string
}

// String is the expectation as a failed test prints it.
func (e expectation) String() string {
	return fmt.Sprintf("line %d: %s %s %q", e.line, e.severity, e.rule, e.words)
}

var (
	comment = regexp.MustCompile(`#: (hold|query|note|refer) (\S+)((?: "[^"]*")*)`)
	quoted  = regexp.MustCompile(`"([^"]*)"`)
)

func expectations(t *testing.T, text string) []expectation {
	var list []expectation
	for i, line := range strings.Split(text, "\n") {
		found := comment.FindAllStringSubmatch(line, -1)
		if strings.Contains(line, "#:") && len(found) == 0 {
			t.Errorf("line %d: an expectation that can't be read: %s", i+1, line)
		}
		for _, m := range found {
			e := expectation{line: i + 1, severity: m[1], rule: m[2]}
			for _, q := range quoted.FindAllStringSubmatch(m[3], -1) {
				e.words = append(e.words, q[1])
			}
			list = append(list, e)
		}
	}
	return list
}

func matching(want []expectation, f engine.Finding, line int) int {
	for i, w := range want {
		if w.line == line && w.severity == f.Severity.String() && w.rule == f.Rule.ID && hasAll(f.Text, w.words) {
			return i
		}
	}
	return -1
}

func hasAll(text string, words []string) bool {
	for _, w := range words {
		if !strings.Contains(text, w) {
			return false
		}
	}
	return true
}
