package making

import (
	"encoding/csv"
	"io"
	"strconv"

	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/model/result/raising"
	"dryfit/spec/quantity"
)

// RaiseCSV writes the plan as a table: a line for each support of each state, or one
// without a force where the panel falls. Each line says whether it is released.
func RaiseCSV(w io.Writer, r Raise) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	newton := show.CSVUnitOf(r.Assessment.Ceiling.Units, quantity.Newton)
	rows := [][]string{{"panel", "step", "name", "lost", "holds", "why", "support", "force of one rib" + newton.Head(), "release", "safety"}}
	for arch := range r.Assessment.Ceiling.Panel.Along.Get() {
		for k := range r.Pieces {
			for i, s := range r.Pieces[k].Steps {
				head := []string{strconv.Itoa(r.panels(k)[arch]), strconv.Itoa(i + 1), s.Name}
				rows = append(rows, r.stateRows(&r.Pieces[k], head, "", &s.State, newton)...)
				for _, l := range s.Lost {
					rows = append(rows, r.stateRows(&r.Pieces[k], head, l.What, &l.State, newton)...)
				}
			}
		}
	}
	if err := c.WriteAll(rows); err != nil {
		return err
	}
	return c.Error()
}

func (r Raise) stateRows(p *raising.Piece, head []string, lost string, s *raising.State, u show.CSVUnit) (out [][]string) {
	holds := map[bool]string{true: "yes", false: "no"}[s.Holds()]
	add := func(support, force string) {
		row := append(append([]string{}, head...), lost, holds, s.Why, support, force, r.released(), raising.LiftsStay)
		out = append(out, row)
	}
	if s.Falls {
		add("", "")
		return out
	}
	for i, f := range s.State.Lifts {
		add("lift "+strconv.Itoa(i+1), u.Number(f))
	}
	for i, f := range s.State.Straps {
		add("strap "+strconv.Itoa(p.Staging.Straps[i]), u.Number(f))
	}
	return out
}
