package report

import (
	"encoding/json"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/rulebook"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
	"dryfit/spec/edit"
)

const docsAddress = "https://docs.example/dryfit"

// published is the examples' report under standards that give an address of the
// docs.
func published(t *testing.T) Report {
	layer, problems := catalog.ReadStandards("dryfit.toml", []byte("dryfit = 1\nname = \"a house\"\n[check]\ndocs = \""+docsAddress+"/\"\n"))
	require.Empty(t, problems)
	r := full(t)
	for _, s := range r.Runs[0].Assessments {
		s.Standards = standards.With(layer)
	}
	return r
}

// sarifLog and sarifRun are a log as it is read.
type (
	sarifLog struct {
		Schema  string     `json:"$schema"`
		Version string     `json:"version"`
		Runs    []sarifRun `json:"runs"`
	}
	sarifRun struct {
		Tool        sarifTool         `json:"tool"`
		Automation  sarifAutomation   `json:"automationDetails"`
		Invocations []sarifInvocation `json:"invocations"`
		ColumnKind  string            `json:"columnKind"`
		Results     []sarifResult     `json:"results"`
		Properties  map[string]any    `json:"properties"`
	}
)

func logOf(t *testing.T, r Report) sarifRun {
	var log sarifLog
	require.NoError(t, json.Unmarshal(sarifOf(t, r), &log))
	return log.Runs[0]
}

// Every rule's page is one of the docs, under the address that the standards
// give. Without one, none is made up.
func TestSARIFLinksToTheDocs(t *testing.T) {
	pascalCase := regexp.MustCompile(`^[A-Z][a-z]+([A-Z][a-z]+)+$`)
	driver, names := logOf(t, published(t)).Tool.Driver, map[string]bool{}
	assert.Equal(t, docsAddress, driver.Information)
	for _, r := range driver.Rules {
		u, err := url.Parse(r.HelpURI)
		require.NoError(t, err)
		assert.True(t, u.IsAbs(), r.HelpURI)
		page, under := strings.CutPrefix(r.HelpURI, docsAddress+"/")
		require.True(t, under, r.HelpURI)
		_, err = os.Stat(filepath.Join("../../../../docs", filepath.FromSlash(page)))
		assert.NoError(t, err)
		assert.Regexp(t, pascalCase, r.Name)
		assert.False(t, names[r.Name], r.Name)
		names[r.Name] = true
	}
	driver = logOf(t, full(t)).Tool.Driver
	assert.Empty(t, driver.Information)
	for _, r := range driver.Rules {
		assert.Empty(t, r.HelpURI)
	}
}

// The help says in Markdown what it says in plain text, an item a line.
func TestSARIFHelpIsTheRulesText(t *testing.T) {
	for _, r := range catalog.Rules() {
		help := sarifHelp(r)
		for _, said := range append([]string{r.Why, rulebook.Severity(r), r.Basis.Source.String(), "dryfit basis " + r.ID}, r.Needs...) {
			assert.Contains(t, help.Text, said, r.ID)
			assert.Contains(t, help.Markdown, markdown.Text(said), r.ID)
		}
		for _, l := range r.Limits {
			assert.Contains(t, help.Text, r.Full(l.Key), r.ID)
		}
		assert.Equal(t, strings.Count(help.Text, "\n")+1, strings.Count(help.Markdown, "\n"), r.ID)
	}
}

// applied makes the replacements of a fix as a reader does that knows only
// lines and columns.
func applied(src string, list []sarifReplacement) string {
	lines := strings.SplitAfter(src, "\n")
	offset := func(line, column int) int {
		at := len(strings.Join(lines[:line-1], ""))
		return at + len(string([]rune(lines[line-1])[:column-1]))
	}
	for _, r := range slices.Backward(list) {
		d := r.Deleted
		src = src[:offset(d.StartLine, d.StartColumn)] + r.Inserted.Text + src[offset(d.EndLine, d.EndColumn):]
	}
	return src
}

// A fix, made by its regions alone, gives the file that the change in place
// gives, and what it is of is no longer found.
func TestSARIFFixesClearWhatTheyAreOf(t *testing.T) {
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25", Offers: true}
	fixes, inserts := 0, 0
	for i, file := range sample.Names(t) {
		text := string(sample.Source(t, file))
		if i%2 == 0 {
			text = strings.ReplaceAll(strings.Replace(text, "title", "# é 漢 🏛️\ntitle", 1), "\n", "\r\n")
		}
		assessment := review.Spec("hall.ceiling.toml", []byte("\xef\xbb\xbf"+text), o)
		require.Empty(t, assessment.Problems, file)
		run := logOf(t, Report{Rules: catalog.Rules(), Runs: []Run{{Assessments: []*review.Assessment{assessment}}}})
		require.Len(t, run.Results, len(assessment.Findings))
		for n, f := range assessment.Findings {
			result := run.Results[n]
			if f.Passes == nil {
				assert.Empty(t, result.Fixes)
				continue
			}
			want, err := edit.Apply([]byte(text), []edit.Change{{Key: f.Passes.Key, Value: f.Passes.Value}})
			require.NoError(t, err)
			require.Len(t, result.Fixes, 1, "%s: %s", file, f.Rule.ID)
			change := result.Fixes[0].Changes[0]
			assert.Equal(t, result.Locations[0].Physical.Artifact, change.Artifact)
			got := applied(text, change.Replacements)
			require.Equal(t, string(want), got)
			for _, again := range review.Spec("hall.ceiling.toml", []byte(got), o).Findings {
				assert.False(t, again.Rule == f.Rule && again.At == f.At && again.Severity >= f.Severity && again.Accepted == nil, "%s: %s", file, result.Message.Text)
			}
			fixes++
			if d := change.Replacements[0].Deleted; d.StartLine == d.EndLine && d.StartColumn == d.EndColumn {
				inserts++
			}
		}
	}
	t.Logf("%d fixes, %d of them of a key that is absent", fixes, inserts)
	assert.Greater(t, fixes, 15)
}

// What the file accepts is suppressed in source, where the acceptance stands.
func TestSARIFAcceptancesAreInSource(t *testing.T) {
	r := checked(t, "[finish]", "[[accept]]\nrule = \"strap.setting\"\nreason = \"a jig is made\"\nby = \"shop\"\nuntil = 2027-06-30\n\n[[accept]]\nrule = \"close.cover\"\nreason = \"a wider one comes\"\nby = \"team\"\nuntil = 2027-06-30\n\n[finish]")
	lines := strings.Split(string(r.Runs[0].Assessments[0].Document.Source), "\n")
	found := 0
	for _, result := range logOf(t, r).Results {
		for _, s := range result.Suppressions {
			found++
			assert.Equal(t, "inSource", s.Kind)
			assert.Equal(t, "accepted", s.Status)
			assert.Contains(t, map[string]string{
				"strap.setting": "a jig is made, by shop, until 2027-06-30", "close.cover": "a wider one comes, by team, until 2027-06-30",
			}[result.RuleID], s.Justification)
			assert.NotEmpty(t, s.Justification)
			at := s.Location.Physical.Region.StartLine
			assert.Contains(t, strings.Join(lines[at-1:at+1], "\n"), `"`+result.RuleID+`"`)
		}
	}
	assert.GreaterOrEqual(t, found, 2)
}
