package report

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Markdown writes a comment for a pull request, or the summary of a job: the
// verdict, what the standards loosen, the files, then each file's findings, the
// worst first. Where a comment has no room for all, what fails a file has it
// before the rest, and what is left out is counted.
func Markdown(w io.Writer, r Report) error {
	sheets := r.worstFirst()
	pieces := markdownLoosened(sheets)
	table := &heading{text: "\n| file | to | verdict | |\n| --- | --- | --- | --- |\n"}
	for _, s := range sheets {
		pieces = append(pieces, markdownRow(table, s))
	}
	for _, s := range sheets {
		pieces = append(pieces, markdownSheet(s, r.Strict)...)
	}
	pieces = append(pieces, markdownReferred(r)...)
	text, left := roomFor(pieces, markdownLimit)
	var b strings.Builder
	fmt.Fprintf(&b, "## dryfit: %s\n\n", r.Verdict())
	fmt.Fprintf(&b, "%s, judged on %s%s%s.\n", plural(len(sheets), "file"), r.On, map[bool]string{true: ", strictly"}[r.Strict], markdownAgainst(r))
	if said := leftOut(left); said != "" {
		fmt.Fprintf(&b, "\n%s\n", said)
	}
	b.WriteString(text)
	fmt.Fprintf(&b, "\n> %s\n", Caution)
	_, err := io.WriteString(w, b.String())
	return err
}

// worstFirst are the sheets of all runs, the worst verdict first.
func (r Report) worstFirst() []*review.Sheet {
	var out []*review.Sheet
	for _, run := range r.Runs {
		out = append(out, run.Sheets...)
	}
	slices.SortStableFunc(out, func(a, b *review.Sheet) int { return cmp.Compare(b.Verdict, a.Verdict) })
	return out
}

// markdownRow is the verdict on a file.
func markdownRow(table *heading, s *review.Sheet) piece {
	p := piece{rank: passes, under: []*heading{table}, what: "file"}
	if s.Verdict >= engine.Failed {
		p.rank = judged
	}
	p.forms = []string{fmt.Sprintf("| %s | %s | **%s** | %s |\n", cell(s.Path), MarkdownText(s.Standards.Name), s.Verdict, s.Counts)}
	return p
}

// markdownAgainst names the baseline, and counts what is new in all files and
// what is not.
func markdownAgainst(r Report) string {
	if r.Against == "" {
		return ""
	}
	fresh, before := 0, 0
	for _, run := range r.Runs {
		f, b := run.Counts().Since()
		fresh, before = fresh+f, before+b
	}
	return fmt.Sprintf(", against the findings at %s: %d %s, %d %s", MarkdownCode(r.Against), fresh, engine.New, before, engine.AlreadyThere)
}

// markdownOrder is that of a file's findings: what fails first.
var markdownOrder = []engine.Severity{engine.Hold, engine.Query, engine.Note}

func markdownSheet(s *review.Sheet, strict bool) []piece {
	title := ""
	if s.Project != nil {
		title = ": " + MarkdownText(shownTo(s.Project.Title.Get(), mostNamed))
	}
	counts := s.Counts
	counts.Families = "" // they stand in the table
	under := []*heading{{text: fmt.Sprintf("\n### %s\n\n**%s**, %s%s\n", MarkdownCode(s.Path), s.Verdict, counts, title)}}
	out := []piece{{rank: passes, under: under, what: "file", forms: []string{""}}}
	all := entries(s)
	for _, severity := range markdownOrder {
		part := append(slices.Clip(under), &heading{text: fmt.Sprintf("\n**%s**\n\n", severity)})
		for _, e := range all {
			if e.severity == severity && e.accepted == "" {
				out = append(out, markdownEntry(part, e, s.Verdict, strict))
			}
		}
	}
	out = append(out, markdownUncomputed(under, s)...)
	out = append(out, markdownAccepted(under, all)...)
	out = append(out, markdownAwaited(under, s)...)
	return append(out, markdownRest(under, s)...)
}

// markdownUncomputed are the figures that could not be computed, which fail a file
// as a hold does.
func markdownUncomputed(under []*heading, s *review.Sheet) []piece {
	under = append(slices.Clip(under), &heading{text: "\n**could not be computed**\n\n"})
	var out []piece
	for _, l := range lacking(s.NotChecked) {
		if l.failed {
			line := fmt.Sprintf("- %s: %s\n", codes(l.rules), MarkdownText(l.said()))
			out = append(out, piece{rank: fails, under: under, what: "hold", forms: []string{line}})
		}
	}
	return out
}

func codes(ids []string) string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = MarkdownCode(id)
	}
	return strings.Join(out, ", ")
}

