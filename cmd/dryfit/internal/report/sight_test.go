package report

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/model/sample"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/rules/review/catalog"
)

// sheetOf is the reading room with some of its text changed.
func sheetOf(t *testing.T, path string, changes ...string) *review.Assessment {
	t.Helper()
	o := review.Options{Rules: catalog.Rules(), Standards: standards.BuiltIn(), On: "2026-11-25"}
	s := review.Spec(path, sample.Source(t, sample.ReadingRoom, changes...), o)
	require.Empty(t, s.Problems)
	return s
}

const readingTitle = `"Reading room, Alder Quay library"`

// held are changes that make the reading room fail, with a title of one's own.
func held(title string) []string {
	return []string{readingTitle, tomlString(title), `depth        = "60mm"`, `depth        = "20mm"`}
}

func outOf(t *testing.T, format Format, assessments ...*review.Assessment) string {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, Write(&b, Report{On: "2026-11-25", Rules: catalog.Rules(), Runs: []Run{{Assessments: assessments}}}, format))
	return b.String()
}

// holds are the rules that hold a spec.
func holds(s *review.Assessment) (ids []string) {
	for _, f := range s.Findings {
		if f.Severity == engine.Hold {
			ids = append(ids, f.Rule.ID)
		}
	}
	return ids
}

// What fills a comment is never what keeps a hold out of it: a title of its
// length, a thousand files that pass, or many holds of long texts.
func TestNothingPushesAHoldOutOfAComment(t *testing.T) {
	bad := sheetOf(t, "z.ceiling.toml", held("Hall")...)
	require.NotEmpty(t, holds(bad))
	passing := sheetOf(t, "a.ceiling.toml")
	many := make([]*review.Assessment, 1000)
	for i := range many {
		s := *passing
		s.Path = fmt.Sprintf("%s/%d.ceiling.toml", strings.Repeat("long", 30), i)
		many[i] = &s
	}
	loud := make([]*review.Assessment, 60)
	for i := range loud {
		name := strings.Repeat("<", 300)
		loud[i] = sheetOf(t, fmt.Sprintf("%d.ceiling.toml", i), append(held(name), `name   = "street door"`, "name = "+tomlString(name), `width  = "900mm"`, `width  = "300mm"`)...)
	}
	for name, assessments := range map[string][]*review.Assessment{
		"a title": {sheetOf(t, "z.ceiling.toml", held(strings.Repeat("word ", 12400))...)},
		"files":   append(many, bad), "holds": loud,
	} {
		out := outOf(t, Markdown, assessments...)
		assert.LessOrEqual(t, len([]rune(out)), 65536, name)
		judgeMarkdown(t, []byte(out))
		for _, s := range assessments {
			if len(holds(s)) == 0 {
				continue
			}
			_, part, found := strings.Cut(out, "### "+markdown.Code(s.Path)+"\n")
			require.True(t, found, "%s: %s", name, s.Path)
			part, _, _ = strings.Cut(part, "\n### ")
			for _, id := range holds(s) {
				assert.True(t, regexp.MustCompile(`- line \d+, `+regexp.QuoteMeta(markdown.Code(id))).MatchString(part), "%s: %s", name, s.Path)
			}
		}
	}
	out := outOf(t, Markdown, append(many, bad)...)
	assert.True(t, strings.Contains(out, "\nLeft out for lack of space in a comment: "))
	assert.True(t, strings.Contains(out, "and come out of the face"), "the hold is there in words")
}

// A forge shows ten annotations of a word: the holds come first, and the tenth
// lists what would not be shown.
func TestNothingPushesAHoldOutOfTheAnnotations(t *testing.T) {
	var assessments []*review.Assessment
	for i := range 12 {
		assessments = append(assessments, sheetOf(t, fmt.Sprintf("a%d.ceiling.toml", i)))
	}
	for i := range 12 {
		assessments = append(assessments, sheetOf(t, fmt.Sprintf("z%d.ceiling.toml", i), held(strings.Repeat("W", 70000))...))
	}
	out := outOf(t, Annotations, assessments...)
	judgeAnnotations(t, []byte(out))
	var errors []string
	for line := range strings.Lines(out) {
		assert.Less(t, len(line), 65536)
		if strings.HasPrefix(line, "::error ") {
			errors = append(errors, line)
		} else {
			break
		}
	}
	require.Greater(t, len(errors), 11, "the holds come before all else")
	shown := strings.Join(errors[:10], "")
	for _, s := range assessments[12:] {
		for _, id := range holds(s) {
			assert.Regexp(t, regexp.QuoteMeta(s.Path)+`(,line=|:)\d+[^%]*hold `+regexp.QuoteMeta(id), shown)
		}
	}
}

// A title is no verdict and no rule, however it is broken into lines, and what is
// long is cut where it is shown; documents keep it.
func TestATitleIsNoVerdict(t *testing.T) {
	line := strings.Repeat("─", 80)
	for _, title := range []string{
		"PASS: 0 held, 0 queried, 1 referred", "PASS", "PASS WITH NOTES: 0 held", strings.Repeat("x", 75) + " PASS: 0 held, 0 queried " + line + " " + strings.Repeat("═", 80) + " FAIL",
	} {
		s := sheetOf(t, "PASS: 1 file.ceiling.toml", held(title)...)
		text := outOf(t, Text(false), s, s)
		var verdicts []string
		for l := range strings.Lines(text) {
			if regexp.MustCompile(`^\s*(PASS|FAIL|COULD NOT CHECK)`).MatchString(l) {
				verdicts = append(verdicts, strings.Fields(l)[0])
			}
		}
		assert.Equal(t, []string{"FAIL:", "FAIL:", "FAIL", "FAIL", "FAIL:"}, verdicts, title)
		assert.Equal(t, 4, strings.Count(text, line))
		assert.Equal(t, 1, strings.Count(text, strings.Repeat("═", 80)))
		assert.NotRegexp(t, `(?m)^###.*PASS`, outOf(t, Markdown, sheetOf(t, "z.ceiling.toml", held(title)...)))
	}
	long := sheetOf(t, "z.ceiling.toml", held(strings.Repeat("word ", 12400))...)
	assert.Less(t, len(outOf(t, Text(false), long)), 30000)
	assert.Greater(t, len(outOf(t, JSON, long)), 62000)
}

func TestShown(t *testing.T) {
	assert.Equal(t, "a short text", show.Shown("a short text"))
	assert.Equal(t, `\u2500\u2550\u2588`, show.Shown("─═█"))
	got := show.Shown(strings.Repeat("a", 1000) + strings.Repeat("b", 1000))
	assert.Equal(t, strings.Repeat("a", 400)+" […1400 characters…] "+strings.Repeat("b", 200), got)
	assert.Less(t, len(show.Shown(strings.Repeat("\x00", 1e6))), 2000)
	assert.Less(t, len(show.Shown(strings.Repeat("─", 1e6))), 8*show.MostShown)
	assert.Equal(t, "PASSAGE", show.NoVerdict("PASSAGE"))
	assert.Equal(t, `  \x50ASS, all of it`, show.NoVerdict("  PASS, all of it"))
}
