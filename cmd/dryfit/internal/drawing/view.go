package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/picture"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

// markRoom is what the marks of findings take beside the words under the view, in mm.
const markRoom = 16

// view is the sheet of it.
func view(in sheet.Input) (*sheet.Subject, error) {
	c := in.Ceiling()
	if err := sheet.CheckCount("view", c.Grid.Around.Get()*c.Grid.Along.Get(), "coffers"); err != nil {
		return nil, err
	}
	entry := picture.FromEntry(c)
	where, aspect := entry.Where, entry.Aspect
	return &sheet.Subject{
		Name: "view", Title: "View from the entry",
		About:  fmt.Sprintf("The ceiling of %d by %d coffers in perspective, from the entry at %s, the eye %s above the floor.", c.Grid.Around.Get(), c.Grid.Along.Get(), where, in.Length(c.Room.Eye.Get())),
		Aspect: aspect,
		Left:   120, Right: 120, Above: 90, Below: 90, Best: 1, // the least paper is A3, or ARCH-B
		Shows: []string{"grid", "vault.rise", "vault.profile"},
		Draw: func(b *draft.Board, _ draft.View) map[int]paper.Point {
			low, high := b.Area()
			right := high.X - low.X
			wide := min(high.X-low.X, (high.Y-low.Y-sheet.UnderView)/aspect)
			mid := (low.X + high.X) / 2
			low, high = paper.Point{X: mid - wide/2, Y: (low.Y + high.Y - wide*aspect - sheet.UnderView) / 2}, paper.Point{X: mid + wide/2, Y: (low.Y + high.Y + wide*aspect - sheet.UnderView) / 2}
			b.In("view", func() { b.Items(entry.Painted(low, high)) })
			said := fmt.Sprintf("from the entry at %s, the eye %s above the floor, %.0f degrees wide; coffers of %s by %s, ratio %s",
				where, in.Length(c.Room.Eye.Get()), quantity.Steady(entry.Angle*180/math.Pi), in.Length(c.Grid.ModuleAround.Get()), in.Length(c.Grid.ModuleAlong.Get()), ratio(c))
			left := low.X
			for i, line := range paper.Wrap(said, right-2*markRoom, draft.Ordinary) {
				left = min(left, mid-paper.TextWidth(line, draft.Ordinary)/2-markRoom)
				b.Write(paper.Text{At: paper.Point{X: mid, Y: high.Y + 7 + draft.Leading(draft.Ordinary)*float64(i)}, Height: draft.Ordinary, Anchor: paper.Middle, Text: line})
			}
			places := map[int]paper.Point{}
			in.At(places, paper.Point{X: left + 6, Y: high.Y + 6}, "grid", "vault")
			return places
		},
	}, nil
}

func ratio(c *layout.Ceiling) string { return fmt.Sprintf("%.2f", quantity.Steady(c.Grid.Ratio())) }
