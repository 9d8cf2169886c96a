package change

import (
	"cmp"
	"fmt"
	"io"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/remedy"
	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

// Remedy is what a search for a remedy found.
type Remedy struct {
	Version, On string
	Strict      bool
	Result      remedy.Result
	// Each is the cures of each finding by itself, where those were asked for
	// in place of answers to all.
	Each []Cured
}

// Cured is a finding with the values that clear it.
type Cured struct {
	Finding engine.Finding
	Cures   []remedy.Cure
}

// listed is how many entries of one kind a line names before it counts them.
const listed = 6

// remedyText writes remedies.
type remedyText struct{ report.ReportText }

// RemedyText writes a remedy for people.
func RemedyText(w io.Writer, r Remedy) error {
	t := remedyText{report.NewReportText(w, false)}
	t.Heading(r.Result.Assessment, report.Report{On: r.On})
	t.Loosened(r.Result.Assessment.Loosened)
	if r.Each != nil {
		t.each(r)
	} else {
		t.answers(r)
	}
	t.Paragraph("caution", "", show.Caution)
	t.Rule("─")
	for _, l := range show.Wrap(summary(r), show.TextWidth) {
		t.Line(l)
	}
	return t.Flush()
}

func (t remedyText) answers(r Remedy) {
	for _, f := range r.Result.Open {
		t.Entry(f.Severity, f.Rule.ID, report.Place(f), 0)
		t.Paragraph("", "", show.Shown(f.At+": "+show.Sentence(f.Text)))
		t.Line("")
	}
	units := r.Result.Assessment.Ceiling.Units
	for i, a := range r.Result.Answers {
		t.Line(fmt.Sprintf("answer %d", i+1))
		for _, c := range a.Changes {
			t.change(c)
		}
		t.effect(a.Effect, units, true)
		t.Paragraph("", "then", a.Assessment.Verdict.String()+": "+a.Assessment.Counts.String())
		t.Line("")
	}
	t.rulesOf("alone", "No change of the permitted keys satisfies these rules:", r.Result.Alone)
	t.rulesOf("against", "No change of the permitted keys satisfies these rules together. Without any one of them the others can be satisfied, as far as the search reached:", r.Result.Against)
	if len(r.Result.Tied) > 0 {
		t.Paragraph("tied", "", "The remaining findings depend on keys that may not change: "+show.Shown(strings.Join(r.Result.Tied, ", "))+".")
		t.Line("")
	}
	if len(r.Result.Needed) > 0 {
		t.Paragraph("needed", "", "With these changes of keys that may not change there would be an answer. Name the keys with --may-change to permit them:")
		for _, c := range r.Result.Needed {
			t.change(c)
		}
		t.Line("")
	}
}

func (t remedyText) rulesOf(mark, says string, list []*engine.Rule) {
	if len(list) == 0 {
		return
	}
	t.Paragraph(mark, "", says)
	for _, rule := range list {
		t.Paragraph("", show.Pad(rule.ID, show.WideLabel), rule.Title)
	}
	t.Line("")
}

func (t remedyText) each(r Remedy) {
	units := r.Result.Assessment.Ceiling.Units
	for _, e := range r.Each {
		f := e.Finding
		t.Entry(f.Severity, f.Rule.ID, report.Place(f), 0)
		t.Paragraph("", "", show.Shown(f.At+": "+show.Sentence(f.Text)))
		shown := worthwhile(e.Cures)
		if len(shown) == 0 {
			t.Line("")
			t.Paragraph("", "", "No permitted change of one or two keys clears it without making another finding worse.")
		}
		for _, c := range shown {
			t.Line("")
			for _, change := range c.All() {
				t.change(change)
			}
			t.effect(c.Effect, units, false)
		}
		if more := len(e.Cures) - len(shown); more > 0 {
			t.Line("")
			t.Paragraph("", "", fmt.Sprintf("%d more, at higher cost or with other findings made worse; --format json lists all.", more))
		}
		t.Line("")
	}
}

// worthwhile are the first few cures that make nothing worse.
func worthwhile(cures []remedy.Cure) []remedy.Cure {
	clean := 0
	for clean < len(cures) && cures[clean].Clean() {
		clean++
	}
	return cures[:min(clean, 4)]
}

func (t remedyText) change(c remedy.Change) {
	was := short(c.Was)
	if c.Assumed {
		was += " (assumed)"
	}
	t.Paragraph("", show.Pad(c.Key, show.WideLabel), show.Shown(was+" to "+short(c.Value)))
}

// short is a value as a spec writes it, lists too.
func short(v any) string {
	list, ok := v.([]any)
	if !ok {
		return show.Written(v)
	}
	parts := make([]string, len(list))
	for i, x := range list {
		parts[i] = show.Written(x)
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

// effect lists what changes bring about, new findings in full where asked.
func (t remedyText) effect(e remedy.Effect, units quantity.System, full bool) {
	row := func(name string, words []string) {
		if len(words) > listed {
			words = append(words[:listed:listed], fmt.Sprintf("%d more", len(words)-listed))
		}
		if len(words) > 0 {
			t.Paragraph("", name, strings.Join(words, ", "))
		}
	}
	var clears, brings, stays []string
	for _, f := range e.Clears {
		clears = append(clears, f.Severity.String()+" "+f.Rule.ID)
	}
	row("clears", clears)
	for _, f := range e.Brings {
		if !full {
			brings = append(brings, f.Severity.String()+" "+f.Rule.ID)
			continue
		}
		t.Paragraph("", "brings", show.Shown(f.Severity.String()+" "+f.Rule.ID+" at "+f.At+": "+show.Sentence(f.Text)))
	}
	row("brings", brings)
	row("weight", weight(e, units))
	for _, r := range e.Stays {
		stays = append(stays, r.ID)
	}
	row("stays clear", stays)
}

// weight says what a panel gains or loses, and how many panels come or go.
func weight(e remedy.Effect, units quantity.System) []string {
	var out []string
	mass := units.Format(quantity.Mass(max(e.Mass, -e.Mass)).Value())
	switch {
	case e.Mass > lightest:
		out = append(out, "each panel "+mass+" heavier")
	case e.Mass < -lightest:
		out = append(out, "each panel "+mass+" lighter")
	}
	switch {
	case e.Panels > 0:
		out = append(out, show.Plural(e.Panels, "more panel"))
	case e.Panels < 0:
		out = append(out, show.Plural(-e.Panels, "fewer panel"))
	}
	return out
}

// lightest is the least change of a panel that is worth a word, in kg.
const lightest = 0.05

// summary is the last line: what came of it, and at what cost.
func summary(r Remedy) string {
	res, after := r.Result, " after "+show.Plural(r.Result.Reviews, "review")
	if r.Each != nil {
		return fmt.Sprintf("%d findings to clear, each by itself,%s", len(r.Each), after)
	}
	least := "hold"
	if r.Strict {
		least = "hold or query"
	}
	switch {
	case len(res.Open) == 0:
		return "NOTHING TO CHANGE: no " + least + " is found"
	case len(res.Answers) == 0 && res.Interrupted:
		return "INTERRUPTED: no answer yet" + after
	case len(res.Answers) == 0 && res.LimitReached:
		return "NO ANSWER within the limit: the search ended" + after
	case len(res.Answers) == 0 && res.Whole:
		return "NO ANSWER: no permitted change passes," + after
	case len(res.Answers) == 0:
		return "NO ANSWER: the search found no change that passes," + after
	}
	text := cmp.Or(map[bool]string{true: "INTERRUPTED: "}[res.Interrupted], "")
	if n := len(res.Answers); n == 1 {
		text += "1 ANSWER that leaves no "
	} else {
		text += fmt.Sprintf("%d ANSWERS that leave no ", n)
	}
	return text + least + "," + after + "; --write writes the first into the spec, --answer chooses another"
}
