package placement

// stretch is the walls beside a strip whose ends are given, less half of its
// width: at an axis y = a + b·x the gaps are the left ones + a + b·x, and the right
// ones − a − b·x.
type stretch struct{ left, right Course }

func (r Room) over(s Strip, far float64) stretch {
	on := stretch{r.Left.Over(far-s.Length, far), r.Right.Over(far-s.Length, far)}
	for _, side := range []Course{on.left, on.right} {
		for i := range side {
			side[i].Y -= s.Half
		}
	}
	return on
}

// gaps are the extremes of both sides at a skew, at a = 0.
type gaps struct{ leftLeast, leftMost, rightLeast, rightMost line }

func (on stretch) at(b float64) (g gaps) {
	g.leftLeast, g.leftMost = on.left.extremes(1, b)
	g.rightLeast, g.rightMost = on.right.extremes(-1, b)
	return g
}

// skews are those that are searched; a survey is refused long before.
var skews = span{-1, 1}

// grain is how far apart two lengths may be and count as the same: far over
// round-off, far under what is measured.
const grain = 1e-10

// loose is how far under the greatest least gap the set-out may stay where that is
// less than its clearance. It is what the cosine of the skew, left out, is worth:
// without it a turn of the baseline by 2mm a metre would decide between places that
// are alike, and change the greatest gap of some rooms by more than 10mm.
const loose = 0.02e-3

// For each skew the least and the greatest of the gaps follow from four extremes,
// so that a linear programme in (a, b) and the gap is one over the skew alone, of a
// convex function of straight pieces.

// roomiest is the axis with the greatest least gap; of several the least skew.
func (on stretch) roomiest() (a, b float64) {
	shut := func(b float64) line { return on.at(b).shut() }
	b, least := skews.lowest(shut)
	b = skews.within(least+grain, shut, b).nearest(0)
	g := on.at(b)
	return (g.rightLeast.v - g.leftLeast.v) / 2, b
}

// setOut is the axis of the set-out.
func (on stretch) setOut(clearance float64) (a, b float64) {
	shut := func(b float64) line { return on.at(b).shut() }
	b, most := skews.lowest(shut)
	floor := min(clearance, -most-loose)
	left := skews.within(-floor, shut, b)

	open := func(b float64) line { return on.at(b).open(floor) }
	b, ceiling := left.lowest(open)
	ceiling += grain
	left = left.within(ceiling, open, b)

	shut = func(b float64) line { return on.at(b).shutWithin(ceiling) }
	b, most = left.lowest(shut)
	most += grain
	b = left.within(most, shut, b).nearest(0)
	return on.at(b).between(-most, ceiling).nearest(0), b
}

// between are the places of the axis at a skew whose gaps are at least and at most
// so much.
func (g gaps) between(floor, ceiling float64) span {
	return span{
		max(floor-g.leftLeast.v, g.rightMost.v-ceiling),
		min(g.rightLeast.v-floor, ceiling-g.leftMost.v),
	}
}

// shut is the greatest least gap at a skew, less than nothing where there is a
// gap: halfway between the walls.
func (g gaps) shut() line { return g.leftLeast.plus(g.rightLeast).times(-0.5) }

// open is the least greatest gap at a skew, the least gap being at least so much:
// halfway, or as far from it as the least gap on either side allows.
func (g gaps) open(floor float64) line {
	return highest(
		g.leftMost.plus(g.rightMost).times(0.5),
		g.leftMost.less(g.leftLeast).raised(floor),
		g.rightMost.less(g.rightLeast).raised(floor),
	)
}

// shutWithin is shut, the greatest gap being at most so much.
func (g gaps) shutWithin(open float64) line {
	return highest(
		g.shut(),
		g.leftMost.less(g.leftLeast).raised(-open),
		g.rightMost.less(g.rightLeast).raised(-open),
	)
}
