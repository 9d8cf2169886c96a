package report

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"dryfit/rules/review"
)

// CompareMarkdown writes the comparison as Markdown, for a comment on a pull
// request.
func CompareMarkdown(w io.Writer, c Comparison) error {
	b := bufio.NewWriter(w)
	p := c.New.Ceiling.Spec.Project
	fmt.Fprintf(b, "## %s\n\n**%s → %s**\n\n", plain(title(p.Title, p.Sheet, p.Revision)), c.Old.Verdict, c.New.Verdict)
	fmt.Fprintf(b, "| | spec | standards | counts |\n| --- | --- | --- | --- |\n")
	for _, s := range []struct {
		name  string
		sheet *review.Sheet
	}{{"old", c.Old}, {"new", c.New}} {
		fmt.Fprintf(b, "| %s | %s | %s | %s |\n", s.name, plain(s.sheet.Path), plain(standardsOf(s.sheet)), plain(s.sheet.Counts.String()))
	}
	for _, s := range c.sections() {
		fmt.Fprintf(b, "\n### %s\n\n| | | |\n| --- | --- | --- |\n", strings.ToUpper(s.title[:1])+s.title[1:])
		for _, e := range s.entries {
			what := e.what
			if s.severities {
				what = e.head()
			}
			fmt.Fprintf(b, "| %s | %s | %s |\n", plain(e.mark), plain(what), plain(e.text))
		}
	}
	fmt.Fprintf(b, "\n%s\n\n%s\n", plain(c.ending())+". Checked on "+plain(c.On)+".", plain(Caution))
	return b.Flush()
}

// marked are the characters that Markdown, or HTML within it, takes for marks.
const marked = "\\`*_{}[]()<>#+!|~&@:"

// plain is text that Markdown shows as it is, on one line: no mark, link,
// mention or tag that a spec's author writes takes effect.
func plain(text string) string {
	var b strings.Builder
	for _, r := range Safe(strings.Join(strings.Fields(text), " ")) {
		switch {
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '&':
			b.WriteString("&amp;")
		case r == '@' || r == ':':
			fmt.Fprintf(&b, "&#%d;", r) // no mention, and no address that links by itself
		case strings.ContainsRune(marked, r):
			b.WriteRune('\\')
			b.WriteRune(r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
