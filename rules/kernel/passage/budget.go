package passage

// Budget is what searches may still spend; nil is none. It is not of time, so that the
// same answer comes on every machine.
type Budget struct {
	Cells int // of covers and of motions that are tried
	Looks int // at poses up a stair, once no plain motion is found and its landing does not rule all out
}

// Spend takes n cells, and reports whether there were so many.
func (b *Budget) Spend(n int) bool {
	if b == nil || b.Cells < n {
		return false
	}
	b.Cells -= n
	return true
}

// statesACell is how many states of a coarse body cost what one cell of a cover
// does.
const statesACell = 20

// States lends up to so many states for what is left, and takes the cells of those
// that are spent.
func (b *Budget) States(most int, use func(*Budget)) {
	if b == nil {
		use(nil)
		return
	}
	given := min(most, statesACell*b.Cells)
	part := &Budget{Cells: given}
	use(part)
	b.Cells -= (given - part.Cells + statesACell - 1) / statesACell
}

// Spent reports whether nothing is left.
func (b *Budget) Spent() bool { return b == nil || b.Cells < 8 }
