package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/cmd/dryfit/internal/drawing/draft"
	"dryfit/cmd/dryfit/internal/drawing/paper"
	"dryfit/cmd/dryfit/internal/drawing/pen"
	"dryfit/cmd/dryfit/internal/drawing/sheet"
	"dryfit/cmd/dryfit/internal/drawing/wayin"
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/kernel/passage/space"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/spec/quantity"
)

// routeOf keeps what the sheet of the way in is drawn from.
type routeOf struct {
	sheet.Input
	legs         []legFigure
	columns      int
	wide, high   []float64 // of each column and row, in m
	b            *draft.Board
	places       map[int]paper.Point
	beyondLimits int  // legs that are not shown
	climbs       bool // a stair's landing is among the legs
	ascends      bool // a straight stair is shown along its flight
}

// legFigure is one leg, or the room, as it is drawn: its sights side by side, and
// what is said of it.
type legFigure struct {
	id     string
	margin float64 // the motion's
	keys   []string
	sights []*wayin.Sight
	lines  []string
	motion string
	passes bool
}

func (f *legFigure) wide() (sum float64) {
	for _, s := range f.sights {
		sum += s.High.X - s.Low.X
	}
	return sum
}

func (f *legFigure) high() (most float64) {
	for _, s := range f.sights {
		most = max(most, s.High.Y-s.Low.Y)
	}
	return most
}

// The sheet of the way in.
const (
	mostLegs   = 24
	routeScale = 50 // the usual one
	textBelow  = 34 // mm
	textWide   = 80 // mm, to stay in the figure's column
	legGap     = 12 // mm, between two columns
	sightGap   = 16 // mm, between two sights of a leg
	sightText  = 6  // mm, for the name of a sight

	motionLines = 2
	gapTick     = 0.8 // mm
)

// route is each leg of the way in, with the panel in the pose that passes or
// jams.
func route(in sheet.Input) (*sheet.Subject, error) {
	d, err := routeLegs(in)
	if err != nil {
		return nil, err
	}
	d.arrange()
	return d.subject(), nil
}

// routeOnPage is how many legs a page shows, in rows of one or two.
const routeOnPage = 4

// routeParts are the figures of the legs, a page each.
func routeParts(in sheet.Input, page draft.Size) ([]*sheet.Subject, error) {
	d, err := routeLegs(in)
	if err != nil {
		return nil, err
	}
	columns := 1
	if page == Lying {
		columns = 2
	}
	count := (len(d.legs) + routeOnPage - 1) / routeOnPage
	var out []*sheet.Subject
	for legs := range slices.Chunk(d.legs, (len(d.legs)+count-1)/count) {
		part := *d
		part.legs, part.columns = legs, min(columns, len(legs))
		part.wide, part.high = part.cells(part.columns)
		out = append(out, part.subject())
	}
	return out, nil
}

// routeLegs are the legs as they are drawn.
func routeLegs(in sheet.Input) (*routeOf, error) {
	d := &routeOf{Input: in}
	legs := in.Assessment.Results.Carrying()
	if len(legs) == 0 {
		return nil, &sheet.NeedsError{Sheet: "route", Key: "route"}
	}
	for i, l := range legs {
		if i == mostLegs {
			d.beyondLimits = len(legs) - i
			break
		}
		pose, ok := l.Way.Get().Pose()
		if ok {
			d.legs = append(d.legs, d.figure(l, pose))
			d.ascends = d.ascends || pose.Plane == carrying.Ascent
			d.climbs = d.climbs || l.Way.Get().Climbs && pose.Plane == carrying.Corner
		}
	}
	if c := in.Ceiling(); roomGiven(c) {
		d.legs = append(d.legs, d.room(c))
	}
	return d, nil
}

