package report

import (
	"cmp"
	"fmt"
	"io"
	"strings"

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
type remedyText struct{ reportText }

// RemedyText writes a remedy for people.
func RemedyText(w io.Writer, r Remedy) error {
	t := remedyText{newReportText(w, false)}
	t.heading(r.Result.Sheet, Report{On: r.On})
	t.loosened(r.Result.Sheet.Loosened)
	if r.Each != nil {
		t.each(r)
	} else {
		t.answers(r)
	}
	t.paragraph("caution", "", Caution)
	t.rule("─")
	for _, l := range wrap(summary(r), textWidth) {
		t.line(l)
	}
	return t.flush()
}

func (t remedyText) answers(r Remedy) {
	for _, f := range r.Result.Open {
		t.entry(f.Severity, f.Rule.ID, f.Start, 0)
		t.paragraph("", "", Shown(f.At+": "+sentence(f.Text)))
		t.line("")
	}
	units := r.Result.Sheet.Ceiling.Units
	for i, a := range r.Result.Answers {
		t.line(fmt.Sprintf("answer %d", i+1))
		for _, c := range a.Changes {
			t.change(c)
		}
		t.effect(a.Effect, units, true)
		t.paragraph("", "then", a.Sheet.Verdict.String()+": "+a.Sheet.Counts.String())
		t.line("")
	}
	t.rulesOf("alone", "Nothing that may change satisfies these:", r.Result.Alone)
	t.rulesOf("against", "What may change can't satisfy these together; without any one of them the others can be, as far as the search reached:", r.Result.Against)
	if len(r.Result.Tied) > 0 {
		t.paragraph("tied", "", "What stands hangs on keys that may not change: "+Shown(strings.Join(r.Result.Tied, ", "))+".")
		t.line("")
	}
	if len(r.Result.Needed) > 0 {
		t.paragraph("needed", "", "With these, which may not change, there would be an answer; name them with --may-change to let them:")
		for _, c := range r.Result.Needed {
			t.change(c)
		}
		t.line("")
	}
}

func (t remedyText) rulesOf(mark, says string, list []*engine.Rule) {
	if len(list) == 0 {
		return
	}
	t.paragraph(mark, "", says)
	for _, rule := range list {
		t.paragraph("", pad(rule.ID, wideLabel), rule.Title)
	}
	t.line("")
}

func (t remedyText) each(r Remedy) {
	units := r.Result.Sheet.Ceiling.Units
	for _, e := range r.Each {
		f := e.Finding
		t.entry(f.Severity, f.Rule.ID, f.Start, 0)
		t.paragraph("", "", Shown(f.At+": "+sentence(f.Text)))
		shown := worthwhile(e.Cures)
		if len(shown) == 0 {
			t.line("")
			t.paragraph("", "", "No one or two keys that may change clear it and make nothing else worse.")
		}
		for _, c := range shown {
			t.line("")
			for _, change := range c.All() {
				t.change(change)
			}
			t.effect(c.Effect, units, false)
		}
		if more := len(e.Cures) - len(shown); more > 0 {
			t.line("")
			t.paragraph("", "", fmt.Sprintf("%d more, dearer or with other findings made worse; --format json lists all.", more))
		}
		t.line("")
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
	t.paragraph("", pad(c.Key, wideLabel), Shown(was+" to "+short(c.Value)))
}

// short is a value as a spec writes it, lists too.
func short(v any) string {
	list, ok := v.([]any)
	if !ok {
		return Written(v)
	}
	parts := make([]string, len(list))
	for i, x := range list {
		parts[i] = Written(x)
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
			t.paragraph("", name, strings.Join(words, ", "))
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
		t.paragraph("", "brings", Shown(f.Severity.String()+" "+f.Rule.ID+" at "+f.At+": "+sentence(f.Text)))
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
		out = append(out, fmt.Sprintf("%d panels more", e.Panels))
	case e.Panels < 0:
		out = append(out, fmt.Sprintf("%d panels fewer", -e.Panels))
	}
	return out
}

// lightest is the least change of a panel that is worth a word, in kg.
const lightest = 0.05

// summary is the last line: what came of it, and at what cost.
func summary(r Remedy) string {
	res, after := r.Result, " after "+plural(r.Result.Reviews, "review")
	if r.Each != nil {
		return fmt.Sprintf("%d findings to cure, each by itself,%s", len(r.Each), after)
	}
	least := "hold"
	if r.Strict {
		least = "hold or query"
	}
	switch {
	case len(res.Open) == 0:
		return "NOTHING TO CURE: no " + least + " is found"
	case len(res.Answers) == 0 && res.Interrupted:
		return "INTERRUPTED: no answer yet" + after
	case len(res.Answers) == 0 && res.LimitReached:
		return "NO ANSWER within the limit: the search ended" + after
	case len(res.Answers) == 0 && res.Whole:
		return "NO ANSWER: nothing in the range that may change passes," + after
	case len(res.Answers) == 0:
		return "NO ANSWER: nothing that passes was found," + after
	}
	text := cmp.Or(map[bool]string{true: "INTERRUPTED: "}[res.Interrupted], "")
	if n := len(res.Answers); n == 1 {
		text += "1 ANSWER that leaves no "
	} else {
		text += fmt.Sprintf("%d ANSWERS that leave no ", n)
	}
	return text + least + "," + after + "; --write writes the first into the spec, --answer chooses another"
}
