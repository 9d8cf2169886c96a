package plan

import (
	"fmt"
	"math"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/rules/kernel/placement"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/survey"
	"dryfit/spec"
)

// rowOf keeps what the row of panels in the measured room is drawn from, under the
// plan. Places along the room are at the plan's scale. Across it the row is a band of
// one width on paper, and what lies beside it is drawn larger.
type rowOf struct {
	sheet.Input
	v        *survey.Survey
	at       placement.Placed
	stations []layout.SurveyStation
	texts    float64 // the longest reading, in mm on paper

	b      *draft.Board
	origin paper.Point // the zero of the baseline, at the middle of the row
	along  float64     // mm on paper for a metre along the room
	across float64     // and across it
}

// What the row takes on paper, in mm.
const (
	halfRow    = 11  // of the band's width
	gapShown   = 14  // the greatest gap beside it
	leastEnds  = 4   // of what is kept between a wall and the readings
	rowCaption = 9.5 // a line over it
	beyondEnd  = 4   // of a station outside of the room
)

// row is the row in the measured room; nil where it was not measured, or where the
// row has no place there.
func row(in sheet.Input) *rowOf {
	v := in.Assessment.Results.Survey()
	at, ok := v.Placed()
	if !ok {
		return nil
	}
	d := &rowOf{Input: in, v: v, at: at, stations: in.Ceiling().Survey.Station.Get()}
	for _, s := range d.stations {
		for _, off := range []float64{s.Left.Get(), s.Right.Get()} {
			d.texts = max(d.texts, paper.TextWidth(in.Dim(off), draft.Ordinary))
		}
	}
	return d
}

// high is what the row takes under the plan, in mm.
func (d *rowOf) high() float64 {
	if d == nil {
		return 0
	}
	return 2*(halfRow+gapShown+leastEnds+d.texts) + 3*rowCaption
}

// gaps are those beside the row at a place along the baseline.
func (d *rowOf) gaps(x float64) (left, right float64) {
	c := d.Ceiling()
	return c.Survey.Room.Get().Gaps(d.at, c.Survey.Row.Get(), x)
}

// point is a place: along the baseline, and on paper off the middle of the row.
func (d *rowOf) point(x, off float64) paper.Point {
	return paper.Point{X: d.origin.X + x*d.along, Y: d.origin.Y + off}
}

// left and right are where the walls are on paper.
func (d *rowOf) left(x float64) paper.Point {
	gap, _ := d.gaps(x)
	return d.point(x, -halfRow-gap*d.across)
}

func (d *rowOf) right(x float64) paper.Point {
	_, gap := d.gaps(x)
	return d.point(x, halfRow+gap*d.across)
}

// draw draws the row, the near end wall under the plan's.
func (d *rowOf) draw(b *draft.Board, corner paper.Point, scale float64, places map[int]paper.Point) {
	d.b, d.along = b, 1000/scale
	from, _ := d.reach()
	d.origin = paper.Point{
		X: corner.X - from*d.along,
		Y: corner.Y + 2*rowCaption + d.texts + leastEnds + gapShown + halfRow,
	}
	factor := draft.Round(gapShown / (d.widest() * d.along))
	d.across = factor * d.along
	b.In("survey", func() {
		d.walls()
		d.panels()
		d.baseline()
		d.readings()
	})
	for i, text := range d.captions(factor) {
		at := paper.Point{X: corner.X, Y: corner.Y + rowCaption + float64(i)*draft.Leading(draft.Ordinary)}
		d.b.Write(paper.Text{At: at, Height: draft.Ordinary, Text: text})
	}
	d.bite(places)
}

// captions say what is drawn, and how.
func (d *rowOf) captions(factor float64) [2]string {
	times := fmt.Sprintf("%g times their size", factor)
	if factor == 1 {
		times = "to scale"
	}
	return [2]string{
		"the room as measured, the gaps across it drawn " + times,
		"not to scale: the width of the panels and the distance of the baseline",
	}
}

// wide is what the row takes along the plan at least, in mm.
func (d *rowOf) wide() float64 {
	if d == nil {
		return 0
	}
	most := 0.0
	for _, text := range d.captions(100) {
		most = max(most, paper.TextWidth(text, draft.Ordinary))
	}
	return most
}

