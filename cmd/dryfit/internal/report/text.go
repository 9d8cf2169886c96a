package report

import (
	"bufio"
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/fatih/color"
	"github.com/rivo/uniseg"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/rules/review"
	"dryfit/spec"
)

// The layout is a schedule's: a column for the severity, then the matter.
const (
	textWidth = 80
	margin    = 8  // the severity's column
	label     = 13 // the column of "passes with" and "basis"
	wideLabel = 26 // the column of rules and keys
)

// Text writes the report for people, 80 columns wide, in colour where asked. Its
// lines of verdict may be longer: a program that looks for one finds it whole.
func Text(w io.Writer, r Report, colour bool) error {
	t := &texter{out: bufio.NewWriter(w), colour: colour}
	files := 0
	for _, run := range r.Runs {
		for _, s := range run.Sheets {
			t.sheet(s, r)
			files++
		}
	}
	if files > 1 || len(r.Runs) > 1 {
		t.summary(r)
	}
	return t.out.Flush()
}

type texter struct {
	out    *bufio.Writer
	colour bool
}

// line writes a line that is no verdict, and does not begin like one.
func (t *texter) line(s string) { t.verdict(noVerdict(s)) }

// verdict writes a line that may begin with a verdict.
func (t *texter) verdict(s string) {
	t.out.WriteString(noCommand(strings.TrimRight(s, " ")))
	t.out.WriteByte('\n')
}

// noCommand keeps a line from being one that a workflow's log obeys: those begin
// with two colons, after blanks or not, or with two hashes and a bracket.
func noCommand(s string) string {
	text := strings.TrimLeft(s, " ")
	indent := s[:len(s)-len(text)]
	switch {
	case strings.HasPrefix(text, "::"):
		return indent + `\x3a` + text[1:]
	case strings.HasPrefix(text, "##["):
		return indent + `\x23` + text[1:]
	default:
		return s
	}
}

func (t *texter) rule(stroke string) { t.line(strings.Repeat(stroke, textWidth)) }

func (t *texter) sheet(s *review.Sheet, r Report) {
	t.heading(s, r)
	for _, p := range s.Problems {
		t.problem(p, faultsAre(s))
	}
	for _, f := range s.Findings {
		t.finding(f)
	}
	t.notChecked(s.NotChecked)
	t.assumed(s.Assumed)
	t.loosened(s.Loosened)
	t.awaited(s.Awaited)
	if len(s.Findings) > 0 {
		t.paragraph("caution", "", Caution)
	}
	t.rule("─")
	t.verdict(t.paint(s.Verdict, s.Verdict.String()) + ": " + s.Counts.String())
	t.line("")
}

func (t *texter) heading(s *review.Sheet, r Report) {
	t.line(Shown(s.Path))
	if p := s.Project; p != nil {
		for _, l := range wrap(title(p.Title.Get(), p.Sheet.Get(), p.Revision.Get()), textWidth) {
			t.line(l)
		}
	}
	to := "the " + s.Standards.Name
	if len(s.Standards.Files) > 0 {
		to = s.Standards.Name + " (" + strings.Join(s.Standards.Files, ", ") + ")"
	}
	if r.Against != "" {
		to += ", against the findings at " + r.Against
	}
	for _, l := range wrap(Shown("checked on "+r.On+" to "+to), textWidth) {
		t.line(l)
	}
	t.rule("─")
}

// entry is the first line of a finding: severity, rule, place, and what it is to
// the baseline, where there is one.
func (t *texter) entry(s engine.Severity, rule string, at spec.Position, b engine.Baseline) {
	place := fmt.Sprintf("line %d, column %d", at.Line, at.Column)
	if b != 0 {
		place += ", " + b.String()
	}
	t.line(t.paint(s, pad(s.String(), margin)) + pad(rule, wideLabel) + place)
}

func (t *texter) problem(p spec.Problem, b engine.Baseline) {
	t.entry(problemSeverity, p.Rule, p.Position, b)
	text := p.Message
	if p.Key != "" && !strings.HasPrefix(text, p.Key) {
		text = p.Key + ": " + text
	}
	t.paragraph("", "", sentence(Shown(text)))
	t.line("")
}

func (t *texter) finding(f engine.Finding) {
	t.entry(f.Severity, f.Rule.ID, f.Start, f.Baseline)
	t.paragraph("", "", Shown(f.At+": "+sentence(f.Text)))
	if f.Passes != nil {
		t.paragraph("", "passes with", Shown(f.Passes.Key+" = "+Written(f.Passes.Value)))
	}
	t.paragraph("", "basis", Shown(basis(f)))
	if a := f.Accepted; a != nil {
		t.paragraph("", "accepted", Shown(fmt.Sprintf("%s, by %s, until %s", a.Reason, a.By, a.Until)))
	}
	t.line("")
}

