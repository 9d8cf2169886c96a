package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/picture"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// underView is what the words under the view take, in mm.
const underView = 16

// markRoom is what the marks of findings take beside the words under the view, in mm.
const markRoom = 16

// view is the sheet of it.
func view(in Input) (*subject, error) {
	c := in.ceiling()
	if err := shows("view", c.Grid.Around.Get()*c.Grid.Along.Get(), "coffers"); err != nil {
		return nil, err
	}
	entry := picture.FromEntry(c)
	where, aspect := entry.Where, entry.Aspect
	return &subject{
		name: "view", title: "View from the entry",
		about:  fmt.Sprintf("The ceiling of %d by %d coffers in perspective, from the entry at %s, the eye %s above the floor.", c.Grid.Around.Get(), c.Grid.Along.Get(), where, in.length(c.Room.Eye.Get())),
		aspect: aspect,
		left:   120, right: 120, above: 90, below: 90, best: 1, // the least paper is A3, or ARCH-B
		shows: []string{"grid", "vault.rise", "vault.profile"},
		draw: func(b *draft.Board, _ draft.View) map[int]paper.Point {
			low, high := b.Area()
			right := high.X - low.X
			wide := min(high.X-low.X, (high.Y-low.Y-underView)/aspect)
			mid := (low.X + high.X) / 2
			low, high = paper.Point{X: mid - wide/2, Y: (low.Y + high.Y - wide*aspect - underView) / 2}, paper.Point{X: mid + wide/2, Y: (low.Y + high.Y + wide*aspect - underView) / 2}
			b.In("view", func() { b.Items(entry.Painted(low, high)) })
			said := fmt.Sprintf("from the entry at %s, the eye %s above the floor, %.0f degrees wide; coffers of %s by %s, ratio %s",
				where, in.length(c.Room.Eye.Get()), quantity.Steady(entry.Angle*180/math.Pi), in.length(c.Grid.ModuleAround.Get()), in.length(c.Grid.ModuleAlong.Get()), ratio(c))
			left := low.X
			for i, line := range paper.Wrap(said, right-2*markRoom, draft.Ordinary) {
				left = min(left, mid-paper.TextWidth(line, draft.Ordinary)/2-markRoom)
				b.Write(paper.Text{At: paper.Point{X: mid, Y: high.Y + 7 + leadingOf(draft.Ordinary)*float64(i)}, Height: draft.Ordinary, Anchor: paper.Middle, Text: line})
			}
			places := map[int]paper.Point{}
			in.at(places, paper.Point{X: left + 6, Y: high.Y + 6}, "grid", "vault")
			return places
		},
	}, nil
}

func ratio(c *layout.Ceiling) string { return fmt.Sprintf("%.2f", quantity.Steady(c.Grid.Ratio())) }
