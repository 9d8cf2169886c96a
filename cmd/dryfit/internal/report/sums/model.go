package sums

import (
	"dryfit/cmd/dryfit/internal/report/show"
	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/result/hanging"
)

func point(x, y float64) jsonPoint { return jsonPoint{show.JSONNumber(x), show.JSONNumber(y)} }

func modelJSON(frames []hanging.Frame) *jsonModel {
	if len(frames) == 0 {
		return nil
	}
	out := &jsonModel{Units: jsonUnits{"m", "N", "rad"}}
	for i := range frames {
		out.Frames = append(out.Frames, frameJSON(&frames[i]))
	}
	return out
}

var (
	holdsWords = map[frame.Direction]string{frame.AlongX: "x", frame.AlongY: "y", frame.Turning: "turn"}
	worksWords = map[frame.Sense]string{frame.BothWays: "both", frame.TensionOnly: "tension", frame.CompressionOnly: "compression"}
)

func frameJSON(f *hanging.Frame) jsonFrame {
	s := f.Section
	out := jsonFrame{
		Key: f.Key, Name: f.Words,
		Section:  jsonSection{show.JSONNumber(s.E), show.JSONNumber(s.G), show.JSONNumber(s.A), show.JSONNumber(s.I), show.JSONNumber(s.Shear)},
		Supports: []jsonSupport{}, Springs: []jsonSpring{},
		Weight: weightJSON(f),
	}
	for _, n := range f.Model.Nodes {
		out.Nodes = append(out.Nodes, point(n.X, n.Y))
	}
	for _, e := range f.Model.Elements {
		out.Members = append(out.Members, jsonMember{e.I + 1, e.J + 1, e.FreeI, e.FreeJ})
	}
	for _, s := range f.Model.Supports {
		out.Supports = append(out.Supports, jsonSupport{s.Node + 1, holdsWords[s.Direction]})
	}
	for i, s := range f.Model.Springs {
		out.Springs = append(out.Springs, jsonSpring{f.Springs[i], s.Node + 1, point(s.Toward.X, s.Toward.Y), show.JSONNumber(s.Stiffness), worksWords[s.Sense]})
	}
	for i := range f.Cases {
		out.Cases = append(out.Cases, caseJSON(&f.Cases[i]))
	}
	return out
}

func weightJSON(f *hanging.Frame) jsonWeight {
	out := jsonWeight{Nodes: []jsonNodeLoad{}, Members: []jsonMemberLoad{}}
	for _, l := range f.Loads {
		out.Nodes = append(out.Nodes, jsonNodeLoad{l.Node + 1, point(l.X, l.Y), show.JSONNumber(l.Couple)})
	}
	for _, l := range f.Spread {
		out.Members = append(out.Members, jsonMemberLoad{l.Element + 1, point(l.X, l.Y)})
	}
	return out
}

func caseJSON(a *hanging.Answer) jsonCase {
	out := jsonCase{Key: a.Key(), Name: a.Words(), Springs: []jsonForce{}, Supports: []show.JSONNumber{}}
	for i, s := range a.Springs {
		if a.Has(i) {
			out.Springs = append(out.Springs, jsonForce{i + 1, show.JSONNumber(a.Longer(i)), show.JSONNumber(s.Force), s.Slack})
		}
	}
	for _, f := range a.Supports {
		out.Supports = append(out.Supports, show.JSONNumber(f))
	}
	for _, n := range a.Nodes {
		out.Moves = append(out.Moves, jsonMove{point(n.X, n.Y), show.JSONNumber(n.Turn)})
	}
	return out
}
