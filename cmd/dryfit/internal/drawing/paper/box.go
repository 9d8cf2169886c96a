package paper

import "math"

// Box is the least upright box around items; nothing of none.
func Box(items []Item) (low, high Point) {
	low, high = Point{math.Inf(1), math.Inf(1)}, Point{math.Inf(-1), math.Inf(-1)}
	for _, item := range items {
		if l, h, ok := boxOf(item); ok {
			low = Point{min(low.X, l.X), min(low.Y, l.Y)}
			high = Point{max(high.X, h.X), max(high.Y, h.Y)}
		}
	}
	if low.X > high.X {
		return Point{}, Point{}
	}
	return low, high
}

func boxOf(item Item) (low, high Point, ok bool) {
	switch i := item.(type) {
	case Line:
		low, high = Path{From: i.A, Steps: []Step{{To: i.B}}}.Box()
	case Arc: // its whole circle: what a box is for may be a little large
		low, high = Point{i.C.X - i.R, i.C.Y - i.R}, Point{i.C.X + i.R, i.C.Y + i.R}
	case Poly:
		if len(i.Points) == 0 {
			return low, high, false
		}
		path := Path{From: i.Points[0]}
		for _, q := range i.Points {
			path.Steps = append(path.Steps, Step{To: q})
		}
		low, high = path.Box()
	case Hatching: // lies in what it fills
		return low, high, false
	case Path:
		low, high = i.Box()
	case Text:
		low, high = i.Box()
	case Group:
		low, high = Box(i.Items)
		return low, high, low != high
	}
	return low, high, true
}
