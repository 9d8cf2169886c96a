package survey

import (
	"fmt"

	"dryfit/rules/model/figure"
	"dryfit/spec/quantity"
)

// Cuts are the lengths, in m, that the straps of each panel are cut to, by their
// stations, with the lap at both ends and rounded as a shop cuts: none where the
// survey does not say how long they are, or leaves one no length.
func (v *Survey) Cuts() (lengths [][]float64) {
	c := v.c
	if _, ok := v.Placed(); !ok || !v.Framed() || !c.Strap.Lap.Given() || len(c.Strap.Stations.Get()) == 0 {
		return nil
	}
	for _, p := range v.Panels.Get() {
		var of []float64
		for _, station := range c.Strap.Stations.Get() {
			length := v.Strap(p, station)
			if length <= 0 {
				return nil
			}
			of = append(of, c.Units.Cut(length+2*c.Strap.Lap.Get()))
		}
		lengths = append(lengths, of)
	}
	return lengths
}

// Tables are the gaps of each panel and the schedule of its straps, as far as the
// survey has them.
func (v *Survey) Tables() []figure.Table {
	var out []figure.Table
	if _, ok := v.Placed(); ok {
		t := figure.Table{
			Key: "survey.gaps", Title: "gaps beside the panels at their widest, as set out", Subject: subject,
			Head: []string{v.c.RowOf(), "left near", "left far", "right near", "right far"}, Note: v.SetOut(),
		}
		for i, p := range v.Panels.Get() {
			t.Rows = append(t.Rows, row(i, p.AtNear.Left, p.AtFar.Left, p.AtNear.Right, p.AtFar.Right))
		}
		out = append(out, t)
	}
	return append(out, v.schedule()...)
}

// SetOut says where the axis of the row lies.
func (v *Survey) SetOut() string {
	at, units := v.c.Survey.SetOut.Get(), v.c.Units
	length := func(m float64) string { return units.Format(quantity.Length(m).Value()) }
	end := func(x float64) string {
		side, off := "right", at.Y(x)
		if off < 0 {
			side, off = "left", -off
		}
		if length(off) == length(0) {
			return length(x) + " along the baseline, on it"
		}
		return fmt.Sprintf("%s along the baseline, %s to the %s of it", length(x), length(off), side)
	}
	return fmt.Sprintf("The axis of the row lies at its near end, %s, and at its far end, %s.", end(at.Near), end(at.Far))
}

// abreast is how many straps a table has side by side.
const abreast = 5

// schedule is what the straps are cut to.
func (v *Survey) schedule() (out []figure.Table) {
	cuts := v.Cuts()
	if cuts == nil {
		return nil
	}
	straps := len(cuts[0])
	for from := 0; from < straps; from += abreast {
		to := min(from+abreast, straps)
		t := figure.Table{Key: "survey.straps", Title: "straps to cut, with the lap at both ends", Subject: subject, Head: []string{v.c.RowOf()}}
		if from > 0 {
			t.Key, t.Title = fmt.Sprintf("%s.from-%d", t.Key, from+1), t.Title+", continued"
		}
		for k := from; k < to; k++ {
			t.Head = append(t.Head, fmt.Sprintf("strap %d", k+1))
		}
		for i, of := range cuts {
			t.Rows = append(t.Rows, row(i, of[from:to]...))
		}
		out = append(out, t)
	}
	out[len(out)-1].Note = "Two of each, one for each edge rib; rounded to " + v.c.Units.CutStep() + " (common practice)."
	return out
}

// row is a panel's, the first being 0.
func row(panel int, lengths ...float64) figure.Row {
	r := figure.Row{Label: fmt.Sprint(panel + 1)}
	for _, m := range lengths {
		r.Values = append(r.Values, quantity.Length(m).Value())
	}
	return r
}
