package transit

import (
	"dryfit/rules/engine"
	"dryfit/rules/model/layout"
	"dryfit/rules/model/result/carrying"
	"dryfit/spec/quantity"
)

// around compares the free depth before a door and beyond it, and the free width
// beside it, with what the motion takes.
func around(p *engine.Pass, l carrying.Leg) {
	if !carrying.KindOf(l.Kind.Get()).Deep {
		return
	}
	way := l.Way.Get()
	for _, side := range []struct {
		key, words string
		free       layout.Number
		takes      float64
	}{
		{"before", "of free depth on this side", l.Before, way.Depth},
		{"after", "of free depth on this side", l.After, way.Depth},
		{"beside", "of free width beside the opening", l.Beside, way.Side},
	} {
		key := l.At(side.key)
		switch {
		case side.takes == 0:
		case !side.free.Given():
			p.Absent(key)
		case side.free.Get() < side.takes:
			p.Report(engine.Finding{
				At: key, Severity: engine.Query,
				Text:     "the " + l.Name.Get() + " needs at least {measured} " + side.words + "; there is {limit}",
				Measured: quantity.Length(side.takes).Value(), Bound: p.Stated(key, quantity.Length(side.free.Get()).Value()),
			})
		}
	}
}

// larger offers the least size of the leg with which a motion is known, and one with so
// much clearance on both sides. No spec changes what the standards give.
func larger(p *engine.Pass, l carrying.Leg, s carrying.Size, clearance float64) []engine.Offer {
	if s.Key == nil || l.Own() {
		return nil
	}
	key := l.At(s.Key...)
	return []engine.Offer{{Key: key, Value: p.Above(s.Passes)}, {Key: key, Value: p.Above(s.Passes + 2*clearance)}}
}

// smaller offers panels of fewer modules, and arches in two pieces.
func smaller(p *engine.Pass) []engine.Offer {
	g := p.Ceiling.Panel
	var offers []engine.Offer
	for n := g.Along.Get() + 1; n <= p.Ceiling.Grid.Along.Get(); n++ {
		if p.Ceiling.Grid.Along.Get()%n == 0 {
			offers = append(offers, engine.Offer{Key: "panels.along", Value: int64(n)})
		}
	}
	return append(offers, engine.Offer{Key: "panels.around", Value: int64(2 * g.Around.Get())})
}