// subject is the sheet of the legs, once they are arranged.
func (d *routeOf) subject() *sheet.Subject {
	in, rows := d.Input, len(d.high)
	wrap := in.Length(in.Ceiling().Wrap.Allowance.Get())
	notes := []string{
		"The panel is drawn where its best motion is tightest. Dashed: its wrap of " + wrap + " on every side.",
		"Clearances are measured from the wrap. In the room the panel is bare, and the wrap is drawn for comparison. A leg that is not decided may pass by a motion that was not tried.",
		"A section is square to the opening, or along the route if the panel is threaded, turned or at rest. The section of a stair is square to its slope.",
	}
	if d.ascends {
		notes = append(notes, "The section of a straight stair on which the panel is turned is along its flight.")
	}
	if d.climbs {
		notes = append(notes, "The section of a stair's landing looks up the first flight. The part of the panel below the landing is over that flight.")
	}
	if d.beyondLimits > 0 {
		notes = append(notes, fmt.Sprintf("%d further legs are not shown; dryfit calcs lists them.", d.beyondLimits))
	}
	return &sheet.Subject{
		Name: "route", Title: "The route",
		About: fmt.Sprintf("Each of %d legs of the route, with the panel of %s in the pose of its best motion.", len(d.legs), in.Format(quantity.Mass(in.Ceiling().Panel.Mass.Get()).Value())),
		Wide:  sum(d.wide), High: sum(d.high),
		Left: 6, Right: 6 + legGap*float64(d.columns-1) + sightGap*float64(d.columns), LeastWide: textWide * float64(d.columns), Above: 4 + textBelow*float64(rows-1), Below: textBelow, Best: routeScale,
		Shows: []string{"route", "default.route", "wrap", "crew", "room.door", "panels.along", "room.length", "room.width"},
		Notes: []paper.Note{{Title: "How it is drawn", Lines: notes}},
		Draw:  d.draw,
	}
}

// arrange lays the figures in rows, of so many columns that they take the least of a
// paper's shape at the usual scale.
func (d *routeOf) arrange() {
	const shape, usual = 1.2, 1000 / routeScale
	least := math.Inf(1)
	for n := 1; n <= len(d.legs); n++ {
		wide, high := d.cells(n)
		across := (legGap+sightGap)*float64(n-1) + textBelow/2
		for _, w := range wide {
			across += max(w*usual+sightGap, textWide)
		}
		if takes := max(across/shape, sum(high)*usual+textBelow*float64(len(high))); takes < least {
			least, d.columns, d.wide, d.high = takes, n, wide, high
		}
	}
}

// cells are the widths of so many columns and the heights of the rows.
func (d *routeOf) cells(columns int) (wide, high []float64) {
	wide, high = make([]float64, columns), make([]float64, (len(d.legs)+columns-1)/columns)
	for i := range d.legs {
		column, row := &wide[i%columns], &high[i/columns]
		*column, *row = max(*column, d.legs[i].wide()), max(*row, d.legs[i].high())
	}
	return wide, high
}

func sum(sizes []float64) (all float64) {
	for _, s := range sizes {
		all += s
	}
	return all
}

// corner is the lower left corner on paper of the cell of a column and a row.
func (d *routeOf) corner(v draft.View, column, row int) paper.Point {
	out := v.At(0, sum(d.high[row+1:]))
	for _, w := range d.wide[:column] {
		out.X += max(v.Size(w)+sightGap, textWide) + legGap
	}
	out.Y -= textBelow * float64(len(d.high)-1-row)
	return out
}

// figure is what is drawn of a leg and said of it.
func (d *routeOf) figure(l carrying.Leg, pose carrying.Pose) legFigure {
	way, kind := l.Way.Get(), l.Kind.Get()
	f := legFigure{
		id: "leg-" + strings.ReplaceAll(l.Number(), ".", "-"), keys: []string{l.Prefix},
		margin: way.Margin, sights: wayin.Sights(l, pose), passes: way.Outcome == passage.Passes, motion: way.Motion,
	}
	name := l.Name.Get()
	if name == "" {
		name = "leg"
	}
	clear := d.Length(way.Margin) + " clear on every side"
	switch {
	case way.Margin < 0:
		clear = d.Length(-way.Margin) + " short on every side"
	case way.Climbs:
		clear = d.Length(way.Margin) + " or more clear on every side"
	}
	f.lines = []string{fmt.Sprintf("%s %s, %s", strings.Replace(l.Number(), "default.", "shop ", 1), show.Shown(name), kind), way.Outcome.String() + ", " + clear}
	if carrying.KindOf(kind).Loads && way.Load > 0 {
		f.lines = append(f.lines, fmt.Sprintf("panels in a load: %d; loads: %d", way.Load, way.Loads))
	}
	return f
}

