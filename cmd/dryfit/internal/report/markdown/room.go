package markdown

// Piece is a part of a comment that stands in it whole or not at all.
type Piece struct {
	Rank  rank
	Under []*Heading
	What  string   // what it is counted as where it is left out
	Forms []string // the text in full, then shorter, for where all of its rank have no room
}

// Heading stands above the first piece under it that has room.
type Heading struct {
	Text string
	open bool // there is such a piece
}

// rank is how much matters that a piece is read; the lowest has room first.
type rank uint8

const (
	Fails    rank = iota // what fails a file
	Loosens              // what lets a file pass that did not by the built-in limits
	Judged               // the verdicts on files that fail
	Asks                 // queries on files that fail
	Passes               // the verdicts on files that pass
	Remarks              // the rest that is found
	Appended             // what is folded away
	ranks
)

// Gathered are pieces in their order. A piece behind as much of its rank as two comments
// have room for is only counted.
type Gathered struct {
	pieces []Piece
	bytes  [ranks]int // of the pieces in their shortest forms, with their headings
	behind map[string]int
}

// Add adds pieces.
func (g *Gathered) Add(pieces ...Piece) {
	for _, p := range pieces {
		if g.bytes[p.Rank] > 2*Limit {
			if g.behind == nil {
				g.behind = map[string]int{}
			}
			g.behind[p.What]++
			continue
		}
		g.bytes[p.Rank] += p.least()
		g.pieces = append(g.pieces, p)
	}
}

// least is the length of the shortest form, with the heading right above it.
func (p Piece) least() int {
	n := len(p.form(len(p.Forms)))
	if above := len(p.Under); above > 0 {
		n += len(p.Under[above-1].Text)
	}
	return n
}

// RoomFor is the text of pieces in their order, in a number of bytes at most, and
// what had no room. Pieces of a lower rank have room first, whatever their order;
// where those of a rank have none in full, all of them are shorter.
func RoomFor(room int, parts ...*Gathered) (text string, left map[string]int) {
	var pieces []Piece
	left = map[string]int{}
	for _, g := range parts {
		pieces = append(pieces, g.pieces...)
		for what, n := range g.behind {
			left[what] += n
		}
	}
	form := make([]int, len(pieces))
	for r := range ranks {
		shorter := formFor(pieces, r, room)
		for i, p := range pieces {
			if p.Rank != r {
				continue
			}
			cost := len(p.form(shorter)) + p.heads(nil)
			if cost > room {
				form[i] = none
				left[p.What]++
				continue
			}
			room -= cost
			form[i] = shorter
			for _, h := range p.Under {
				h.open = true
			}
		}
	}
	return assembled(pieces, form), left
}

// none is the form of what has no room.
const none = -1

// formFor is the longest form in which all pieces of a rank have room; the
// shortest where they have it in none.
func formFor(pieces []Piece, r rank, room int) int {
	form := 0
	for more := true; more; form++ {
		total, opened := 0, map[*Heading]bool{}
		more = false
		for _, p := range pieces {
			if p.Rank == r {
				total += len(p.form(form)) + p.heads(opened)
				more = more || form+1 < len(p.Forms)
			}
		}
		if total <= room {
			return form
		}
	}
	return form - 1
}