// basis is what a finding rests on: the limit with its source where there is
// one, else the rule's own basis.
func basis(f engine.Finding) string {
	if f.Bound.Name != "" {
		return f.Bound.Name + ": " + f.Bound.Source
	}
	return f.Rule.Basis.Source.String()
}

// Written is a value as a spec writes it.
func Written(v any) string {
	switch v := v.(type) {
	case string:
		if strings.Contains(v, `"`) && !strings.Contains(v, "'") {
			return "'" + v + "'"
		}
		return strconv.Quote(v)
	case map[string]any:
		var pairs []string
		for _, key := range slices.Sorted(maps.Keys(v)) {
			pairs = append(pairs, key+" = "+Written(v[key]))
		}
		return "{ " + strings.Join(pairs, ", ") + " }"
	case []any:
		var elements []string
		for _, e := range v {
			elements = append(elements, Written(e))
		}
		return "[" + strings.Join(elements, ", ") + "]"
	default:
		return fmt.Sprint(v)
	}
}

// notChecked lists the missing keys, each with the rules that need it, then the
// rules that have another reason.
func (t *texter) notChecked(list []engine.NotChecked) {
	if len(list) == 0 {
		return
	}
	t.line("not checked")
	var keys []string
	neededBy := map[string][]string{}
	for _, n := range list {
		if n.Why != "" {
			continue
		}
		if neededBy[n.Key] == nil {
			keys = append(keys, n.Key)
		}
		neededBy[n.Key] = append(neededBy[n.Key], n.Rule.ID)
	}
	for _, key := range keys {
		t.paragraph("", pad(key, wideLabel), Safe("needed by "+strings.Join(neededBy[key], ", ")))
	}
	for _, l := range lacking(list) {
		switch {
		case l.why == "":
		case len(l.rules) == 1:
			t.paragraph("", pad(l.rules[0], wideLabel), Shown(l.said()))
		default:
			t.paragraph("", "", Shown(l.said())+": "+strings.Join(l.rules, ", "))
		}
	}
	t.line("")
}

func (t *texter) assumed(list []standards.Assumed) {
	if len(list) == 0 {
		return
	}
	t.line("assumed")
	for _, a := range list {
		t.paragraph("", pad(a.Key, wideLabel), Shown(Written(a.Value)+", "+AssumedFrom(a)))
	}
	t.line("")
}

// loosened lists the limits that the standards loosen and that were used: a
// change of the standards could let anything pass.
func (t *texter) loosened(list []engine.Loosened) {
	if len(list) == 0 {
		return
	}
	t.line("loosened by the standards")
	for _, l := range list {
		t.paragraph("", pad(l.Name, wideLabel), Shown(fmt.Sprintf("%s, built in is %s; %s:%d: %s",
			l.Used, l.BuiltIn, l.Origin.File, l.Origin.Line, l.Source)))
	}
	t.line("")
}

// awaited lists the absent keys that would let most rules be checked.
func (t *texter) awaited(list []review.Awaited) {
	if len(list) == 0 {
		return
	}
	t.line("give first")
	for _, a := range list {
		t.paragraph("", pad(a.Key, wideLabel), waiting(a))
	}
	t.line("")
}

// AssumedFrom names the standards that gave an assumed figure.
func AssumedFrom(a standards.Assumed) string {
	if a.Origin.BuiltIn() {
		return "built in: " + a.Source
	}
	return fmt.Sprintf("%s:%d", a.Origin.File, a.Origin.Line)
}

// paragraph writes text in the third column, its first line after a mark in
// the first and a label in the second.
func (t *texter) paragraph(mark, name, text string) {
	lead := pad(mark, margin)
	if name != "" {
		lead += pad(name, label)
	}
	indent := uniseg.StringWidth(lead)
	for i, l := range wrap(text, textWidth-indent) {
		if i > 0 {
			lead = strings.Repeat(" ", indent)
		}
		t.line(lead + l)
	}
}

// paint colours a severity or a verdict.
func (t *texter) paint(what any, text string) string {
	attribute := color.FgGreen
	switch what {
	case engine.Hold, engine.Failed, engine.CouldNotCheck:
		attribute = color.FgRed
	case engine.Query, engine.PassedWithNotes:
		attribute = color.FgYellow
	case engine.Refer:
		attribute = color.FgMagenta
	case engine.Note:
		attribute = color.FgCyan
	}
	c := color.New(attribute, color.Bold)
	if t.colour {
		c.EnableColor()
	} else {
		c.DisableColor()
	}
	return c.Sprint(text)
}
