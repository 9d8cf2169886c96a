package study

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

// Row is one option as the table has it: all that is kept of it.
type Row struct {
	Index   int
	Figures []float64 // by column; NaN where the option has none
	Counts  engine.Counts
	Verdict engine.Verdict // zero where the ceiling can't be made
	// HeldBy and QueriedBy are the rules that hold it, and that only query it.
	HeldBy, QueriedBy []string
	// Loosened is what the standards loosen and its check has used.
	Loosened []engine.Loosened
	// Key and Reason say why it can't.
	Key, Reason string
}

// Made reports whether the ceiling can be made at all, and so was checked.
func (r Row) Made() bool { return r.Reason == "" }

// Stands reports whether an option takes part in the weighing: it does not
// fail.
func (r Row) Stands() bool { return r.Made() && r.Verdict < engine.Failed }

// digits is how many significant digits of a figure are kept: what differs
// past them is rounding, and would make two equal options beat each other.
const digits = 6

// Row is what the table keeps of an option.
func (s *Study) Row(o Option) Row {
	r := Row{Index: o.Index}
	if o.Assessment == nil {
		r.Key, r.Reason = o.Fault.Key, o.Fault.Text
		return r
	}
	r.Counts, r.Verdict = o.Assessment.Counts, o.Assessment.Verdict
	r.Loosened = o.Assessment.Loosened
	r.HeldBy = by(o.Assessment.Findings, engine.Hold, nil)
	r.QueriedBy = by(o.Assessment.Findings, engine.Query, r.HeldBy)
	figures := s.figures(o.Assessment, o.like)
	s.keepPattern(o, figures)
	for _, f := range figures {
		r.Figures = append(r.Figures, f.is)
	}
	return r
}

// by is the rules that find something of a severity which is not accepted, but for
// those that are named already.
func by(findings []engine.Finding, severity engine.Severity, but []string) (out []string) {
	for _, f := range findings {
		if f.Severity == severity && f.Accepted == nil && !slices.Contains(out, f.Rule.ID) && !slices.Contains(but, f.Rule.ID) {
			out = append(out, f.Rule.ID)
		}
	}
	return out
}

// Found names the rules that hold an option, then those that only query it, with how
// many queries there are: "close.cover; +2 queries: grid.module-ratio, strap.setting".
// It is empty where there are none.
func (r Row) Found() string {
	out := strings.Join(r.HeldBy, ", ")
	if len(r.QueriedBy) == 0 {
		return out
	}
	queries := "1 query"
	if n := r.Counts.Queried; n != 1 {
		queries = fmt.Sprintf("%d queries", n)
	}
	if out != "" {
		queries = "; +" + queries
	}
	return out + queries + ": " + strings.Join(r.QueriedBy, ", ")
}

func rounded(x float64) float64 {
	if math.IsNaN(x) || math.IsInf(x, 0) || x == 0 {
		return x
	}
	out, err := strconv.ParseFloat(strconv.FormatFloat(quantity.Steady(x), 'g', digits, 64), 64)
	if err != nil {
		return x
	}
	return out
}

// Listed is up to how many options all rows are kept, so that they can be
// sorted, marked, and said what they lose. Of more, only the unbeaten are.
const Listed = 10_000
