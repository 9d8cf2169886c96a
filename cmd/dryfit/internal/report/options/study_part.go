package options

import (
	"bufio"
	"bytes"
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

// StudyPart is a part of a study as its JSONL has it, read line by line.
type StudyPart struct {
	Part        study.Part
	First, Last int
	Total       int

	head  jsonStudyHead
	lines *json.Decoder
}

// ReadStudyPart reads the first line of a part.
func ReadStudyPart(r io.Reader) (*StudyPart, error) {
	p := &StudyPart{Part: study.Whole, lines: json.NewDecoder(bufio.NewReader(r))}
	var line struct {
		Study *jsonStudyLine `json:"study"`
	}
	p.lines.UseNumber() // counts stay counts
	if err := p.lines.Decode(&line); err != nil || line.Study == nil {
		return nil, errors.New("it does not begin as a study of --format jsonl does")
	}
	p.head, p.First, p.Last, p.Total = line.Study.jsonStudyHead, line.Study.First, line.Study.Last, line.Study.Total
	if line.Study.Part == "" {
		return p, nil
	}
	var err error
	p.Part, err = study.ParsePart(line.Study.Part)
	return p, err
}

// Path is that of the spec, as it was named.
func (p *StudyPart) Path() string { return p.head.Path }

// On is the date that acceptances were judged on.
func (p *StudyPart) On() string { return p.head.On }

// Strict is whether a query fails an option.
func (p *StudyPart) Strict() bool { return p.head.Strict }

// Search is whether a way in was searched for as check does.
func (p *StudyPart) Search() bool { return p.head.Search }

// Weighed are the figures that an option must be beaten in.
func (p *StudyPart) Weighed() []string { return p.head.Weighed }

// Vary are the keys that are varied, with their values, as they were given.
func (p *StudyPart) Vary() (out []string) {
	for _, d := range p.head.Vary {
		if !d.Linked { // what it is linked to has the text of both
			out = append(out, d.Text)
		}
	}
	return out
}

// Chosen are the figures that were chosen for the table.
func (p *StudyPart) Chosen() []string { return p.head.Chosen }

// Without is the first figure of a study that the part does not have; "" where it has
// all.
func (p *StudyPart) Without(s Study) string {
	for _, c := range s.Columns {
		if !slices.ContainsFunc(p.head.Columns, func(had jsonColumn) bool { return had.Key == c.Key }) {
			return c.Key
		}
	}
	return ""
}

// Differs says in what two parts are not of one study; "" where they are.
func (p *StudyPart) Differs(o *StudyPart) string { return p.head.differs(o.head) }

// DiffersFrom says in what the study that the part is of is another than this one.
func (p *StudyPart) DiffersFrom(s Study) string { return p.head.differs(s.head()) }

func (h jsonStudyHead) differs(o jsonStudyHead) string {
	for _, c := range []struct {
		what string
		a, b any
	}{
		{"its spec", h.Spec, o.Spec},
		{"its standards", h.Standards, o.Standards},
		{"its date", h.On, o.On},
		{"--strict", h.Strict, o.Strict},
		{"--search", h.Search, o.Search},
		{"what is varied", h.Vary, o.Vary},
		{"what is weighed", h.Weighed, o.Weighed},
		{"the rest of its first line", h, o},
	} {
		a, err := json.Marshal(c.a)
		b, fault := json.Marshal(c.b)
		if err != nil || fault != nil || !bytes.Equal(a, b) {
			return c.what
		}
	}
	return ""
}

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
			return nil, fmt.Errorf("option %d stands where option %d is expected", line.Option, next)
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
