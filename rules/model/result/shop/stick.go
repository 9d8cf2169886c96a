package shop

import "fmt"

// wide is how wide a story stick is drawn, in m; its width is the shop's.
const wide = 0.04

// StoryStick is the pattern of a straight stick as long as the rib's intrados, with both
// edges of each rail: it is bent along the rib to mark them.
func (r Rib) StoryStick() Pattern {
	p := Pattern{
		Name: fmt.Sprintf("stick-%d", r.Piece), Title: fmt.Sprintf("Story stick of the rails of piece %d of the arch, along the intrados", r.Piece),
		Outline: rectangle(0, 0, r.Intrados, wide),
		Notes:   []string{"The shop decides the width of the stick. Bend it along the rib's inner edge, with its left end at the rib's left end."},
	}
	run := Run{Name: "rails' edges on the stick", Length: r.Intrados}
	for _, w := range r.Stick {
		name := fmt.Sprintf("rail %d", w.Rail)
		for _, x := range []float64{w.From, w.To} {
			p.Marks = append(p.Marks, line(Rail, straight(PatternPoint{x, 0}, PatternPoint{x, wide})))
		}
		p.Marks = append(p.Marks, label(PatternPoint{w.From + (w.To-w.From)/8, wide / 2}, 0, name))
		run.Stations = append(run.Stations, Stop{name + " from", w.From, PatternPoint{w.From, 0}}, Stop{name + " to", w.To, PatternPoint{w.To, 0}})
	}
	p.Runs = []Run{run, closing("stick", r.Intrados, PatternPoint{r.Intrados, 0})}
	return p
}

// Patterns are all of the ceiling's, ribs first. A skin of which a piece is larger
// than its sheet is not drawn, which its own rule says.
func (s *Shop) Patterns() (out []Pattern) {
	for _, r := range s.Ribs.Get() {
		out = append(out, r.Pattern)
	}
	for _, f := range s.Forms.Get() {
		out = append(out, f.Pattern)
	}
	for _, sawn := range s.Sawn.Get() {
		for _, b := range sawn.Blanks {
			b.Notes = append(b.Notes, fmt.Sprintf("Cut from %d/4 plank, the grain along the arrow; %d in one half rib: %s.", b.Stock, b.Count, said(b.Places)))
			out = append(out, b.Pattern)
		}
		out = append(out, sawn.Layup)
	}
	for _, skin := range s.Skins.Get() {
		if skin.WithinOneRail && s.Sheets.Get().Fits {
			out = append(out, skin.Pattern)
		}
	}
	for _, r := range s.Ribs.Get() {
		out = append(out, r.StoryStick())
	}
	return out
}

// HasStraps reports whether places of straps or holes of their screws are marked on
// the pattern.
func (p Pattern) HasStraps() bool {
	for _, m := range p.Marks {
		if m.Layer == Strap || m.Layer == Bore {
			return true
		}
	}
	return false
}