// widest is the greatest gap beside the row from end wall to end wall. A wall that
// overlaps it counts by as much more as the band has less room than there is beside it.
func (d *rowOf) widest() float64 {
	most, ends, room := 1e-3, d.ends(), d.Ceiling().Survey.Room.Get()
	for _, side := range []placement.Course{room.Left, room.Right} {
		for _, p := range side.Over(ends[0], ends[1]) {
			left, right := d.gaps(p.X)
			for _, gap := range []float64{left, right} {
				most = max(most, gap, -gap*gapShown/(halfRow/2.0))
			}
		}
	}
	return most
}

// ends are where the room begins and ends along the baseline.
func (d *rowOf) ends() [2]float64 {
	room := d.Ceiling().Survey.Room.Get()
	return [2]float64{min(room.Near.Left, room.Near.Right), max(room.Far.Left, room.Far.Right)}
}

// reach is from where to where the drawing lies along the baseline: the room, and the
// row where that does not go into it.
func (d *rowOf) reach() (from, to float64) {
	ends := d.ends()
	return min(ends[0], d.at.Near), max(ends[1], d.at.Far)
}

// long is how far the drawing reaches.
func (d *rowOf) long() float64 {
	if d == nil {
		return 0
	}
	from, to := d.reach()
	return to - from
}

func (d *rowOf) walls() {
	room := d.Ceiling().Survey.Room.Get()
	for _, side := range []struct {
		from, to float64
		course   placement.Course
		at       func(float64) paper.Point
	}{{room.Near.Left, room.Far.Left, room.Left, d.left}, {room.Near.Right, room.Far.Right, room.Right, d.right}} {
		var points []paper.Point
		for _, p := range side.course.Over(side.from, side.to) {
			points = append(points, side.at(p.X))
		}
		d.b.Poly(paper.Poly{Points: points, Stroke: pen.Cut})
	}
	for _, e := range []placement.Ends{room.Near, room.Far} {
		d.b.Line(d.left(e.Left), d.right(e.Right), pen.Cut)
	}
}

func (d *rowOf) panels() {
	name := halfRow / 2.0 // on the side of the axis where the baseline is not
	if d.at.Y((d.at.Near+d.at.Far)/2) < 0 {
		name = -name
	}
	for i, p := range d.v.Panels.Get() {
		d.b.Poly(paper.Poly{
			Points: []paper.Point{d.point(p.Near, -halfRow), d.point(p.Far, -halfRow), d.point(p.Far, halfRow), d.point(p.Near, halfRow)},
			Closed: true, Tone: paper.Paper + 1, Stroke: pen.Fine,
		})
		d.b.Label(draft.Label{Text: d.v.Name(i), Of: d.point((p.Near+p.Far)/2, name), Inside: true})
	}
}

// baseline draws the axis of the row, and the baseline as far off it as the band has
// room for.
func (d *rowOf) baseline() {
	ends := d.ends()
	d.b.Line(d.point(d.at.Near, 0), d.point(d.at.Far, 0), pen.Bold)
	near, far := -d.at.Y(ends[0])*d.across, -d.at.Y(ends[1])*d.across
	most := max(math.Abs(near), math.Abs(far))
	if shown := halfRow - 2.0; most > shown {
		near, far = near*shown/most, far*shown/most
	}
	from, to := d.point(ends[0], near), d.point(ends[1], far)
	d.b.Line(from, to, pen.Centre)
	const share = 0.3
	d.b.Label(draft.Label{Text: "baseline", Of: paper.Point{X: from.X + share*(to.X-from.X), Y: from.Y + share*(to.Y-from.Y)}, Prefer: []draft.Side{draft.Above, draft.Below}})
	for _, end := range []struct {
		x, of float64
		side  draft.Side
	}{{d.at.Near, min(d.at.Near, ends[0]), draft.Left}, {d.at.Far, max(d.at.Far, ends[1]), draft.Right}} {
		off, way := d.at.Y(end.x), "right"
		if off < 0 {
			off, way = -off, "left"
		}
		text := fmt.Sprintf("axis %s\n%s of the\nbaseline", d.Length(off), way)
		if d.Length(off) == d.Length(0) {
			text = "axis on\nthe baseline"
		}
		d.b.Label(draft.Label{
			Text: text, Of: d.point(end.of, 0), Prefer: []draft.Side{end.side},
		})
	}
}

