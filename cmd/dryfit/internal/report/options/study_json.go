package options

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"math"

	"dryfit/cmd/dryfit/internal/report"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/study"
	"dryfit/rules/engine"
	"dryfit/spec/quantity"
)

type (
	jsonStudy struct {
		jsonStudyHead
		jsonOutcome
		Options []jsonOption `json:"options"`
	}
	jsonStudyHead struct {
		Path      string          `json:"path"`
		On        string          `json:"on"`
		Strict    bool            `json:"strict"`
		Search    bool            `json:"search"`
		Spec      report.Digest   `json:"spec"`
		Standards []report.Digest `json:"standards"`
		Vary      []jsonDimension `json:"vary"`
		Follows   []string        `json:"follows"`
		Columns   []jsonColumn    `json:"columns"`
		Chosen    []string        `json:"chosen,omitempty"` // columns, by their keys
		Weighed   []string        `json:"weighed"`
	}
	jsonStudyLine struct { // the first of JSONL
		jsonStudyHead
		jsonSpan
	}
	jsonDimension struct {
		Key    string `json:"key"`
		Values []any  `json:"values"`
		Text   string `json:"text"`
		Linked bool   `json:"linked,omitempty"` // it changes with the one before it
	}
	jsonColumn struct {
		Key    string `json:"key"`
		Name   string `json:"name"`
		Unit   string `json:"unit"`
		Better string `json:"better,omitempty"` // lower, higher
	}
	jsonOption struct {
		Option    int                `json:"option"`
		Values    map[string]any     `json:"values"`
		Figures   map[string]any     `json:"figures,omitempty"` // in SI; null where the option has none
		Verdict   string             `json:"verdict"`
		Counts    *report.JSONCounts `json:"counts,omitempty"`
		HeldBy    []string           `json:"held_by,omitempty"`    // rules
		QueriedBy []string           `json:"queried_by,omitempty"` // rules that hold nothing
		Key       string             `json:"key,omitempty"`        // of what can't be made
		Reason    string             `json:"reason,omitempty"`
		Unbeaten  *bool              `json:"unbeaten,omitempty"`
		Loses     string             `json:"loses,omitempty"`
	}
	jsonSpan struct {
		Total int    `json:"total"` // of the whole study
		Part  string `json:"part,omitempty"`
		First int    `json:"first"`
		Last  int    `json:"last"`
	}
	jsonOutcome struct {
		jsonSpan
		Done        int                   `json:"done"`
		Interrupted bool                  `json:"interrupted,omitempty"`
		Passed      int                   `json:"passed"`
		Noted       int                   `json:"passed_with_notes"`
		Failed      int                   `json:"failed"`
		Invalid     int                   `json:"invalid"`
		Reasons     []jsonReason          `json:"reasons"`
		Unbeaten    []int                 `json:"unbeaten"`
		Overfull    bool                  `json:"unbeaten_overfull,omitempty"`
		Loosened    []report.JSONLoosened `json:"loosened"`
	}
	jsonReason struct {
		Key   string `json:"key"`
		Count int    `json:"count"`
		First int    `json:"first"`
		Text  string `json:"text"`
	}
)

// StudyJSON writes the study as one document.
func StudyJSON(w io.Writer, s Study) error {
	out := jsonStudy{jsonStudyHead: s.head(), jsonOutcome: s.counted(), Options: []jsonOption{}}
	for _, r := range s.Rows {
		out.Options = append(out.Options, s.option(r, true))
	}
	return show.WriteJSON(w, out)
}

func (s Study) head() jsonStudyHead {
	out := jsonStudyHead{
		Path: s.Base.Path, On: s.On, Strict: s.Strict, Search: s.Search, Spec: s.Spec, Standards: append([]report.Digest{}, s.Standards...),
		Follows: append([]string{}, s.Says...),
	}
	for _, d := range s.Vary {
		out.Vary = append(out.Vary, jsonDimension(d))
	}
	for _, c := range s.Columns {
		out.Columns = append(out.Columns, jsonColumn{c.Key, c.Name, c.Unit.String(), c.Better.String()})
	}
	for _, i := range s.Chosen {
		out.Chosen = append(out.Chosen, s.Columns[i].Key)
	}
	for _, a := range s.Front.Aims {
		out.Weighed = append(out.Weighed, a.Text)
	}
	return out
}

func (s Study) counted() jsonOutcome {
	t := s.Tally
	out := jsonOutcome{
		jsonSpan: s.span(), Done: t.Done, Interrupted: s.Interrupted(),
		Passed: t.Verdicts[engine.Passed], Noted: t.Verdicts[engine.PassedWithNotes], Failed: t.Verdicts[engine.Failed], Invalid: t.Invalid,
		Reasons: []jsonReason{}, Unbeaten: []int{}, Overfull: s.Front.Full, Loosened: report.LoosenedJSON(t.Loosened),
	}
	for _, r := range t.Reasons {
		out.Reasons = append(out.Reasons, jsonReason(r))
	}
	for _, m := range s.Front.Members {
		out.Unbeaten = append(out.Unbeaten, m.Index)
	}
	return out
}

func (s Study) span() jsonSpan {
	out := jsonSpan{Total: s.Total, First: s.First, Last: s.Last}
	if s.Part.Of > 1 {
		out.Part = fmt.Sprintf("%d/%d", s.Part.Number, s.Part.Of)
	}
	return out
}

// option is one row; marked where the front is known.
func (s Study) option(r study.Row, marked bool) jsonOption {
	out := jsonOption{Option: r.Index, Values: map[string]any{}, Verdict: verdict(r), HeldBy: r.HeldBy, QueriedBy: r.QueriedBy, Key: r.Key, Reason: r.Reason}
	for i, v := range s.Values(r.Index) {
		out.Values[s.Vary[i].Key] = v
	}
	if !r.Made() {
		return out
	}
	out.Figures = map[string]any{}
	for i, c := range s.Columns {
		out.Figures[c.Key] = nil
		if x := r.Figures[i]; !math.IsNaN(x) {
			out.Figures[c.Key] = show.JSONNumberOf(quantity.Value{SI: x, Unit: c.Unit})
		}
	}
	counts := report.CountsJSON(r.Counts)
	out.Counts = &counts
	if marked {
		unbeaten := s.Front.Has(r.Index)
		out.Unbeaten, out.Loses = &unbeaten, s.Loses(s.Front, r)
	}
	return out
}

// StudyJSONL writes one line for the study, one an option, one for the outcome.
type StudyJSONL struct {
	study Study
	out   *bufio.Writer
	lines *json.Encoder
}

// NewStudyJSONL writes the first line.
func NewStudyJSONL(w io.Writer, s Study) (*StudyJSONL, error) {
	j := &StudyJSONL{study: s, out: bufio.NewWriter(w)}
	j.lines = show.NewEncoder(j.out)
	return j, j.lines.Encode(struct {
		Study jsonStudyLine `json:"study"`
	}{jsonStudyLine{s.head(), s.span()}})
}

// Row writes one option.
func (j *StudyJSONL) Row(r study.Row) error { return j.lines.Encode(j.study.option(r, false)) }

// End writes the outcome, with the unbeaten.
func (j *StudyJSONL) End(s Study) error {
	if err := j.lines.Encode(map[string]any{"outcome": s.counted()}); err != nil {
		return err
	}
	return j.out.Flush()
}
