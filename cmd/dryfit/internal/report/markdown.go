package report

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/markdown"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/rules/review"
)

// Markdown writes a comment for a pull request, or the summary of a job: the
// verdict, what the standards loosen, the files, then each file's findings, the
// worst first. Where a comment has no room for all, what fails a file has it
// before the rest, and what is left out is counted.
func Markdown(w io.Writer, r Report) Writer {
	m := &markdownWriter{byRuns: byRuns{r}, to: w, said: map[string]bool{}}
	m.table = &markdown.Heading{Text: "\n| file | to | verdict | |\n| --- | --- | --- | --- |\n"}
	m.loosening = []*markdown.Heading{{Text: "\n**loosened by the standards**\n\n"}}
	return m
}

type markdownWriter struct {
	byRuns
	to        io.Writer
	table     *markdown.Heading
	loosening []*markdown.Heading
	loosened  markdown.Gathered
	said      map[string]bool                             // what is loosened
	rows      [engine.CouldNotCheck + 1]markdown.Gathered // by verdict
	specs     [engine.CouldNotCheck + 1]markdown.Gathered
	referred  referrals
}

func (m *markdownWriter) Add(s *review.Assessment) error {
	m.loosened.Add(m.loosens(s)...)
	m.rows[s.Verdict].Add(markdownRow(m.table, s))
	m.specs[s.Verdict].Add(markdownSpec(s, m.report.Strict)...)
	m.referred.add(s)
	return nil
}

func (m *markdownWriter) Close() error {
	parts := []*markdown.Gathered{&m.loosened}
	for _, by := range [][]markdown.Gathered{m.rows[:], m.specs[:]} {
		for i := range by {
			parts = append(parts, &by[len(by)-1-i]) // the worst first
		}
	}
	var end markdown.Gathered
	end.Add(markdownReferred(m.referred)...)
	text, left := markdown.RoomFor(markdown.Limit, append(parts, &end)...)
	var b strings.Builder
	fmt.Fprintf(&b, "## dryfit: %s\n\n", m.report.Verdict())
	fmt.Fprintf(&b, "%s, judged on %s%s%s.\n", show.Plural(m.report.files(), "file"), m.report.On, map[bool]string{true: ", with --strict"}[m.report.Strict], m.against())
	if said := markdown.LeftOut(left); said != "" {
		fmt.Fprintf(&b, "\n%s\n", said)
	}
	b.WriteString(text)
	fmt.Fprintf(&b, "\n> %s\n", show.Caution)
	_, err := io.WriteString(m.to, b.String())
	return err
}

// markdownRow is the verdict on a file.
func markdownRow(table *markdown.Heading, s *review.Assessment) markdown.Piece {
	p := markdown.Piece{Rank: markdown.Passes, Under: []*markdown.Heading{table}, What: "file"}
	if s.Verdict >= engine.Failed {
		p.Rank = markdown.Judged
	}
	p.Forms = []string{fmt.Sprintf("| %s | %s | **%s** | %s |\n", markdown.Cell(s.Path), markdown.Text(s.Standards.Name), s.Verdict, s.Counts)}
	return p
}

// against names the baseline, and counts what is new in all files and what is not.
func (m *markdownWriter) against() string {
	if m.report.Against == "" {
		return ""
	}
	fresh, before := 0, 0
	for _, run := range m.report.Runs {
		f, b := run.Counts().Since()
		fresh, before = fresh+f, before+b
	}
	return fmt.Sprintf(", against the findings at %s: %d %s, %d %s", markdown.Code(m.report.Against), fresh, engine.New, before, engine.AlreadyThere)
}

// markdownOrder is that of a file's findings: what fails first.
var markdownOrder = []engine.Severity{engine.Hold, engine.Query, engine.Note}

