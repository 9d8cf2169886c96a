package change

import (
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// CompareMarkdown writes the comparison as Markdown, for a comment on a pull
// request. Holds have room before the rest.
func CompareMarkdown(w io.Writer, c Comparison) error {
	var b strings.Builder
	p := c.New.Ceiling.Project
	fmt.Fprintf(&b, "## %s\n\n**%s → %s**\n\n", markdown.Text(show.NoVerdict(show.Title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()))), c.Old.Verdict, c.New.Verdict)
	fmt.Fprintf(&b, "| | spec | standards | counts |\n| --- | --- | --- | --- |\n")
	for _, s := range []struct {
		name       string
		assessment *review.Assessment
	}{{"old", c.Old}, {"new", c.New}} {
		fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", s.name, markdown.Text(s.assessment.Path), markdown.Text(standardsOf(s.assessment)), markdown.Text(s.assessment.Counts.String()))
	}
	var pieces markdown.Gathered
	for _, l := range append(report.Loosenings(c.Old.Loosened), report.Loosenings(c.New.Loosened)...) {
		pieces.Add(markdown.Piece{Rank: markdown.Loosens, What: "loosening", Forms: []string{"\n- " + markdown.Text(l)}})
	}
	for _, s := range c.sections() {
		under := []*markdown.Heading{{Text: fmt.Sprintf("\n### %s\n\n| | | |\n| --- | --- | --- |\n", strings.ToUpper(s.title[:1])+s.title[1:])}}
		for _, e := range s.entries {
			pieces.Add(comparePiece(under, e, s.severities))
		}
	}
	text, left := markdown.RoomFor(markdown.Limit, &pieces)
	if said := markdown.LeftOut(left); said != "" {
		fmt.Fprintf(&b, "\n%s\n", said)
	}
	b.WriteString(text)
	fmt.Fprintf(&b, "\n%s\n\n%s\n", markdown.Text(c.ending())+". Checked on "+markdown.Text(c.On)+".", markdown.Text(show.Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

func comparePiece(under []*markdown.Heading, e compareEntry, severities bool) markdown.Piece {
	p, what := markdown.Piece{Rank: markdown.Remarks, Under: under, What: "note"}, e.what
	switch {
	case severities && e.mark == engine.Hold.String():
		p.Rank, p.What = markdown.Fails, "hold"
	case severities && e.mark == engine.Query.String():
		p.Rank, p.What = markdown.Asks, "query"
	}
	if severities {
		what = e.head()
	}
	for _, text := range []string{e.text, show.ShownTo(e.text, markdown.MostBrief)} {
		p.Forms = append(p.Forms, fmt.Sprintf("| %s | %s | %s |\n", markdown.Text(e.mark), markdown.Text(what), markdown.Text(text)))
	}
	return p
}