// roomGiven reports whether the room's sizes are there.
func roomGiven(c *layout.Ceiling) bool {
	return c.Room.Width.Given() && c.Room.Length.Given() && c.Room.Height.Given()
}

// roomFigure is the name of the room's group.
const roomFigure = "leg-room"

// room is the last leg: the panel turns to its bearing, or tips down under it, and is
// drawn as it has most room for.
func (d *routeOf) room(c *layout.Ceiling) legFigure {
	r := d.Assessment.Results.Room()
	flat, tipped := r.Poses()
	long := max(c.Room.Width.Get(), c.Room.Length.Get()) - c.Room.Tolerance.Get()
	ways := []struct {
		words  string
		spare  float64
		sights []*wayin.Sight
	}{
		{"turned flat", r.Across - r.Flat, wayin.TurnedFlat(flat, r.Across, long, c.Room.Height.Get())},
		{"tipped down", c.Room.Height.Get() - r.Tipped, wayin.TippedDown(tipped, c.Room.Width.Get()-c.Room.Tolerance.Get(), c.Room.Height.Get())},
	}
	best := ways[0]
	f := legFigure{id: roomFigure, keys: []string{"room"}, lines: []string{"the room itself"}, passes: r.Passes}
	for _, w := range ways {
		if w.spare > best.spare {
			best = w
		}
		if w.spare < 0 {
			f.lines = append(f.lines, w.words+": "+d.Length(-w.spare)+" short")
		} else {
			f.lines = append(f.lines, w.words+": "+d.Length(w.spare)+" clear")
		}
	}
	f.sights, f.motion = best.sights, "drawn "+best.words
	return f
}

func (d *routeOf) draw(b *draft.Board, v draft.View) map[int]paper.Point {
	d.b, d.places = b, map[int]paper.Point{}
	for i := range d.legs {
		leg := &d.legs[i]
		corner := d.corner(v, i%d.columns, i/d.columns)
		b.Figure()
		b.In(leg.id, func() { d.leg(leg, draft.View{Scale: v.Scale, Origin: corner}) })
		d.text(leg, paper.Point{X: corner.X, Y: corner.Y + sightText + 4})
	}
	if len(d.legs) > 0 {
		first := d.corner(v, 0, 0)
		d.At(d.places, paper.Point{X: first.X + 4, Y: first.Y - v.Size(d.high[0])}, "route", "wrap", "crew", "room", "panels")
	}
	return d.places
}

// leg draws the sights of a leg, from the left.
func (d *routeOf) leg(f *legFigure, v draft.View) {
	least := 0
	for i, s := range f.sights {
		if s.Gap.Size < f.sights[least].Gap.Size {
			least = i
		}
	}
	corner := v.Origin
	for i, s := range f.sights {
		own := draft.View{Scale: v.Scale, Origin: paper.Point{X: corner.X - v.Size(s.Low.X), Y: corner.Y + v.Size(s.Low.Y)}}
		d.sight(f, s, own)
		d.b.Write(paper.Text{At: paper.Point{X: corner.X, Y: corner.Y + 4}, Height: draft.Ordinary, Text: s.Title})
		if g, ok := f.dimension(s); ok && (i == least || f.id == roomFigure) {
			d.gap(g, own, !f.passes)
		}
		at := s.Panel[len(s.Panel)/4]
		d.At(d.places, own.At(at.X, at.Y), f.keys...)
		corner.X += v.Size(s.High.X-s.Low.X) + sightGap
	}
}

