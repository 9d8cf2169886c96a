// Package rulebook writes what the rules and the standards say by themselves, without
// a spec: the list of rules, all that there is to know of one, and everything in
// force.
package rulebook

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/engine"
	"dryfit/spec"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// Catalogue lists every rule with its title, by family.
func Catalogue(w io.Writer, families []engine.Family) error {
	t := show.NewTexter(w, false)
	for i, f := range families {
		if i > 0 {
			t.Line("")
		}
		t.Line(f.Title)
		for _, r := range f.Rules {
			t.Paragraph("", show.Pad(r.ID, show.WideLabel), r.Title)
		}
	}
	return t.Flush()
}

// Basis writes all that there is to know of one rule, with the keys that it
// reads.
func Basis(w io.Writer, f engine.Family, r *engine.Rule, reads record.Set) error {
	cases, err := f.CasesOf(r)
	if err != nil {
		return err
	}
	t := show.NewTexter(w, false)
	t.Line(r.ID)
	t.Rule("─")
	entryOf(t, "checks", "that "+r.Title)
	entryOf(t, "why", r.Why)
	entryOf(t, "severity", Severity(r))
	if r.Basis.Formula != "" {
		entryOf(t, "formula", r.Basis.Formula)
		for _, s := range r.Basis.Symbols {
			entryOf(t, "", s.Name+": "+s.Means+" ("+s.Unit+")")
		}
	}
	if r.Basis.Valid != "" {
		entryOf(t, "valid", r.Basis.Valid)
	}
	entryOf(t, "basis", r.Basis.Source.String())
	entryOf(t, "needs", Keys(r.Needs))
	entryOf(t, "reads", Keys(Leaves(reads)))
	for _, l := range r.Limits {
		entryOf(t, "limit", r.Full(l.Key)+": "+Limit(l))
	}
	for _, c := range cases {
		t.Line("")
		t.Line(caseTitle(c))
		for _, line := range strings.Split(strings.TrimRight(c.Text, "\n"), "\n") {
			t.Line("    " + line)
		}
	}
	return t.Flush()
}

// entryOf writes one line of a list with a name before it.
func entryOf(t *show.Texter, name, text string) {
	const column = 10
	lead := show.Pad(name, column)
	for _, l := range show.Wrap(text, show.TextWidth-column) {
		t.Line(lead + l)
		lead = strings.Repeat(" ", column)
	}
}

// Severity is the severity of a rule, and to whom it refers.
func Severity(r *engine.Rule) string {
	if r.Severity == engine.Refer {
		return "refer, to the " + r.RefersTo + "; can't be accepted or switched off"
	}
	return "at most " + r.Severity.String()
}

// Limit is a limit as it is built in: its title, its sense, its value in metric
// units and its source.
func Limit(l engine.Limit) string {
	sense := "at least "
	if l.Sense == engine.AtMost {
		sense = "at most "
	}
	if math.IsNaN(l.Value.SI) {
		return l.Title + ", where the standards give one"
	}
	return fmt.Sprintf("%s, %s%s; %s", l.Title, sense, quantity.Metric.Limit(l.Value), l.Source)
}

func caseTitle(c engine.Case) string {
	if c.Fails() {
		return "reports"
	}
	return "passes"
}

// Leaves are the keys of a set that are no tables of others in it.
func Leaves(set record.Set) []string {
	names := spec.Names(set)
	return slices.DeleteFunc(names, func(key string) bool {
		return slices.ContainsFunc(names, func(other string) bool { return strings.HasPrefix(other, key+".") })
	})
}

// Keys are keys in a row, or the words for none.
func Keys(keys []string) string {
	if len(keys) == 0 {
		return "only keys that every spec has"
	}
	return strings.Join(keys, ", ")
}
