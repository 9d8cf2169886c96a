package study

import (
	"math"
	"slices"
	"strconv"

	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

// Row is one option as the table has it: all that is kept of it.
type Row struct {
	Index   int
	Figures []float64 // by column; NaN where the option has none
	Counts  engine.Counts
	Verdict engine.Verdict // zero where the ceiling can't be made
	HeldBy  []string       // the rules that hold it
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
	if o.Sheet == nil {
		r.Key, r.Reason = o.Fault.Key, o.Fault.Text
		return r
	}
	r.Counts, r.Verdict = o.Sheet.Counts, o.Sheet.Verdict
	r.Loosened = o.Sheet.Loosened
	for _, f := range o.Sheet.Findings {
		if f.Severity == engine.Hold && f.Accepted == nil && !slices.Contains(r.HeldBy, f.Rule.ID) {
			r.HeldBy = append(r.HeldBy, f.Rule.ID)
		}
	}
	r.Figures = make([]float64, len(s.Columns))
	for i, c := range s.Columns {
		r.Figures[i] = rounded(c.Of(o.Sheet))
	}
	return r
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
