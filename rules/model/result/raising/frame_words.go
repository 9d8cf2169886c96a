package raising

import (
	"fmt"
	"strings"

	"dryfit/spec/quantity"
)

// Title names a frame, which is the n-th.
func (f *Frame) Title(n int) string { return fmt.Sprintf("%d. %s: %s", n, f.Of, f.Name) }

// Lines are what a frame says, a sentence each, in a system of units. The last is what
// has to hold before anybody passes on.
func (f *Frame) Lines(u quantity.System) []string {
	w := words{u}
	out := []string{"Carried: " + w.shares(f.Carried) + "; weight " + w.force(f.Weight) + " " + f.With + "."}
	for _, s := range f.After {
		out = append(out, s.Name+": "+w.shares(s.Carried)+".")
	}
	for _, s := range f.Also {
		out = append(out, "Also: "+s.What+" "+w.force(s.Force)+".")
	}
	out = append(out, w.forks(f.Forks)...)
	out = append(out, fmt.Sprintf("Mass centre: %s from the left springing, %s along the panel, %s above the floor.",
		w.length(f.Centre.Across), w.length(f.Centre.FromEnd), w.length(f.Centre.Up)))
	if b := f.Base; b != nil {
		out = append(out, fmt.Sprintf("Mass centre from the heel of the base: %s, and %s after it slides; the base ends at %s.", w.length(b.Before), w.length(b.After), w.length(b.End)))
	}
	out = append(out, f.hands()...)
	if n := len(f.People.At); n > 0 {
		out = append(out, fmt.Sprintf("People: %d %s, numbered from the left, %s from the panel.", n, f.People.Are, w.length(f.People.Away)))
	}
	out = append(out,
		"Least gap: "+w.gap(f.Gap)+".",
		fmt.Sprintf("Keep clear: %s around its plan, the height of its top.", w.length(f.Top)))
	out = append(out, f.Unknown...)
	return append(out, "Do not pass until "+f.Until+".")
}

func (f *Frame) hands() (out []string) {
	for _, h := range f.Hands {
		text := fmt.Sprintf("Hands: %d %s", h.Takes, h.For)
		if h.Takes > f.Crew {
			text += fmt.Sprintf("; the crew of %d is TOO SMALL", f.Crew)
		}
		out = append(out, text+".")
	}
	return out
}

// words print quantities.
type words struct{ quantity.System }

func (w words) length(m float64) string { return w.Format(quantity.Length(m).Value()) }
func (w words) force(n float64) string  { return w.Format(quantity.Force(n).Value()) }

func (w words) gap(g Gap) string {
	if g.Size < 0 {
		return w.length(-g.Size) + " SHORT " + g.What
	}
	return w.length(g.Size) + " " + g.What
}

func (w words) shares(list []Share) string {
	if len(list) == 0 {
		return "nothing holds it"
	}
	parts := make([]string, len(list))
	for i, s := range list {
		parts[i] = s.What + " " + w.force(s.Force)
	}
	return strings.Join(parts, ", ")
}

// forks are the heights of the forks, and how far the mass centre is from each.
func (w words) forks(list []Fork) []string {
	if len(list) == 0 {
		return nil
	}
	heights, centres := make([]string, len(list)), make([]string, len(list))
	for i, f := range list {
		heights[i] = fmt.Sprintf("%d at %s", i+1, w.length(f.Height))
		centres[i] = fmt.Sprintf("%s from fork %d", w.length(f.ToCentre), i+1)
	}
	return []string{
		"Forks: " + strings.Join(heights, ", ") + " above the floor.",
		"Mass centre across: " + strings.Join(centres, ", ") + ".",
	}
}
