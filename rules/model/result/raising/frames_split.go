package raising

import (
	"fmt"
	"math"
	"slices"

	"dryfit/rules/kernel/curve"
	"dryfit/spec/quantity"
)

// apart is what the frames of a split arch do not answer for.
const apart = "How this piece gets from its chord to its final slope and onto its forks is not computed and not drawn; it is shown as it hangs."

// split are the frames of an arch in pieces: each on its edge and turned down onto the
// ends of its chord, those alike once; up on its lifts and on its straps; then all
// together.
func (f *framer) split(pieces []Piece) (out []Frame) {
	var turned []*framer
	for k, p := range pieces {
		f.piece = p
		f.take(f.c.Piece(k))
		g := f.onChord(k)
		if at := slices.IndexFunc(turned, g.alike); at < 0 {
			turned = append(turned, g)
			out = append(out, g.pieceTurned()...)
		} else {
			f.turnedAs = turned[at].piece.Piece
		}
		out = append(out, f.pieceUp(), f.pieceHung())
		f.turnedAs = 0
		f.hung = append(f.hung, f.outline)
	}
	return append(out, f.joined(pieces))
}

// onChord is the k-th piece with the chord of its intrados level, in the middle of the
// span, as it is turned down from its edge. It is flatter than it is long: who holds it on
// its way has the longer arm at the end that comes down.
func (f *framer) onChord(k int) *framer {
	g, v := *f, f.c.Vault
	from, to := f.c.Piece(k)
	a, b := v.Intrados.Get().At(from), v.Intrados.Get().At(to)
	chord := math.Hypot(b.Y-a.Y, b.Z-a.Z)
	cos, sin := (b.Y-a.Y)/chord, (b.Z-a.Z)/chord
	laid := func(p curve.Point) curve.Point {
		y, z := p.Y-a.Y, p.Z-a.Z
		return curve.Point{Y: (v.Span.Get()-chord)/2 + y*cos + z*sin, Z: z*cos - y*sin}
	}
	g.outline = nil
	for _, p := range f.outline {
		g.outline = append(g.outline, laid(p))
	}
	g.low, g.high = g.outline.Bounds()
	mass, centre := bare(f.c.Panel.Parts.Get()[k].Pieces)
	g.stance = stance{mass * quantity.Gravity, laid(centre), g.high.Y - g.low.Y, g.long(), "at the end that comes down", f.site.Turn(g.high.Y-g.low.Y, g.tall())}
	return &g
}

// pieceTurned is a piece that comes on its edge and is turned down onto its chord.
func (f *framer) pieceTurned() []Frame {
	comes, down := f.arrives(), f.turns()
	comes.Name = fmt.Sprintf("piece %d arrives on its edge", f.piece.Piece)
	down.Name = fmt.Sprintf("piece %d is turned down onto the ends of its chord", f.piece.Piece)
	return []Frame{comes, down}
}

// alike reports whether another piece is turned in the same way: as wide and as high,
// and as heavy to a hundredth.
func (f *framer) alike(o *framer) bool {
	const same = 1e-4 // m
	return math.Abs(f.stance.wide-o.stance.wide) < same && math.Abs(f.tall()-o.tall()) < same &&
		math.Abs(f.stance.weight-o.stance.weight) < o.stance.weight/100
}

func (f *framer) pieceUp() Frame {
	out := f.lifted(fmt.Sprintf("piece %d up, on its lifts", f.piece.Piece), f.c.Room.Height.Get(), slide(f.c).Get())
	out.Gap = f.ends()
	if f.turnedAs > 0 {
		out.Unknown = append(out.Unknown, fmt.Sprintf("It arrives and is turned down in the same way as piece %d.", f.turnedAs))
	}
	out.Unknown = append(out.Unknown, apart)
	level := f.c.Limit(levelLimit, Level)
	out.Until = "it stands as it will hang, within " + f.length(level) + " of level, and only those at the cranks are inside the hatching"
	return out
}

// ends is the gap at the ends of a piece: of the first beside the wall, of others at the
// seam with the piece before it.
func (f *framer) ends() Gap {
	if f.piece.Piece == 1 {
		return f.beside(f.c.Vault.Width.Get())
	}
	return Gap{"to the piece before it, in its place", f.c.Seam.Gap.Get()}
}

func (f *framer) pieceHung() Frame {
	by := slide(f.c).Get()
	out := f.lifted(fmt.Sprintf("piece %d over its place, on its straps, then its lifts down", f.piece.Piece), f.c.Room.Height.Get(), 0)
	out.After, out.Straps = f.stages(), f.lines()
	if by > 0 {
		out.GhostPlan = []curve.Region{box(f.low.Y, f.near-by, f.high.Y, f.far-by)}
		out.Unknown = append(out.Unknown, fmt.Sprintf("It slides by %s onto its neighbour's tenons; the force for this is not computed.", f.length(by)))
	}
	f.bases(&out, by)
	out.Gap = f.ends()
	out.Hands = append(out.Hands, Hands{"to fix straps, one at each edge rib", 2})
	out.Until = "all straps of the piece are tight on both ribs, their screws are in, and the engineer's release is signed: only then is a lift lowered"
	return out
}

// joined is the whole arch, each piece as it is carried by itself.
func (f *framer) joined(pieces []Piece) Frame {
	c, height := f.c, f.c.Room.Height.Get()
	f.piece = Piece{}
	f.take(0, c.Vault.Arc.Get())
	out := f.frame("the pieces joined")
	out.Of = c.RowName(f.row)
	out.With = withStraps
	for _, r := range f.hung {
		out.Elevation = append(out.Elevation, moved(r, 0, height))
	}
	out.Plan = []curve.Region{box(f.low.Y, f.near, f.high.Y, f.far)}
	for _, p := range pieces {
		f.piece = p
		out.Weight += 2 * p.Weight
		out.Straps = append(out.Straps, f.lines()...)
		out.Carried = append(out.Carried, f.carried(&p.Steps[len(p.Steps)-1].State)...)
	}
	out.Centre = Centre{Across: c.Panel.Centre.Get().Y, Along: (f.near + f.far) / 2, Up: height + c.Panel.Centre.Get().Z, FromEnd: f.t.along.Get()}
	out.Top = height + f.high.Z
	out.Gap = Gap{"between two pieces, as designed", c.Seam.Gap.Get()}
	out.Unknown = []string{
		"The forces are those of each piece by itself. dryfit computes neither the force that brings the pieces together nor whether lifts must stand under them meanwhile.",
		"Who joins them, and from where, is not computed.",
	}
	out.Until = "every seam of the arch is closed, and the engineer's release is signed"
	return out
}
