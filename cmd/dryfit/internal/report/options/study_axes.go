package options

import (
	"fmt"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/design/study"
)

// axes are the keys that have more than one value, those that change together as one.
func (s Study) axes() (out []Axis) {
	stride := s.Total
	for i := 0; i < len(s.Vary); {
		first := s.Vary[i]
		a := Axis{Key: first.Key, count: len(first.Values)}
		stride /= a.count
		a.stride = stride
		for _, v := range first.Values {
			a.Values = append(a.Values, show.Shown(fmt.Sprint(v)))
		}
		for i++; i < len(s.Vary) && s.Vary[i].Linked; i++ {
			a.Key += " / " + s.Vary[i].Key
			for k, v := range s.Vary[i].Values {
				a.Values[k] += " / " + show.Shown(fmt.Sprint(v))
			}
		}
		if a.count > 1 {
			out = append(out, a)
		}
	}
	return out
}

// place is that of an option in a matrix, whose heads say what is varied.
func (s Study) place(index int) Place {
	p := Place{Index: index, Title: fmt.Sprintf("option %d", index)}
	i := slices.IndexFunc(s.Rows, func(r study.Row) bool { return r.Index == index })
	switch {
	case i >= 0 && s.Rows[i].Made():
		p.Row = &s.Rows[i]
		p.Title, p.Lines = s.Caption(*p.Row)
		p.Lines = []string{s.aimed(*p.Row), verdict(*p.Row)}
	case i >= 0:
		p.Lines = []string{verdict(s.Rows[i]), show.Shown(s.Rows[i].Key + ": " + s.Rows[i].Reason)}
	case index < s.First || index > s.Last:
		p.Lines = []string{"it is in another part of the study"}
	case index >= s.First+s.Tally.Done:
		p.Lines = []string{"not checked: the study was interrupted"}
	default:
		p.Lines = []string{"it does not pass; only those that pass are listed"}
	}
	return p
}

// aimed are the figures that are aimed at, and those that were chosen.
func (s Study) aimed(r study.Row) string {
	var figures []string
	for i, c := range s.Columns {
		if text := s.cell(i, r); text != "" && (s.Front.AimsAt(i) || slices.Contains(s.Chosen, i)) {
			figures = append(figures, c.Head+" "+text)
		}
	}
	return strings.Join(figures, ", ")
}
