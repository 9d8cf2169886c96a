package transit

import (
	"errors"

	"dryfit/rules/engine"
	"dryfit/rules/kernel/passage"
	"dryfit/rules/model/result/carrying"
	"dryfit/spec/quantity"
)

// judge reports a leg that the panel does not pass, passes only tilted, or
// barely. What is not decided fails the spec as any figure does that could not
// be computed.
func judge(p *engine.Pass, l carrying.Leg) {
	limit, way := p.Limit("clearance"), l.Way.Get()
	if way.Needs != "" {
		p.Absent(l.At(way.Needs))
		return
	}
	switch way.Outcome {
	case passage.Cannot:
		f := engine.Finding{
			At: l.Key(), Related: []string{"panels.along", "panels.around"}, Offers: append(larger(p, l, way.Size, limit.SI), smaller(p)...),
			Text: p.Textf("the wrapped panel can't pass the %s: %s%s%s", l.Name.Get(), way.Bound, between(p, way), bare(way)),
		}
		p.Report(f)
	case passage.Undecided:
		p.Open(l.Key(), l.At("tried"), errors.New(undecided(p, l, way)))
	default:
		passed(p, l, way, limit)
	}
}

// touching is a margin, in m, that is none: half of what a figure is printed to.
const touching = 5e-5

// passed reports a leg that is passed with too little clearance, or only tilted.
func passed(p *engine.Pass, l carrying.Leg, way carrying.Way, limit engine.Bound) {
	f := engine.Finding{
		At: l.Key(), Related: []string{"panels.along", "wrap.allowance"}, Severity: engine.Query,
		Text:     p.Textf("the wrapped panel passes the %s %s, with {measured} to spare on each side; the minimum is {limit}", l.Name.Get(), way.Motion),
		Measured: quantity.Length(way.Margin).Value(), Bound: limit,
	}
	switch {
	case way.Tilted:
		spare := "and touches it"
		if way.Margin >= touching {
			spare = p.Textf("with %v to spare", quantity.Length(way.Margin))
		}
		f.Text = p.Textf("the wrapped panel passes the %s only %s, with its length up to %v off level and its chord up to %v, %s. Try it with a frame of laths first",
			l.Name.Get(), way.Motion, quantity.Angle(way.Length), quantity.Angle(way.Chord), spare)
		f.Measured, f.Bound = quantity.Value{}, engine.Bound{}
		p.Report(f)
	case way.Margin < limit.SI && way.Margin < touching:
		f.Text = p.Textf("the wrapped panel passes the %s %s and touches it; the minimum to spare on each side is {limit}", l.Name.Get(), way.Motion)
		p.Report(f)
	case way.Margin < limit.SI:
		p.Report(f)
	case way.Unfollowed:
		f.Text = p.Textf("the wrapped panel passes the flight and the landing's corner of the %s; the move from the flight onto the landing is not checked. Try it with a frame of laths first", l.Name.Get())
		f.Measured, f.Bound = quantity.Value{}, engine.Bound{}
		p.Report(f)
	default:
		around(p, l)
	}
}

func undecided(p *engine.Pass, l carrying.Leg, way carrying.Way) string {
	text := p.Textf("the search found no way through the %s and no proof that there is none", l.Name.Get()) + between(p, way) + bare(way)
	if way.Decides != "" {
		text += p.Textf("; %v is not stated and may decide it", l.At(way.Decides))
	}
	if way.RanOut {
		text += "; the search ended at its budget. Use check --thorough to search further"
	}
	return text
}

// between says what is known of the size that has to change least.
func between(p *engine.Pass, way carrying.Way) string {
	s := way.Size
	switch {
	case s.Key == nil && s.More == 0:
		return ""
	case s.Key == nil:
		return p.Textf("; the panel passes with all clear sizes larger by %v, %s", quantity.Length(p.Raised(s.More)), s.Motion)
	}
	is, passes := quantity.Length(s.Is), quantity.Length(p.Raised(s.Passes))
	if s.Impossible <= 0 {
		return p.Textf("; its %s is %v; at %v the panel passes %s", s.Name, is, passes, s.Motion)
	}
	return p.Textf("; the panel can't pass at %v and passes at %v %s; between the two nothing is known. Its %s is %v",
		quantity.Length(s.Impossible), passes, s.Motion, s.Name, is)
}

func bare(way carrying.Way) string {
	if way.Bare {
		return "; the panel passes without its wrap"
	}
	return ""
}
