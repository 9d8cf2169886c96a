package stock

import (
	"fmt"

	"dryfit/rules/model/layout"
)

// mark numbers the kinds of piece in their order, and after them the straps that are
// cut as they are drawn: those of a measured room differ from panel to panel.
func (t *Takeoff) mark() {
	n := 0
	next := func() string {
		n++
		return fmt.Sprintf("K%d", n)
	}
	for i := range t.Pieces {
		t.Pieces[i].Mark = next()
	}
	for i, h := range t.Hardware {
		if h.Name == layout.Hanger.String() && !h.Measured {
			t.Hardware[i].Mark = next()
		}
	}
}

// MarksOf are the marks of a piece of the layout: of a skin one a layer, of another one.
// None is returned for what the takeoff does not list.
func (t Takeoff) MarksOf(p layout.Piece) (out []string) {
	want := []Line{line(t.ceiling, p)}
	switch p.Kind {
	case layout.Hanger:
		return t.strapMarks(p.Length)
	case layout.SkinSheet:
		want = skins(t.ceiling, t.made, p)
	}
	for _, w := range want {
		for _, l := range t.Pieces {
			if l.same(w) {
				out = append(out, l.Mark)
			}
		}
	}
	return out
}

// strapMarks is that of the straps of a length, in m.
func (t Takeoff) strapMarks(length float64) []string {
	for _, h := range t.Hardware {
		if h.Mark != "" && near(h.Length, length) {
			return []string{h.Mark}
		}
	}
	return nil
}

// same reports whether two lines are of one kind: alike in name, material and size.
func (l Line) same(o Line) bool {
	return l.Name == o.Name && l.Material == o.Material && near(l.Length, o.Length) && near(l.Width, o.Width) && near(l.Depth, o.Depth)
}
