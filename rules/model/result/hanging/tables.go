package hanging

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"dryfit/rules/kernel/frame"
	"dryfit/rules/model/figure"
	"dryfit/spec/quantity"
)

// frames heads what an engineer puts into a frame program, and what it should
// find.
const frames = "hanging: the frames, for a structural analysis program"

// abreast is how many reactions a table has side by side.
const abreast = 5

// framed is the section that all frames have.
func (h *Hanging) framed(l lines) {
	l.Subject = frames
	l.Where(func() bool { return len(h.Cases()) > 0 }, func() { l.section() })
}

func (l lines) section() {
	var s Section
	from := l.c.Recorded(func() { s = newSection(l.c).Section })
	const wood, half = "of the species", "half a rib, its layers side by side, less the groove of a reveal"
	area := func(m2 float64) quantity.Value { return quantity.Value{SI: m2, Unit: quantity.SquareMetre} }
	l.add("hanging.frame.E", "E", "modulus of elasticity, without shear strain", quantity.Stress(s.E).Value(), from, wood)
	l.add("hanging.frame.G", "G", "shear modulus", quantity.Stress(s.G).Value(), from, wood)
	l.add("hanging.frame.A", "A", "area of the section", area(s.A), from, half)
	l.add("hanging.frame.A_s", "A_s", "area in shear", area(s.Shear), from, "5/6 of the area, as of a rectangle")
	l.add("hanging.frame.I", "I", "second moment of area", quantity.Value{SI: s.I, Unit: quantity.MetreToTheFourth}, from, half)
}

// Tables are the loads of the frames, then what holds each and the reactions in
// each of its cases. There are none where nothing is solved.
func (h *Hanging) Tables() []figure.Table {
	all := h.Frames()
	if len(all) == 0 {
		return nil
	}
	out := []figure.Table{loads(all)}
	for i := range all {
		out = append(out, all[i].held())
		out = append(out, all[i].reactions()...)
	}
	return out
}

func row(label string, values ...quantity.Value) figure.Row {
	return figure.Row{Label: label, Values: values}
}

func number(n int) quantity.Value { return quantity.Value{SI: float64(n), Unit: quantity.One} }

func loads(all []Frame) figure.Table {
	t := figure.Table{
		Key: "hanging.frames", Title: "own weight of each frame", Subject: frames,
		Head: []string{"frame", "members", "least", "most", "on members", "on nodes", "weight"},
		Note: "For one rib. Least and most: load along a member, per length of the member. On nodes: the rails. The load of each node and member, and the couples of loads off the centre line, are under model in calcs --format json.",
	}
	for i := range all {
		f := &all[i]
		nodes, members := f.weights()
		least, most := f.spread()
		t.Rows = append(t.Rows, row(f.Key, number(len(f.Model.Elements)), perMetre(least), perMetre(most),
			quantity.Force(members).Value(), quantity.Force(nodes).Value(), quantity.Force(nodes+members).Value()))
	}
	return t
}

func perMetre(load float64) quantity.Value {
	return quantity.Value{SI: load, Unit: quantity.NewtonPerMetre}
}

// weights are the loads on nodes and those along members, downward.
func (f *Frame) weights() (nodes, members float64) {
	for _, l := range f.Loads {
		nodes -= l.Y
	}
	for _, l := range f.Spread {
		e := f.Model.Elements[l.Element]
		members -= l.Y * distance(f.Model.Nodes[e.I], f.Model.Nodes[e.J])
	}
	return nodes, members
}

// spread is the least and the greatest load along a member, downward.
func (f *Frame) spread() (least, most float64) {
	least = math.Inf(1)
	for _, l := range f.Spread {
		least, most = min(least, -l.Y), max(most, -l.Y)
	}
	return least, most
}

// held is where the springs and supports of a frame are.
func (f *Frame) held() figure.Table {
	t := figure.Table{
		Key: "hanging.frame." + f.Key + ".held", Title: "frame " + f.Key + ", " + f.Words + ": supports", Subject: frames,
		Head: []string{"place", "across", "up", "stiffness"},
		Note: "Places are on the rib's centre line, measured from the left end of the springing line. Straps carry tension only; ledgers and lifts carry compression only; all are plumb.",
	}
	at := func(name string, node int, stiffness float64) {
		p := f.Model.Nodes[node]
		t.Rows = append(t.Rows, row(name, quantity.Length(p.X).Value(), quantity.Length(p.Y).Value(), perMetre(stiffness)))
	}
	for i, s := range f.Model.Springs {
		if slices.ContainsFunc(f.Cases, func(a Answer) bool { return a.Has(i) }) {
			at(f.Springs[i], s.Node, s.Stiffness)
		}
	}
	if len(f.Model.Supports) == 1 {
		t.Note += " The " + f.support(f.Model.Supports[0]) + " is held only so that the frame does not move, and carries no force."
	}
	for _, s := range f.Model.Supports {
		at(f.support(s)+", sideways", s.Node, math.Inf(1))
	}
	return t
}