func markdownAwaited(under []*heading, s *review.Sheet) []piece {
	under = append(slices.Clip(under), &heading{text: "\n**give first**\n\n"})
	var out []piece
	for _, a := range s.Awaited {
		out = append(out, piece{rank: remarks, under: under, what: "note", forms: []string{fmt.Sprintf("- %s: %s\n", MarkdownCode(a.Key), waiting(a))}})
	}
	return out
}

func markdownEntry(under []*heading, e entry, v engine.Verdict, strict bool) piece {
	p := piece{rank: remarks, under: under, what: "note"}
	switch {
	case e.severity == engine.Hold:
		p.rank, p.what = fails, "hold"
	case e.severity == engine.Query && v >= engine.Failed:
		p.rank, p.what = asks, "query"
	case e.severity == engine.Query:
		p.what = "query"
	}
	if e.fails(strict) {
		p.rank = fails
	}
	line := fmt.Sprintf("- line %d%s, %s", e.start.Line, e.since(), MarkdownCode(e.rule))
	full := line + ": " + MarkdownText(e.said())
	if e.passes != "" {
		full += " Passes with " + MarkdownCode(e.passes) + "."
	}
	if e.basis != "" {
		full += " *" + MarkdownText(e.basis) + "*"
	}
	p.forms = []string{full + "\n", line + ": " + MarkdownText(shownTo(e.said(), mostBrief)) + "\n", line + "\n"}
	return p
}

func markdownAccepted(under []*heading, all []entry) []piece {
	under = append(slices.Clip(under), &heading{text: "\n**accepted**\n\n"})
	var out []piece
	for _, e := range all {
		if e.accepted == "" {
			continue
		}
		line := fmt.Sprintf("- line %d, %s, %s", e.start.Line, e.severity, MarkdownCode(e.rule))
		out = append(out, piece{rank: loosens, under: under, what: "loosening", forms: []string{
			fmt.Sprintf("%s: %s Accepted: %s.\n", line, MarkdownText(e.said()), MarkdownText(e.accepted)),
			fmt.Sprintf("%s: %s Accepted: %s.\n", line, MarkdownText(shownTo(e.said(), mostBrief)), MarkdownText(shownTo(e.accepted, mostBrief))),
			line + "\n",
		}})
	}
	return out
}

// markdownLoosened lists what the standards loosen, once for all files, and is
// never folded away.
func markdownLoosened(sheets []*review.Sheet) []piece {
	under := []*heading{{text: "\n**loosened by the standards**\n\n"}}
	said := map[string]bool{}
	var out []piece
	for _, s := range sheets {
		for _, l := range s.Loosened {
			what := fmt.Sprintf("- %s is %s, built in is %s; ", MarkdownCode(l.Name), MarkdownText(l.Used), MarkdownText(l.BuiltIn))
			origin := fmt.Sprintf("%s:%d: ", l.Origin.File, l.Origin.Line)
			p := piece{rank: loosens, under: under, what: "loosening", forms: []string{
				what + MarkdownText(origin+l.Source) + "\n", what + MarkdownText(origin+shownTo(l.Source, mostBrief)) + "\n", what + "\n",
			}}
			if !said[p.forms[0]] {
				said[p.forms[0]] = true
				out = append(out, p)
			}
		}
	}
	return out
}

// markdownRest folds away what was not checked and assumed.
func markdownRest(under []*heading, s *review.Sheet) []piece {
	var b strings.Builder
	for _, l := range lacking(s.NotChecked) {
		if !l.failed {
			fmt.Fprintf(&b, "- not checked: %s: %s\n", codes(l.rules), MarkdownText(l.said()))
		}
	}
	for _, a := range s.Assumed {
		fmt.Fprintf(&b, "- assumed: %s, %s\n", MarkdownCode(a.Key+" = "+Written(a.Value)), MarkdownText(AssumedFrom(a)))
	}
	if b.Len() == 0 {
		return nil
	}
	text := "\n<details><summary>not checked, assumed</summary>\n\n" + b.String() + "\n</details>\n"
	return []piece{{rank: appended, under: under, what: "part", forms: []string{text}}}
}

// markdownReferred lists what is referred, once for all files.
func markdownReferred(r Report) []piece {
	under := []*heading{{text: "\n### Referred: not this tool's to decide\n\n"}}
	var out []piece
	for _, item := range r.referred() {
		line := fmt.Sprintf("- %s: %s (%s)\n", MarkdownCode(item.rule), MarkdownText(item.title), plural(item.files, "file"))
		out = append(out, piece{rank: loosens, under: under, what: "part", forms: []string{line}})
	}
	return out
}
