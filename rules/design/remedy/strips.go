package remedy

import (
	"math"
	"slices"

	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
)

const (
	ribDepth = "rib.depth"
	ribStrip = "rib.lamination"
)

// dials are the ways to turn a key in a state of the spec. The depth of a
// laminated rib goes by whole strips, and its strips divide its depth, so that
// what is offered of one agrees with the other.
func (t *trial) dials(st *state, k knob, now any) []dial {
	plain := dialsFor(k.key, now, k.property)
	if k.key != ribDepth && k.key != ribStrip || t.value(st, "rib.construction") != "laminated" {
		return plain
	}
	depth, strip := lengthOf(t.value(st, ribDepth)), lengthOf(t.value(st, ribStrip))
	if k.key == ribDepth {
		if _, assumed, _ := t.base.now(ribStrip); assumed && !slices.Contains(keysOf(st.changes), ribStrip) {
			return plain // strips that nobody stated follow the depth
		}
		depth = lengthOf(now)
	}
	text, _ := now.(string)
	v, err := quantity.Parse(quantity.Metre, text)
	l := stripLadder(k.key, depth, strip, system(text))
	if err != nil || len(l.list) == 0 {
		return plain
	}
	return []dial{turned(k.key, v, quantity.Metre, k.property.Format, l)}
}

// lengthOf is a length as the spec writes it, in m; 0 where it is none.
func lengthOf(value any) float64 {
	text, _ := value.(string)
	v, err := quantity.Parse(quantity.Metre, text)
	if err != nil {
		return 0
	}
	return v.SI
}

// stripLadder is the depths that whole strips make up, or the strips that make
// up a depth, as a spec would write them: to a tenth of a millimetre or a
// thirty-second of an inch.
func stripLadder(key string, depth, strip float64, in quantity.System) ladder {
	l := ladder{unit: quantity.Metre}
	if depth <= 0 || strip <= 0 || depth/strip > layout.MostAlike {
		return l
	}
	write := lengths(ribStrip, in)
	if in == quantity.Metric {
		write.size = tenth.metre
	}
	// add puts a size in, if so many of what is written make up the depth.
	add := func(si, times, sum float64) {
		r, _ := write.from(math.Round(si/write.size)*write.size, 0)
		if r.si > 0 && math.Abs(times*r.si-sum) <= layout.StripSlack && (len(l.list) == 0 || r.si > l.list[len(l.list)-1].si) {
			l.list = append(l.list, r)
		}
	}
	if key == ribDepth {
		for n := max(1, math.Ceil(depth*least/strip)); n <= depth*most/strip; n++ {
			add(n*strip, 1, n*strip)
		}
		return l
	}
	for n := math.Floor(depth / (strip * least)); n >= max(1, depth/(strip*most)); n-- {
		add(depth/n, n, depth)
	}
	return l
}
