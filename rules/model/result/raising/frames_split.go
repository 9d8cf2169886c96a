package raising

import (
	"fmt"

	"dryfit/rules/kernel/curve"
)

// apart is what the frames of a split arch do not answer for.
const apart = "How this piece comes, is turned and lies on its forks is not computed and not drawn: it is shown as it hangs."

// split are the frames of an arch in pieces: each up on its lifts and on its straps,
// then all together.
func (f *framer) split(pieces []Piece) (out []Frame) {
	for k, p := range pieces {
		f.piece = p
		f.take(f.c.Piece(k))
		out = append(out, f.pieceUp(), f.pieceHung())
		f.hung = append(f.hung, f.outline)
	}
	return append(out, f.joined(pieces))
}

func (f *framer) pieceUp() Frame {
	out := f.lifted(fmt.Sprintf("piece %d up, on its lifts", f.piece.Piece), f.c.Room.Height.Get(), slide(f.c).Get())
	out.Gap = f.ends()
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
		out.Unknown = append(out.Unknown, fmt.Sprintf("It slides by %s on to its neighbour's tenons; the force that takes is not computed.", f.length(by)))
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
		"The forces are those of each piece by itself. The force that brings the pieces together is not computed, nor whether lifts have to stand under them for it.",
		"Who joins them, and from where, is not computed.",
	}
	out.Until = "every seam of the arch is closed, and the engineer's release is signed"
	return out
}
