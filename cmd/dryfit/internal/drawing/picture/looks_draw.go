package picture

import (
	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/rules/model/layout"
)

// plan is a ceiling from below in a box of paper, with a mark where one comes in.
func (l Looks) plan(c *layout.Ceiling, at paper.Point) []paper.Item {
	v := draft.View{Scale: l.scale}
	span, long := c.Vault.Span.Get(), c.BuiltLength()
	low := paper.Point{X: at.X + (picture-v.Size(long))/2, Y: at.Y + (l.planHigh-v.Size(span))/2}
	eye := entryCamera(c)
	s := newScene(c, camera{below: true})
	out := s.laid(low, v.Size(1))
	edge := []paper.Point{low, {X: low.X + v.Size(long), Y: low.Y}, {X: low.X + v.Size(long), Y: low.Y + v.Size(span)}, {X: low.X, Y: low.Y + v.Size(span)}}
	out = append(out, paper.Poly{Points: edge, Closed: true, Stroke: paper.Stroke{Pen: paper.Medium}})
	const deep, half, off = 2.2, 1.1, 0.6
	tip := paper.Point{X: low.X - off, Y: low.Y + v.Size(eye.eye.y)}
	mark := []paper.Point{tip, {X: tip.X - deep, Y: tip.Y - half}, {X: tip.X - deep, Y: tip.Y + half}}
	if eye.turns {
		tip = paper.Point{X: low.X + v.Size(eye.eye.x), Y: low.Y - off}
		mark = []paper.Point{tip, {X: tip.X - half, Y: tip.Y - deep}, {X: tip.X + half, Y: tip.Y - deep}}
	}
	return append(out, paper.Poly{Points: mark, Closed: true, Tone: paper.Ink, Stroke: paper.Stroke{Pen: paper.Hair}})
}

// view is a ceiling from its entry in a box of paper, with the person.
func (l Looks) view(c *layout.Ceiling, at paper.Point) []paper.Item {
	s := newScene(c, entryCamera(c))
	s.person(l.away)
	return s.painted(at, paper.Point{X: at.X + picture, Y: at.Y + l.viewHigh}, l.window)
}

// betweenLooks is the room between a plan and the view under it, in mm.
const betweenLooks = 4

// high is how much of the paper both pictures take, in mm.
func (l Looks) high() float64 { return l.planHigh + betweenLooks + l.viewHigh }

// items are both pictures of a ceiling with their upper left corner at a place.
func (l Looks) items(c *layout.Ceiling, at paper.Point) []paper.Item {
	return append(l.plan(c, at), l.view(c, paper.Point{X: at.X, Y: at.Y + l.planHigh + betweenLooks})...)
}

// Sheet is both pictures of a ceiling as a sheet of their own, the same size of each.
func (l Looks) Sheet(name, title, about string, c *layout.Ceiling) paper.Sheet {
	const border = 0.5 // for the width of lines
	b := draft.Blank(name, title, about, draft.Size{Name: name, Width: picture + 2*border, Height: l.high() + 2*border})
	b.Items(l.items(c, paper.Point{X: border, Y: border}))
	return b.Finish()
}
