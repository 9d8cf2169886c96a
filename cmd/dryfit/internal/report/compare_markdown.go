package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// CompareMarkdown writes the comparison as Markdown, for a comment on a pull
// request. Holds have room before the rest.
func CompareMarkdown(w io.Writer, c Comparison) error {
	var b strings.Builder
	p := c.New.Ceiling.Project
	fmt.Fprintf(&b, "## %s\n\n**%s → %s**\n\n", MarkdownText(noVerdict(title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()))), c.Old.Verdict, c.New.Verdict)
	fmt.Fprintf(&b, "| | spec | standards | counts |\n| --- | --- | --- | --- |\n")
	for _, s := range []struct {
		name  string
		sheet *review.Sheet
	}{{"old", c.Old}, {"new", c.New}} {
		fmt.Fprintf(&b, "| %s | %s | %s | %s |\n", s.name, MarkdownText(s.sheet.Path), MarkdownText(standardsOf(s.sheet)), MarkdownText(s.sheet.Counts.String()))
	}
	var pieces []piece
	for _, l := range append(loosenings(c.Old.Loosened), loosenings(c.New.Loosened)...) {
		pieces = append(pieces, piece{rank: loosens, what: "loosening", forms: []string{"\n- " + MarkdownText(l)}})
	}
	for _, s := range c.sections() {
		under := []*heading{{text: fmt.Sprintf("\n### %s\n\n| | | |\n| --- | --- | --- |\n", strings.ToUpper(s.title[:1])+s.title[1:])}}
		for _, e := range s.entries {
			pieces = append(pieces, comparePiece(under, e, s.severities))
		}
	}
	text, left := roomFor(pieces, markdownLimit)
	if said := leftOut(left); said != "" {
		fmt.Fprintf(&b, "\n%s\n", said)
	}
	b.WriteString(text)
	fmt.Fprintf(&b, "\n%s\n\n%s\n", MarkdownText(c.ending())+". Checked on "+MarkdownText(c.On)+".", MarkdownText(Caution))
	_, err := io.WriteString(w, b.String())
	return err
}

func comparePiece(under []*heading, e compareEntry, severities bool) piece {
	p, what := piece{rank: remarks, under: under, what: "note"}, e.what
	switch {
	case severities && e.mark == engine.Hold.String():
		p.rank, p.what = fails, "hold"
	case severities && e.mark == engine.Query.String():
		p.rank, p.what = asks, "query"
	}
	if severities {
		what = e.head()
	}
	for _, text := range []string{e.text, shownTo(e.text, mostBrief)} {
		p.forms = append(p.forms, fmt.Sprintf("| %s | %s | %s |\n", MarkdownText(e.mark), MarkdownText(what), MarkdownText(text)))
	}
	return p
}
