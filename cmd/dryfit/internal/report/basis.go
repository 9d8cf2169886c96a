package report

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
	t := NewReportText(w, false)
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
	t := NewReportText(w, false)
	t.Line(r.ID)
	t.Rule("─")
	t.entryOf("checks", "that "+r.Title)
	t.entryOf("why", r.Why)
	t.entryOf("severity", severityText(r))
	if r.Basis.Formula != "" {
		t.entryOf("formula", r.Basis.Formula)
		for _, s := range r.Basis.Symbols {
			t.entryOf("", s.Name+": "+s.Means+" ("+s.Unit+")")
		}
	}
	if r.Basis.Valid != "" {
		t.entryOf("valid", r.Basis.Valid)
	}
	t.entryOf("basis", r.Basis.Source.String())
	t.entryOf("needs", orNone(r.Needs))
	t.entryOf("reads", orNone(leaves(reads)))
	for _, l := range r.Limits {
		t.entryOf("limit", r.Full(l.Key)+": "+limitText(l))
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
func (t ReportText) entryOf(name, text string) {
	const column = 10
	lead := show.Pad(name, column)
	for _, l := range show.Wrap(text, show.TextWidth-column) {
		t.Line(lead + l)
		lead = strings.Repeat(" ", column)
	}
}

func severityText(r *engine.Rule) string {
	if r.Severity == engine.Refer {
		return "refer, to the " + r.RefersTo + "; can't be accepted or switched off"
	}
	return "at most " + r.Severity.String()
}

func limitText(l engine.Limit) string {
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
		return "finds fault with"
	}
	return "passes"
}

// leaves are the keys of a set that are no tables of others in it.
func leaves(set record.Set) []string {
	names := spec.Names(set)
	return slices.DeleteFunc(names, func(key string) bool {
		return slices.ContainsFunc(names, func(other string) bool { return strings.HasPrefix(other, key+".") })
	})
}

func orNone(keys []string) string {
	if len(keys) == 0 {
		return "nothing more than every spec has"
	}
	return strings.Join(keys, ", ")
}
