package drawing

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/report"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/result/carrying"
	"dryfit/spec"
	"dryfit/spec/quantity"
)

// routeOf keeps what the sheet of the way in is drawn from.
type routeOf struct {
	Input
	legs         []legFigure
	columns      int
	wide, high   float64 // of one figure, in m
	b            *draft.Board
	places       map[int]paper.Point
	beyondLimits int // legs that are not shown
}

// legFigure is one leg with its pose and the box, in m, that it takes.
type legFigure struct {
	carrying.Leg
	Way       carrying.Way
	pose      carrying.Pose
	low, high passage.Point
}

// The sheet of the way in.
const (
	mostLegs   = 24
	wallShown  = 0.15 // m, around an opening
	reachShown = 0.3  // m, of a corridor past the panel
	textBelow  = 21   // mm
	textWide   = 50   // mm, to stay in the figure's column
	legGap     = 12   // mm, between two columns

	motionLines = 2
)

// route is each leg of the way in, with the panel in the pose that passes or
// jams.
func route(in Input) (*subject, error) {
	d := &routeOf{Input: in}
	legs := in.Sheet.Results.Carrying()
	if len(legs) == 0 {
		return nil, &NeedsError{"route", "route"}
	}
	for i, l := range legs {
		if i == mostLegs {
			d.beyondLimits = len(legs) - i
			break
		}
		pose, ok := l.Way.Get().Pose()
		if !ok {
			continue
		}
		f := legFigure{Leg: l, Way: l.Way.Get(), pose: pose}
		f.low, f.high = extent(pose)
		d.legs = append(d.legs, f)
		d.wide, d.high = max(d.wide, f.high.X-f.low.X), max(d.high, f.high.Y-f.low.Y)
	}
	d.columns = max(1, int(math.Ceil(math.Sqrt(1.3*float64(len(d.legs))))))
	rows := (len(d.legs) + d.columns - 1) / d.columns
	wrap := in.length(in.ceiling().Wrap.Allowance.Get())
	notes := []string{
		"The panel is drawn without its wrap of " + wrap + " on every side, where its best motion is tightest.",
		"Clearances are of the wrap. What is not decided may pass by a motion that was not tried.",
		"The room itself is checked by transit.room.",
	}
	if d.beyondLimits > 0 {
		notes = append(notes, fmt.Sprintf("%d further legs are not shown; dryfit calcs lists them.", d.beyondLimits))
	}
	return &subject{
		name: "route", title: "The way in",
		about: fmt.Sprintf("Each of %d legs of the way in, with the panel of %s in the pose of its best motion.", len(d.legs), in.format(quantity.Mass(in.ceiling().Panel.Mass.Get()).Value())),
		wide:  float64(d.columns) * d.wide, high: float64(rows) * d.high,
		left: 6, right: 6 + legGap*float64(d.columns-1), leastWide: textWide * float64(d.columns), above: 4, below: float64(rows) * textBelow, best: 50,
		shows: []string{"route", "wrap", "crew", "room.door", "panels.along", "room.length", "room.width"},
		notes: []draft.Note{{Title: "How it is drawn", Lines: notes}},
		draw:  d.draw,
	}, nil
}

// extent is the box that a pose takes with what is around it.
func extent(p carrying.Pose) (low, high passage.Point) {
	low, high = passage.Point{}, passage.Point{X: p.A, Y: p.B}
	if p.Plane == carrying.Wall {
		high = passage.Point{X: p.B, Y: p.A}
	}
	for _, q := range p.Panel {
		low.X, low.Y, high.X, high.Y = min(low.X, q.X), min(low.Y, q.Y), max(high.X, q.X), max(high.Y, q.Y)
	}
	return passage.Point{X: low.X - wallShown, Y: low.Y - wallShown}, passage.Point{X: high.X + reachShown, Y: high.Y + reachShown}
}

