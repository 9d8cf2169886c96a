package options

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"

	"dryfit/rules/design/study"
	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
)

// Each hands on the options of the part, in order, and then what the standards
// loosen in any of them. A part that is not whole is an error.
func (p *StudyPart) Each(columns []study.Column, row func(study.Row) error) ([]engine.Loosened, error) {
	next := p.First
	for {
		var line struct {
			jsonOption
			Outcome *jsonOutcome `json:"outcome"`
		}
		switch err := p.lines.Decode(&line); {
		case errors.Is(err, io.EOF):
			return nil, errors.New("it has no last line: the study was cut off")
		case err != nil:
			return nil, fmt.Errorf("after option %d: %w", next-1, err)
		case line.Outcome != nil && next <= p.Last:
			return nil, fmt.Errorf("it ends before option %d: the study was interrupted, or written with --only pass", next)
		case line.Outcome != nil:
			return line.Outcome.loosened(), nil
		case line.Option != next:
			return nil, fmt.Errorf("it has option %d where option %d is expected", line.Option, next)
		}
		r, err := line.row(columns)
		if err != nil {
			return nil, fmt.Errorf("option %d: %w", next, err)
		}
		if err := row(r); err != nil {
			return nil, err
		}
		next++
	}
}

// row is the option as a study has it.
func (o jsonOption) row(columns []study.Column) (study.Row, error) {
	r := study.Row{Index: o.Option, HeldBy: o.HeldBy, QueriedBy: o.QueriedBy, Key: o.Key, Reason: o.Reason}
	if o.Counts == nil {
		if !r.Made() {
			return r, nil
		}
		return r, errors.New("it has neither counts nor a reason")
	}
	c := o.Counts
	r.Counts = engine.Counts{
		Held: c.Held, Queried: c.Queried, Noted: c.Noted, Referred: c.Referred, Accepted: c.Accepted, NotChecked: c.NotChecked,
		Uncomputed: c.Uncomputed, Assumed: c.Assumed, Unreadable: c.Unreadable, Families: engine.FamiliesNamed(c.Families),
	}
	all := []engine.Verdict{engine.Passed, engine.PassedWithNotes, engine.Failed, engine.CouldNotCheck}
	i := slices.IndexFunc(all, func(v engine.Verdict) bool { return v.String() == o.Verdict })
	if i < 0 {
		return r, fmt.Errorf("there is no verdict %q", o.Verdict)
	}
	r.Verdict = all[i]
	for _, c := range columns {
		x := math.NaN()
		if n, given := o.Figures[c.Key].(json.Number); given {
			var err error
			if x, err = n.Float64(); err != nil {
				return r, err
			}
		}
		r.Figures = append(r.Figures, x)
	}
	return r, nil
}

// loosened is what the standards loosened in any option of a part.
func (o jsonOutcome) loosened() (out []engine.Loosened) {
	for _, l := range o.Loosened {
		out = append(out, engine.Loosened{
			Name: l.Name, Used: l.Used, BuiltIn: l.BuiltIn, Source: l.Source, Origin: standards.Origin{File: l.File, Line: l.Line},
		})
	}
	return out
}