// support names a support, all of which hold sideways.
func (f *Frame) support(s frame.Support) string {
	switch s.Node {
	case 0:
		return "left foot"
	case len(f.Model.Nodes) - 1:
		return "right foot"
	default:
		return "middle"
	}
}

// reactions are tables of the forces on the rib of all that holds it, case by
// case: one of the cases on lifts, one of those on straps, one of those on straps
// and ledgers, each in as many as it takes side by side.
func (f *Frame) reactions() (out []figure.Table) {
	var groups [][]Answer
	for _, a := range f.Cases {
		at := slices.IndexFunc(groups, func(g []Answer) bool { return slices.Equal(g[0].kinds(), a.kinds()) })
		if at < 0 {
			at, groups = len(groups), append(groups, nil)
		}
		groups[at] = append(groups[at], a)
	}
	for n, g := range groups {
		t := f.table(g)
		if n > 0 {
			t.Key += fmt.Sprintf(".%d", n+1)
		}
		out = append(out, split(t)...)
	}
	return out
}

// kinds are those of the springs that the case has.
func (a *Answer) kinds() (out []kind) {
	for i, k := range a.of.rib.kinds {
		if a.Has(i) && !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	return out
}

// list names kinds of springs.
func list(kinds []kind) string {
	words := map[kind]string{strapKind: "straps", ledgerKind: "ledgers", liftKind: "lifts"}
	var out []string
	for _, k := range kinds {
		out = append(out, words[k])
	}
	return strings.Join(out, " and ")
}

// table is the reactions of some cases that have springs of the same kinds. A
// single support holds nothing, as all else is plumb.
func (f *Frame) table(cases []Answer) figure.Table {
	t := figure.Table{
		Key: "hanging.frame." + f.Key + ".reactions", Title: "frame " + f.Key + ": reactions of " + list(cases[0].kinds()), Subject: frames,
		Head: []string{"case"},
		Note: "On one rib, upward. The sum is the weight.",
	}
	for _, a := range cases {
		t.Rows = append(t.Rows, row(a.Words()))
	}
	column := func(head string, of func(a *Answer) float64) {
		t.Head = append(t.Head, head)
		for i := range cases {
			t.Rows[i].Values = append(t.Rows[i].Values, quantity.Force(of(&cases[i])).Value())
		}
	}
	for i := range f.Model.Springs {
		if slices.ContainsFunc(cases, func(a Answer) bool { return a.Has(i) }) {
			column(f.Springs[i], func(a *Answer) float64 { return a.upward(i) })
		}
	}
	if len(f.Model.Supports) > 1 {
		column("thrust", func(a *Answer) float64 { return a.Supports[0] })
		t.Note += " Thrust: inward on each foot."
	}
	column("sum", (*Answer).held)
	return t
}

// upward is the force of a spring on the rib.
func (a *Answer) upward(spring int) float64 {
	if !a.Has(spring) {
		return 0
	}
	return a.Springs[spring].Force * a.of.model.Springs[spring].Toward.Y
}

func (a *Answer) held() (sum float64) {
	for i := range a.Springs {
		sum += a.upward(i)
	}
	return sum
}

// split breaks a table that has more columns than lie side by side.
func split(t figure.Table) (out []figure.Table) {
	columns := len(t.Head) - 2 // but the label and the sum
	parts := (columns + abreast - 1) / abreast
	each := (columns + parts - 1) / parts
	for from := 0; from < columns; from += each {
		to := min(from+each, columns)
		part := t
		if to == columns {
			to++
		} else {
			part.Note = ""
		}
		part.Head = append(t.Head[:1:1], t.Head[1+from:1+to]...)
		part.Rows = nil
		for _, r := range t.Rows {
			part.Rows = append(part.Rows, row(r.Label, r.Values[from:to]...))
		}
		if from > 0 {
			part.Key, part.Title = fmt.Sprintf("%s.from-%d", t.Key, from+1), t.Title+", continued"
		}
		out = append(out, part)
	}
	return out
}

// frame names the frame that a case is of, as the JSON does.
func (c *Case) frame() string {
	if len(c.answers) > 1 {
		return fmt.Sprintf("frames piece-1 to piece-%d", len(c.answers))
	}
	return "frame " + c.answers[0].of.title.key
}

// method is how the figures of a case are come by.
func (c *Case) method() string { return c.frame() + ", case " + c.Key() }
