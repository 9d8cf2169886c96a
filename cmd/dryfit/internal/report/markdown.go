package report

import (
	"fmt"
	"io"
	"strings"

	"dryfit/rules"
	"dryfit/rules/review"
)

// markdownLimit is how many characters a comment may have on the forges, less
// what the end of the page takes.
const markdownLimit = 65536 - 2048

// Markdown writes a comment for a pull request, or the summary of a job: the
// verdict, the files, then each file's findings, the worst first. What a comment
// has no room for is left out by whole files, and counted.
func Markdown(w io.Writer, r Report) error {
	var b strings.Builder
	files := 0
	for _, run := range r.Runs {
		files += len(run.Sheets)
	}
	fmt.Fprintf(&b, "## dryfit: %s\n\n", r.Verdict())
	fmt.Fprintf(&b, "%s, judged on %s%s%s.\n\n", plural(files, "file"), r.On, map[bool]string{true: ", strictly"}[r.Strict], markdownAgainst(r))
	b.WriteString("| file | to | verdict | |\n| --- | --- | --- | --- |\n")
	left := 0
	add := func(text string) {
		if b.Len()+len(text) > markdownLimit {
			left++
			return
		}
		b.WriteString(text)
	}
	for _, run := range r.Runs {
		for _, s := range run.Sheets {
			add(fmt.Sprintf("| %s | %s | **%s** | %s |\n", cell(s.Path), markdownText(s.Standards.Name), s.Verdict, s.Counts))
		}
	}
	for _, run := range r.Runs {
		for _, s := range run.Sheets {
			add(markdownSheet(s))
		}
	}
	if left > 0 {
		fmt.Fprintf(&b, "\n%s left out, for which a comment has no room.\n", plural(left, "part"))
	}
	b.WriteString(markdownReferred(r))
	fmt.Fprintf(&b, "\n> %s\n", Caution)
	_, err := io.WriteString(w, b.String())
	return err
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
	return fmt.Sprintf(", against the findings at %s: %d %s, %d %s", code(r.Against), fresh, rules.New, before, rules.AlreadyThere)
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// markdownOrder is that of a file's findings: what fails first.
var markdownOrder = []rules.Severity{rules.Hold, rules.Query, rules.Note}

func markdownSheet(s *review.Sheet) string {
	var b strings.Builder
	heading := s.Path
	if s.Project != nil {
		heading = s.Project.Title.Get()
	}
	fmt.Fprintf(&b, "\n### %s\n\n%s: **%s**, %s\n", markdownText(heading), code(s.Path), s.Verdict, s.Counts)
	all := entries(s)
	for _, severity := range markdownOrder {
		first := true
		for _, e := range all {
			if e.severity != severity || e.accepted != "" {
				continue
			}
			if first {
				fmt.Fprintf(&b, "\n**%s**\n\n", severity)
				first = false
			}
			b.WriteString(markdownEntry(e))
		}
	}
	b.WriteString(markdownLoosened(s))
	b.WriteString(markdownAccepted(all))
	b.WriteString(markdownAwaited(s))
	b.WriteString(markdownRest(s))
	return b.String()
}

func markdownAwaited(s *review.Sheet) string {
	var b strings.Builder
	for _, a := range s.Awaited {
		fmt.Fprintf(&b, "- %s: %s\n", code(a.Key), waiting(a))
	}
	if b.Len() == 0 {
		return ""
	}
	return "\n**give first**\n\n" + b.String()
}

func markdownEntry(e entry) string {
	line := fmt.Sprintf("- line %d%s, %s: %s", e.start.Line, e.since(), code(e.rule), markdownText(e.said()))
	if e.passes != "" {
		line += " Passes with " + code(e.passes) + "."
	}
	if e.basis != "" {
		line += " *" + markdownText(e.basis) + "*"
	}
	return line + "\n"
}

func markdownAccepted(all []entry) string {
	var b strings.Builder
	for _, e := range all {
		if e.accepted != "" {
			fmt.Fprintf(&b, "- line %d, %s, %s: %s Accepted: %s.\n", e.start.Line, e.severity, code(e.rule), markdownText(e.said()), markdownText(e.accepted))
		}
	}
	if b.Len() == 0 {
		return ""
	}
	return "\n**accepted**\n\n" + b.String()
}

// markdownLoosened lists what the standards loosen, and is never folded away.
func markdownLoosened(s *review.Sheet) string {
	var b strings.Builder
	for _, l := range s.Loosened {
		fmt.Fprintf(&b, "- %s is %s, built in is %s; %s\n", code(l.Name), markdownText(l.Used), markdownText(l.BuiltIn), markdownText(fmt.Sprintf("%s:%d: %s", l.Origin.File, l.Origin.Line, l.Source)))
	}
	if b.Len() == 0 {
		return ""
	}
	return "\n**loosened by the standards**\n\n" + b.String()
}

// markdownRest folds away what was not checked and assumed.
func markdownRest(s *review.Sheet) string {
	var b strings.Builder
	for _, l := range lacking(s.NotChecked) {
		var ids []string
		for _, id := range l.rules {
			ids = append(ids, code(id))
		}
		fmt.Fprintf(&b, "- not checked: %s: %s\n", strings.Join(ids, ", "), markdownText(l.said()))
	}
	for _, a := range s.Assumed {
		fmt.Fprintf(&b, "- assumed: %s, %s\n", code(a.Key+" = "+Written(a.Value)), markdownText(AssumedFrom(a)))
	}
	if b.Len() == 0 {
		return ""
	}
	return "\n<details><summary>not checked, assumed</summary>\n\n" + b.String() + "\n</details>\n"
}

// markdownReferred lists what is referred, once for all files.
func markdownReferred(r Report) string {
	var b strings.Builder
	for _, item := range r.referred() {
		fmt.Fprintf(&b, "- %s: %s (%s)\n", code(item.rule), markdownText(item.title), plural(item.files, "file"))
	}
	if b.Len() == 0 {
		return ""
	}
	return "\n### Referred: not this tool's to decide\n\n" + b.String()
}

// code is text in a code span: no markup is read in it, and it can't be left,
// whatever backticks it has.
func code(s string) string {
	s = Safe(s)
	fence := "`"
	for strings.Contains(s, fence) {
		fence += "`"
	}
	if strings.HasPrefix(s, "`") || strings.HasSuffix(s, "`") || strings.TrimSpace(s) == "" {
		s = " " + s + " "
	}
	return fence + s + fence
}

// cell is a code span in a table, where a bare stroke would end the cell.
func cell(s string) string { return strings.ReplaceAll(code(s), "|", "\\|") }

// markdownText is text within a line in which no character is markup: what
// could be is escaped, and an address, a name with an at sign and a number with
// a hash are no links.
func markdownText(s string) string {
	var b strings.Builder
	runes := []rune(Safe(s))
	for i, r := range runes {
		last := i == len(runes)-1
		switch {
		case r == '<', r == '>', r == '&', r == '@', r == ':' && !last && runes[i+1] != ' ',
			r == '.' && i >= 3 && strings.EqualFold(string(runes[i-3:i]), "www"):
			fmt.Fprintf(&b, "&#%d;", r)
		case strings.ContainsRune("\\`*_{}[]#|~$^", r):
			b.WriteRune('\\')
			b.WriteRune(r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