func (d *routeOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	d.b, d.places = b, map[int]paper.Point{}
	rows := (len(d.legs) + d.columns - 1) / d.columns
	for i, leg := range d.legs {
		column, row := i%d.columns, i/d.columns
		// The lower left corner of the leg's own cell on paper.
		corner := v.At(0, float64(rows-1-row)*d.high)
		corner.X += float64(column) * (max(v.Size(d.wide), textWide) + legGap)
		corner.Y -= textBelow * float64(rows-1-row)
		own := draft.View{Scale: v.Scale, Origin: paper.Point{X: corner.X - v.Size(leg.low.X), Y: corner.Y + v.Size(leg.low.Y)}}
		b.Figure()
		b.In(fmt.Sprintf("leg-%d", leg.Index), func() { d.leg(leg, own) })
		d.text(leg, paper.Point{X: corner.X, Y: corner.Y + 5})
		at := leg.pose.Panel[len(leg.pose.Panel)/4]
		d.at(d.places, own.At(at.X, at.Y), spec.Key("route", leg.Index))
	}
	if len(d.legs) > 0 {
		first := v.At(0, float64(rows)*d.high)
		d.at(d.places, paper.Point{X: first.X + 4, Y: first.Y - textBelow*float64(rows-1)}, "route", "wrap", "crew", "room", "panels")
	}
	return d.places
}

// leg draws what is around the panel, and the panel over it.
func (d *routeOf) leg(l legFigure, v draft.View) {
	p := l.pose
	block := func(x0, y0, x1, y1 float64) {
		d.b.Poly(paper.Poly{Points: rectangle(v, x0, y0, x1, y1), Closed: true, Tone: paper.Paper + 2, Stroke: edge})
	}
	switch p.Plane {
	case carrying.Opening:
		block(l.low.X, l.low.Y, l.high.X, l.high.Y)
		d.b.Poly(paper.Poly{Points: rectangle(v, 0, 0, p.A, p.B), Closed: true, Tone: paper.Paper, Stroke: cut})
	case carrying.Floor:
		d.b.Poly(paper.Poly{Points: rectangle(v, 0, 0, p.A, p.B), Closed: true, Stroke: cut})
	case carrying.Wall:
		block(0, l.low.Y, max(p.B, 0.02), 0)
		block(0, p.A, max(p.B, 0.02), l.high.Y)
	case carrying.Corner:
		d.b.Poly(paper.Poly{Points: []paper.Point{v.At(0, l.high.Y), v.At(0, 0), v.At(l.high.X, 0)}, Stroke: cut})
		d.b.Poly(paper.Poly{Points: []paper.Point{v.At(p.A, max(l.high.Y, p.B)), v.At(p.A, p.B), v.At(max(l.high.X, p.A), p.B)}, Stroke: cut})
	}
	var points []paper.Point
	for _, q := range p.Panel {
		points = append(points, v.At(q.X, q.Y))
	}
	d.b.Poly(paper.Poly{Points: points, Closed: true, Tone: paper.Paper + 1, Stroke: paper.Stroke{Pen: paper.Bold, Marked: l.Way.Outcome != passage.Passes}})
}

// text is the leg's name, its motion and its outcome, under the figure.
func (d *routeOf) text(l legFigure, at paper.Point) {
	const height = 1.9
	line := func(text string) {
		d.b.Write(paper.Text{At: at, Height: height, Text: text})
		at.Y += 3.4
	}
	name, kind := l.Name.Get(), l.Kind.Get()
	if name == "" {
		name = "leg"
	}
	line(paper.Cut(fmt.Sprintf("%d %s, %s", l.Index, report.Safe(name), kind), textWide, height))
	clear := d.length(l.Way.Margin) + " clear on every side"
	if l.Way.Margin < 0 {
		clear = d.length(-l.Way.Margin) + " short on every side"
	}
	line(l.Way.Outcome.String() + ", " + clear)
	motion := paper.Wrap(l.Way.Motion, textWide, height)
	for i, t := range motion {
		if i == motionLines-1 && len(motion) > motionLines {
			line(paper.Cut(t+" …", textWide, height))
			break
		}
		line(t)
	}
	if carrying.KindOf(kind).Loads && l.Way.Load > 0 {
		line(fmt.Sprintf("panels in a load: %d; loads: %d", l.Way.Load, l.Way.Loads))
	}
}
