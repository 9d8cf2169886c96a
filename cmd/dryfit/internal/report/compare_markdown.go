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
	p := c.New.Ceiling.Project
	fmt.Fprintf(b, "## %s\n\n**%s → %s**\n\n", markdownText(title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get())), c.Old.Verdict, c.New.Verdict)
	fmt.Fprintf(b, "| | spec | standards | counts |\n| --- | --- | --- | --- |\n")
	for _, s := range []struct {
		name  string
		sheet *review.Sheet
	}{{"old", c.Old}, {"new", c.New}} {
		fmt.Fprintf(b, "| %s | %s | %s | %s |\n", s.name, markdownText(s.sheet.Path), markdownText(standardsOf(s.sheet)), markdownText(s.sheet.Counts.String()))
	}
	for _, l := range append(loosenings(c.Old.Loosened), loosenings(c.New.Loosened)...) {
		fmt.Fprintf(b, "\n- %s", markdownText(l))
	}
	for _, s := range c.sections() {
		fmt.Fprintf(b, "\n### %s\n\n| | | |\n| --- | --- | --- |\n", strings.ToUpper(s.title[:1])+s.title[1:])
		for _, e := range s.entries {
			what := e.what
			if s.severities {
				what = e.head()
			}
			fmt.Fprintf(b, "| %s | %s | %s |\n", markdownText(e.mark), markdownText(what), markdownText(e.text))
		}
	}
	fmt.Fprintf(b, "\n%s\n\n%s\n", markdownText(c.ending())+". Checked on "+markdownText(c.On)+".", markdownText(Caution))
	return b.Flush()
}
