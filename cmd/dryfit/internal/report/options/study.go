// Package options writes the options of a study.
package options

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/study"
	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

// Study is a study that was made, or as much of it as was done.
type Study struct {
	*study.Study
	On          string
	Strict      bool            // a query fails an option
	Search      bool            // a way in was searched for as check does
	Spec        report.Digest   // of the spec's bytes, by its path as it was named
	Standards   []report.Digest // nearest first
	Part        study.Part
	First, Last int // options of the part
	Tally       study.Tally
	Front       *study.Front
	// Rows are those listed, in their order: all of the part, or where those
	// were too many to keep only the unbeaten.
	Rows []study.Row
	All  bool
	// Chosen are the columns of the table, in its order; none for the usual ones.
	Chosen []int
	Only   string // "" or "pass"
}

// Interrupted reports whether some of the part was not done.
func (s Study) Interrupted() bool { return s.Tally.Done < s.Last-s.First+1 }

// cell prints a figure in the units of the spec.
func (s Study) cell(column int, r study.Row) string {
	if !r.Made() || math.IsNaN(r.Figures[column]) {
		return ""
	}
	return s.Units().Format(quantity.Value{SI: r.Figures[column], Unit: s.Columns[column].Unit})
}

// Caption is what stands under a drawn option: its number, and then what is
// varied, what it comes to, and its verdict.
func (s Study) Caption(r study.Row) (title string, lines []string) {
	title = fmt.Sprintf("option %d", r.Index)
	if s.Front.Has(r.Index) {
		title += ", unbeaten"
	}
	var set, figures, rest []string
	for i, v := range s.Values(r.Index) {
		set = append(set, fmt.Sprintf("%s %v", s.Vary[i].Key, v))
	}
	for i, c := range s.Columns {
		text := s.cell(i, r)
		if text == "" {
			continue
		}
		switch {
		case s.Front.AimsAt(i), slices.Contains(s.Chosen, i), len(s.Chosen) == 0 && (c.Key == "ratio" || c.Key == "mass" || c.Key == "strap"):
			figures = append(figures, c.Head+" "+text)
		case len(s.Chosen) == 0 && (c.Key == "joints" || c.Key == "margin" || c.Key == "gap"):
			rest = append(rest, c.Head+" "+text)
		}
	}
	lines = append(lines, show.Safe(strings.Join(set, ", ")))
	for _, l := range []string{strings.Join(figures, ", "), strings.Join(rest, ", ")} {
		if l != "" {
			lines = append(lines, l)
		}
	}
	return title, append(lines, verdict(r), r.Counts.String())
}

// verdict is a row's verdict as it is printed.
func verdict(r study.Row) string {
	if !r.Made() {
		return "CAN'T BE MADE"
	}
	return r.Verdict.String()
}

// made are the rows of ceilings that can be made.
func (s Study) made() []study.Row {
	var out []study.Row
	for _, r := range s.Rows {
		if r.Made() {
			out = append(out, r)
		}
	}
	return out
}

// shown are the columns of the table.
func (s Study) shown() (out []int) {
	if len(s.Chosen) > 0 {
		return s.Chosen
	}
	for i, c := range s.Columns {
		if !c.Aside() || s.Front.AimsAt(i) {
			out = append(out, i)
		}
	}
	return out
}

// shared tells the columns that are the same in all rows of the table, as they
// print, from those that differ.
func (s Study) shared() (same, differ []int) {
	rows := s.made()
	for _, i := range s.shown() {
		alike := len(rows) > 1
		for _, r := range rows {
			alike = alike && s.cell(i, r) == s.cell(i, rows[0])
		}
		if alike {
			same = append(same, i)
		} else {
			differ = append(differ, i)
		}
	}
	return same, differ
}

// sameInAll says what does not differ, and what no option has a figure of.
func (s Study) sameInAll(same []int) []string {
	var alike, without []string
	for _, i := range same {
		if text := s.cell(i, s.made()[0]); text != "" {
			alike = append(alike, s.Columns[i].Name+" "+text)
		} else {
			without = append(without, s.Columns[i].Name)
		}
	}
	var out []string
	if len(alike) > 0 {
		out = append(out, "the same in all options: "+strings.Join(alike, ", "))
	}
	if len(without) > 0 {
		out = append(out, "not computed for any option: "+strings.Join(without, ", "))
	}
	return out
}