// readings writes the offset of each wall beside it, as far as they have room.
func (d *rowOf) readings() {
	const off = halfRow + gapShown + leastEnds + 0.0
	last := math.Inf(-1)
	from, to := d.reach()
	for _, s := range d.stations {
		x := d.point(s.At.Get(), 0).X
		if x-last < 2*draft.Ordinary || x < d.point(from, 0).X-beyondEnd || x > d.point(to, 0).X+beyondEnd {
			continue // the notes have all of them
		}
		last = x
		up, down := d.point(s.At.Get(), -off), d.point(s.At.Get(), off)
		d.b.Line(d.left(s.At.Get()), up, pen.Hair)
		d.b.Line(d.right(s.At.Get()), down, pen.Hair)
		for _, t := range []paper.Text{
			{At: paper.Point{X: x + draft.Ordinary/2, Y: up.Y - 1}, Text: d.Dim(s.Left.Get())},
			{At: paper.Point{X: x + draft.Ordinary/2, Y: down.Y + 1}, Text: d.Dim(s.Right.Get()), Anchor: paper.End},
		} {
			t.Height, t.Turn = draft.Ordinary, 90
			d.b.Write(t)
		}
	}
}

// bite puts the findings at the readings to their places.
func (d *rowOf) bite(places map[int]paper.Point) {
	room := d.Ceiling().Survey.Room.Get()
	for i, s := range d.stations {
		x := s.At.Get()
		key := func(rest ...any) string { return spec.Key(append([]any{"survey", "station", i + 1}, rest...)...) }
		d.Input.At(places, d.left(x), key("left"), key("seat", "left"))
		d.Input.At(places, d.right(x), key("right"), key("seat", "right"), key())
	}
	d.Input.At(places, d.left(room.Near.Left), "survey.near")
	d.Input.At(places, d.left(room.Far.Left), "survey.far.left")
	d.Input.At(places, d.right(room.Far.Right), "survey.far")
	d.Input.At(places, d.point((d.at.Near+d.at.Far)/2, -halfRow), "survey")
}

// notes are the readings, the gaps and the set-out.
func (d *rowOf) notes() []paper.Note {
	if d == nil {
		return nil
	}
	gaps := []string{"At their widest, at the near end and the far end of each."}
	for i, p := range d.v.Panels.Get() {
		gaps = append(gaps, fmt.Sprintf("%s: left %s, %s; right %s, %s", d.v.Name(i),
			d.Length(p.AtNear.Left), d.Length(p.AtFar.Left), d.Length(p.AtNear.Right), d.Length(p.AtFar.Right)))
	}
	var read []string
	for i, s := range d.stations {
		read = append(read, fmt.Sprintf("station %d at %s: left %s, right %s", i+1, d.Length(s.At.Get()), d.Length(s.Left.Get()), d.Length(s.Right.Get())))
	}
	first := d.v.First.Get()
	out := fmt.Sprintf("First gap %s left, %s right, along the baseline.", d.Length(first.Left), d.Length(first.Right))
	return []paper.Note{
		{Title: "As set out", Lines: []string{d.v.SetOut(), out}},
		{Title: "Gaps to the measured walls", Lines: gaps},
		{Title: "Readings", Lines: append([]string{d.taken()}, read...)},
	}
}

// taken says how and when the readings were taken.
func (d *rowOf) taken() string {
	s := d.Ceiling().Survey
	text := "Plus or minus " + d.Length(s.Accuracy.Get())
	if s.By.Given() {
		text += ", by " + s.By.Get()
	}
	if s.Date.Given() {
		text += ", on " + s.Date.Get()
	}
	return text + "."
}

// Parts are the figures of the plan: the row in the measured room is one of its own.
func Parts(in sheet.Input, _ draft.Size) ([]*sheet.Subject, error) {
	s, err := planWith(in, nil)
	row := row(in)
	if err != nil || row == nil {
		return []*sheet.Subject{s}, err
	}
	return []*sheet.Subject{s, row.subject()}, nil
}

// subject is the row alone.
func (d *rowOf) subject() *sheet.Subject {
	return &sheet.Subject{
		Name: "plan", Title: "The room as measured", About: "The row of panels between the walls as they were measured.",
		Wide: d.long(), Left: 10, Right: 10, Above: 4, Below: 4, LeastWide: d.wide(), LeastHigh: d.high(),
		Shows: []string{"survey"}, Notes: d.notes(),
		Draw: func(b *draft.Board, v draft.View) map[int]paper.Point {
			places := map[int]paper.Point{}
			d.draw(b, paper.Point{X: v.Origin.X, Y: v.Origin.Y - d.high()}, v.Scale, places)
			return places
		},
	}
}
