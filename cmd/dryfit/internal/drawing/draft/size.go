package draft

import "strings"

// Size is a sheet of paper lying on its long side, in mm.
type Size struct {
	Name          string
	Width, Height float64
}

// Series lists the sizes of ISO 216 and of the architects' series, each from
// the least.
func Series(imperial bool) []Size {
	if imperial {
		return []Size{
			{"ARCH-A", 304.8, 228.6},
			{"ARCH-B", 457.2, 304.8},
			{"ARCH-C", 609.6, 457.2},
			{"ARCH-D", 914.4, 609.6},
			{"ARCH-E", 1219.2, 914.4},
		}
	}
	return []Size{{"A4", 297, 210}, {"A3", 420, 297}, {"A2", 594, 420}, {"A1", 841, 594}, {"A0", 1189, 841}}
}

// SizeNamed finds a size of either series.
func SizeNamed(name string) (Size, bool) {
	for _, imperial := range []bool{false, true} {
		for _, s := range Series(imperial) {
			if strings.EqualFold(s.Name, name) {
				return s, true
			}
		}
	}
	return Size{}, false
}

// border is around the drawing; the left side leaves room to bind, by ISO 5457.
const (
	border = 10
	bound  = 20
	gutter = 4
)

// column is the width of the notes and of the title block under them.
func (s Size) column() float64 {
	switch {
	case s.Width < 350:
		return 72
	case s.Width < 550:
		return 84
	default:
		return 100
	}
}

// Area is the width and height that a drawing, its dimensions and labels may
// take.
func (s Size) Area() (width, height float64) {
	a := s.area()
	return a.x1 - a.x0, a.y1 - a.y0
}

func (s Size) area() box {
	return box{bound + gutter, border + gutter, s.Width - border - s.column() - gutter, s.Height - border - gutter}
}