// varied says what is varied, a line a key.
func (s Study) varied() []string {
	var out []string
	for i, d := range s.Vary {
		key := d.Key
		if d.Linked {
			key += ", with " + s.Vary[i-1].Key
		}
		out = append(out, fmt.Sprintf("%s: %s", key, values(d.Values)))
	}
	return out
}

// shownValues is how many values of a key are listed in full.
const shownValues = 12

func values(list []any) string {
	var words []string
	for i, v := range list {
		if i == shownValues && len(list) > shownValues+1 {
			return fmt.Sprintf("%s … %v, %d values", strings.Join(words, ", "), list[len(list)-1], len(list))
		}
		words = append(words, fmt.Sprint(v))
	}
	return strings.Join(words, ", ")
}

// outcome is the line that ends a study.
func (s Study) outcome() string {
	what := fmt.Sprintf("%s checked", options(s.Tally.Done))
	if s.Interrupted() {
		what = fmt.Sprintf("INTERRUPTED after %d of %s", s.Tally.Done, options(s.Last-s.First+1))
	}
	if s.Part.Of > 1 {
		what += fmt.Sprintf(", part %d of %d of a study with %d", s.Part.Number, s.Part.Of, s.Total)
	}
	var parts []string
	for _, v := range []engine.Verdict{engine.Passed, engine.PassedWithNotes, engine.Failed} {
		if n := s.Tally.Verdicts[v]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, v))
		}
	}
	if s.Tally.Invalid > 0 {
		parts = append(parts, fmt.Sprintf("%d can't be made", s.Tally.Invalid))
	}
	if len(parts) == 0 {
		return what
	}
	return what + ": " + strings.Join(parts, ", ")
}

func options(n int) string {
	if n == 1 {
		return "1 option"
	}
	return fmt.Sprintf("%d options", n)
}

// unbeaten says which options no other beats, and in what.
func (s Study) unbeaten() string {
	var names, members []string
	for _, a := range s.Front.Aims {
		if s.Front.Seen(a.Column) {
			names = append(names, a.Name)
		}
	}
	in := strings.Join(names, ", ")
	switch {
	case s.Front.Full:
		return fmt.Sprintf("more than %d options are unbeaten in %s: weigh fewer figures", study.MostUnbeaten, in)
	case len(s.Front.Members) == 0:
		return "no option is unbeaten: none passes"
	}
	for i, m := range s.Front.Members {
		if i == shownValues && len(s.Front.Members) > shownValues+1 {
			members = append(members, fmt.Sprintf("… and %d more", len(s.Front.Members)-i))
			break
		}
		members = append(members, fmt.Sprint(m.Index))
	}
	which := "options "
	if len(members) == 1 {
		which = "option "
	}
	return fmt.Sprintf("unbeaten in %s: %s%s. No other option that passes is at least as good in all of these figures and better in one",
		in, which, strings.Join(members, ", "))
}

// whyNot is one line of what can't be made.
func whyNot(r study.Reason) string {
	if r.Count == 1 {
		return fmt.Sprintf("option %d, at %s: %s", r.First, r.Key, r.Text)
	}
	return fmt.Sprintf("%s, at %s; of the first, option %d: %s", options(r.Count), r.Key, r.First, r.Text)
}

// abridged says which options are listed, where not all are; else it is empty.
func (s Study) abridged() string {
	switch {
	case !s.All:
		return fmt.Sprintf("over %d options: only the unbeaten are listed; csv and jsonl list all", study.Listed)
	case s.Only == "pass":
		return "only options that pass are listed"
	default:
		return ""
	}
}

// Beside is what there is to say of a study beside a table that has no room
// for it.
func (s Study) Beside() []string {
	out := append(s.varied(), s.Says...)
	for i, r := range s.Tally.Reasons {
		if i == shownReasons {
			break
		}
		out = append(out, "can't be made: "+whyNot(r))
	}
	out = append(out, s.unbeaten(), s.outcome())
	for i := range out {
		out[i] = show.Safe(out[i])
	}
	return out
}