// stations is how far the gap at the station of a motion that is drawn may be from
// its least one, in m: less than is seen on paper.
const stations = 0.01

// dimension is the gap of a sight as it is dimensioned: with the motion's margin,
// of which it is where that is tightest. There is none where the motion ends
// before what bars it, so that no station of it wants for room.
func (f *legFigure) dimension(s *wayin.Sight) (wayin.Gap, bool) {
	g := s.Gap
	if f.id != roomFigure && math.Abs(g.Size-f.margin) < stations {
		g.Size = f.margin
	}
	return g, f.passes || f.id == roomFigure || g.Size <= f.margin
}

// sight draws what is around the panel, the panel over it, and its wrap.
func (d *routeOf) sight(f *legFigure, s *wayin.Sight, v draft.View) {
	for _, w := range s.Solid {
		if w[2] > w[0] && w[3] > w[1] {
			d.b.Poly(paper.Poly{Points: v.Rectangle(w[0], w[1], w[2], w[3]), Closed: true, Tone: paper.Paper + 2, Stroke: pen.Edge})
		}
	}
	for _, line := range s.Lines {
		d.b.Poly(paper.Poly{Points: onPaper(v, line), Stroke: pen.Cut})
	}
	outline := paper.Stroke{Pen: paper.Bold, Marked: !f.passes}
	for _, q := range slices.Backward(s.Load) {
		d.b.Poly(paper.Poly{Points: onPaper(v, q), Closed: true, Tone: paper.Paper + 1, Stroke: pen.Fine})
	}
	d.b.Poly(paper.Poly{Points: onPaper(v, s.Panel), Closed: true, Tone: paper.Paper + 1, Stroke: outline})
	if s.Wrap > 0 {
		d.b.Poly(paper.Poly{Points: onPaper(v, wayin.Grown(s.Panel, s.Wrap)), Closed: true, Stroke: paper.Stroke{Pen: paper.Fine, Dash: paper.Hidden, Marked: !f.passes}})
	}
}

func onPaper(v draft.View, points []space.Point) (out []paper.Point) {
	for _, q := range points {
		out = append(out, v.At(q.X, q.Y))
	}
	return out
}

// gap dimensions the least one, where there is one.
func (d *routeOf) gap(g wayin.Gap, v draft.View, marked bool) {
	if math.IsInf(g.Size, 0) {
		return
	}
	from, to := v.At(g.From.X, g.From.Y), v.At(g.To.X, g.To.Y)
	for _, p := range []paper.Point{from, to} {
		d.b.Line(paper.Point{X: p.X - gapTick, Y: p.Y + gapTick}, paper.Point{X: p.X + gapTick, Y: p.Y - gapTick}, pen.Edge)
	}
	d.b.Line(from, to, pen.Hair)
	text := d.Dim(g.Size) + " gap"
	if g.Size < 0 {
		text = d.Dim(-g.Size) + " short"
	}
	d.b.Label(draft.Label{Text: text, Of: paper.Point{X: (from.X + to.X) / 2, Y: (from.Y + to.Y) / 2}, Marked: marked})
}

// text is the leg's name, its motion and its outcome, under the figure.
func (d *routeOf) text(f *legFigure, at paper.Point) {
	line := func(text string) {
		d.b.Write(paper.Text{At: at, Height: draft.Ordinary, Text: text})
		at.Y += draft.Leading(draft.Ordinary)
	}
	for _, t := range f.lines {
		line(paper.Cut(t, textWide, draft.Ordinary))
	}
	if f.motion == "" {
		return
	}
	motion := paper.Wrap(f.motion, textWide, draft.Ordinary)
	for i, t := range motion {
		if i == motionLines-1 && len(motion) > motionLines {
			line(paper.Cut(t+" …", textWide, draft.Ordinary))
			return
		}
		line(t)
	}
}
