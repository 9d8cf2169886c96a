package options

import (
	"bufio"
	"encoding/json"
	"errors"
	"io"
	"slices"

	"dryfit/rules/design/study"
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
		return nil, errors.New("its first line is not that of a study of --format jsonl")
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