func markdownSpec(s *review.Assessment, strict bool) []markdown.Piece {
	title := ""
	if s.Project != nil {
		title = ": " + markdown.Text(show.ShownTo(s.Project.Title.Get(), show.MostNamed))
	}
	counts := s.Counts
	counts.Families = "" // they stand in the table
	under := []*markdown.Heading{{Text: fmt.Sprintf("\n### %s\n\n**%s**, %s%s\n", markdown.Code(s.Path), s.Verdict, counts, title)}}
	out := []markdown.Piece{{Rank: markdown.Passes, Under: under, What: "file", Forms: []string{""}}}
	all := Entries(s)
	for _, severity := range markdownOrder {
		part := append(slices.Clip(under), &markdown.Heading{Text: fmt.Sprintf("\n**%s**\n\n", severity)})
		for _, e := range all {
			if e.severity == severity && e.Accepted == "" {
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
func markdownUncomputed(under []*markdown.Heading, s *review.Assessment) []markdown.Piece {
	under = append(slices.Clip(under), &markdown.Heading{Text: "\n**could not be computed**\n\n"})
	var out []markdown.Piece
	for _, l := range Lacking(s.NotChecked) {
		if l.failed {
			line := fmt.Sprintf("- %s: %s\n", codes(l.Rules), markdown.Text(l.Said()))
			out = append(out, markdown.Piece{Rank: markdown.Fails, Under: under, What: "hold", Forms: []string{line}})
		}
	}
	return out
}

func codes(ids []string) string {
	out := make([]string, len(ids))
	for i, id := range ids {
		out[i] = markdown.Code(id)
	}
	return strings.Join(out, ", ")
}

func markdownAwaited(under []*markdown.Heading, s *review.Assessment) []markdown.Piece {
	under = append(slices.Clip(under), &markdown.Heading{Text: "\n**give first**\n\n"})
	var out []markdown.Piece
	for _, a := range s.Awaited {
		out = append(out, markdown.Piece{Rank: markdown.Remarks, Under: under, What: "note", Forms: []string{fmt.Sprintf("- %s: %s\n", markdown.Code(a.Key), waiting(a))}})
	}
	return out
}

func markdownEntry(under []*markdown.Heading, e Entry, v engine.Verdict, strict bool) markdown.Piece {
	p := markdown.Piece{Rank: markdown.Remarks, Under: under, What: "note"}
	switch {
	case e.severity == engine.Hold:
		p.Rank, p.What = markdown.Fails, "hold"
	case e.severity == engine.Query && v >= engine.Failed:
		p.Rank, p.What = markdown.Asks, "query"
	case e.severity == engine.Query:
		p.What = "query"
	}
	if e.fails(strict) {
		p.Rank = markdown.Fails
	}
	line := fmt.Sprintf("- %s%s, %s", markdown.Text(e.Line()), e.since(), markdown.Code(e.Rule))
	full := line + ": " + markdown.Text(e.Said())
	if e.Passes != "" {
		full += " Passes with " + markdown.Code(e.Passes) + "."
	}
	if e.Basis != "" {
		full += " *" + markdown.Text(e.Basis) + "*"
	}
	p.Forms = []string{full + "\n", line + ": " + markdown.Text(show.ShownTo(e.Said(), markdown.MostBrief)) + "\n", line + "\n"}
	return p
}

func markdownAccepted(under []*markdown.Heading, all []Entry) []markdown.Piece {
	under = append(slices.Clip(under), &markdown.Heading{Text: "\n**accepted**\n\n"})
	var out []markdown.Piece
	for _, e := range all {
		if e.Accepted == "" {
			continue
		}
		line := fmt.Sprintf("- %s, %s, %s", markdown.Text(e.Line()), e.severity, markdown.Code(e.Rule))
		out = append(out, markdown.Piece{Rank: markdown.Loosens, Under: under, What: "loosening", Forms: []string{
			fmt.Sprintf("%s: %s Accepted: %s.\n", line, markdown.Text(e.Said()), markdown.Text(e.Accepted)),
			fmt.Sprintf("%s: %s Accepted: %s.\n", line, markdown.Text(show.ShownTo(e.Said(), markdown.MostBrief)), markdown.Text(show.ShownTo(e.Accepted, markdown.MostBrief))),
			line + "\n",
		}})
	}
	return out
}

// loosens lists what the standards loosen, once for all files, and is never folded
// away.
func (m *markdownWriter) loosens(s *review.Assessment) []markdown.Piece {
	var out []markdown.Piece
	for _, l := range s.Loosened {
		what := fmt.Sprintf("- %s is %s, built in is %s; ", markdown.Code(l.Name), markdown.Text(l.Used), markdown.Text(l.BuiltIn))
		origin := fmt.Sprintf("%s:%d: ", l.Origin.File, l.Origin.Line)
		p := markdown.Piece{Rank: markdown.Loosens, Under: m.loosening, What: "loosening", Forms: []string{
			what + markdown.Text(origin+l.Source) + "\n", what + markdown.Text(origin+show.ShownTo(l.Source, markdown.MostBrief)) + "\n", what + "\n",
		}}
		if !m.said[p.Forms[0]] {
			m.said[p.Forms[0]] = true
			out = append(out, p)
		}
	}
	return out
}

// markdownRest folds away what was not checked and assumed.
func markdownRest(under []*markdown.Heading, s *review.Assessment) []markdown.Piece {
	var b strings.Builder
	for _, l := range Lacking(s.NotChecked) {
		if !l.failed {
			fmt.Fprintf(&b, "- not checked: %s: %s\n", codes(l.Rules), markdown.Text(l.Said()))
		}
	}
	for _, a := range s.Assumed {
		fmt.Fprintf(&b, "- assumed: %s, %s\n", markdown.Code(a.Key+" = "+show.Written(a.Value)), markdown.Text(AssumedFrom(a)))
	}
	if b.Len() == 0 {
		return nil
	}
	text := "\n<details><summary>not checked, assumed</summary>\n\n" + b.String() + "\n</details>\n"
	return []markdown.Piece{{Rank: markdown.Appended, Under: under, What: "part", Forms: []string{text}}}
}

// markdownReferred lists what is referred, once for all files.
func markdownReferred(r referrals) []markdown.Piece {
	under := []*markdown.Heading{{Text: "\n### Referred to others for decision\n\n"}}
	var out []markdown.Piece
	for _, item := range r.list {
		line := fmt.Sprintf("- %s: %s (%s)\n", markdown.Code(item.rule), markdown.Text(item.title), show.Plural(item.files, "file"))
		out = append(out, markdown.Piece{Rank: markdown.Loosens, Under: under, What: "part", Forms: []string{line}})
	}
	return out
}
