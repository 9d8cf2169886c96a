package sheet

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/spec/quantity"
)

// frame is what stands around the drawing. The title block has what ISO 7200 asks of
// one; what the spec does not say is left to be written by hand.
func (in Input) frame(s *Subject, size draft.Size, scale float64) draft.Frame {
	imperial := in.Ceiling().Units == quantity.Imperial
	printed, bar := draft.ScaleText(scale, imperial), in.bar(size.BarRoom(), scale)
	if s.Wide == 0 {
		printed, bar = "none", draft.Bar{}
	}
	printed += " on " + size.Name
	var unit [][2]string
	if what, of, ok := strings.Cut(in.unit(), " "); ok && s.Wide > 0 {
		unit = [][2]string{{what, of}}
	}
	p := in.Ceiling().Project
	return draft.Frame{
		Name: s.Name, Title: s.Title, About: s.About, Paper: size, Bar: bar, Project: in.heads(s),
		Facts: slices.Concat([][2]string{
			{"owner", p.Owner.Get()},
			{"document", s.Kind},
			{"issued", p.Issued.Get()},
			{"drawn", p.Drawn.Get()},
			{"approved", p.Approved.Get()},
			{"scale", printed},
		}, unit, [][2]string{
			{"spec", in.Assessment.Path},
			{"SHA-256", in.SHA256[:min(hashDigits, len(in.SHA256))]},
			{"standards", in.Assessment.Standards.Name},
			{"checked", in.On + ", " + in.Assessment.Verdict.String()},
			{"made by", "dryfit " + in.Version},
		}, in.reserves()),
		Notes:   slices.Concat(in.loosened(), in.unchecked(), in.findings(s.Shows), s.Notes, in.assumed()),
		Caution: show.Caution,
	}
}

// unit says what drawn dimensions are in; in inches each has its own.
func (in Input) unit() string {
	if in.Ceiling().Units == quantity.Imperial {
		return ""
	}
	return "dimensions in mm"
}

// hashDigits are enough to tell one state of a spec from another on paper.
const hashDigits = 12

// heads are the ceiling's title, then what identifies the sheet.
func (in Input) heads(s *Subject) []string {
	p := in.Ceiling().Project
	out := []string{p.Title.Get()}
	if number := in.number(s.Place); number != "" {
		out = append(out, "number "+number)
	}
	if p.Revision.Get() != "" {
		out = append(out, "revision "+p.Revision.Get())
	}
	return out
}

// number is that of a sheet; "" where the spec gives its drawing none.
func (in Input) number(place int) string {
	number := in.Ceiling().Project.Sheet.Get()
	if number != "" && place > 0 {
		number += fmt.Sprintf(".%d", place)
	}
	return number
}

// NumberOf is the number of a sheet of the set by name, and whether it is drawn.
func (in Input) NumberOf(name string) (number string, drawn bool) {
	place, drawn := in.Places[name]
	return in.number(place), drawn
}

// bar is the longest scale bar of a round length that is no longer than a room, in mm.
func (in Input) bar(room, scale float64) (out draft.Bar) {
	const inch, foot = quantity.Inch, quantity.Foot
	steps := []float64{0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500}
	if in.Ceiling().Units == quantity.Imperial {
		steps = []float64{inch / 16, inch / 8, inch / 4, inch / 2, inch, 2 * inch, 3 * inch, 6 * inch, foot, 2 * foot, 5 * foot, 10 * foot, 20 * foot, 50 * foot, 100 * foot, 200 * foot, 500 * foot}
	}
	for _, length := range steps {
		if drawn := length * 1000 / scale; drawn <= room {
			out = draft.Bar{Length: drawn, Stands: in.Length(length)}
		}
	}
	return out
}
