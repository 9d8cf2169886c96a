package hanging

import (
	"fmt"
	"slices"

	"dryfit/rules/model/calcs"
	"dryfit/rules/model/figure"
	"dryfit/rules/model/layout"
	"dryfit/spec/quantity"
	"dryfit/spec/record"
)

// governs heads what is worst of all cases.
const governs = "hanging: governing cases"

// Figures are the straps' table of the calculation sheet: by case the force of
// each strap, the sag and the feet, and what governs. What has no result has no
// line.
func (h *Hanging) Figures(c *layout.Ceiling) []figure.Figure {
	l := lines{calcs.New(c, ""), c}
	one(l, h.Raised)
	one(l, h.Alone)
	if first := h.First.Get(); first.Err == nil {
		l.table(&first.Is.Case, h.First.From)
	}
	many(l, h.Lowered, unset)
	one(l, h.Packed)
	strapwise(l, h.Seated, "hanging: with the ledgers packed to the measured seats", "seated", "")
	many(l, h.Lost, all)
	many(l, h.LostPack, all)
	many(l, h.Set, func(s Setting) []Case { return s.Cases })
	many(l, h.Moved, all)
	many(l, h.Seasonal, unset)
	strapwise(l, h.Seasonal, "hanging: in the seasons, with no strap or one strap set long or short", "season", "; not combined with moved framing")
	l.Subject = governs
	h.worst(l)
	h.others(l)
	h.framed(l)
	return l.List
}

func all(list []Case) []Case { return list }

// unset leaves out the cases with a strap set.
func unset(list []Case) []Case {
	return slices.DeleteFunc(slices.Clone(list), func(k Case) bool { return k.Strap > 0 })
}

// strapwise adds the greatest force of each strap over a list of cases, if the rib hangs
// in them.
func strapwise(l lines, v Solved[[]Case], subject, key, but string) {
	s := v.Get()
	if s.Err != nil || len(s.Is) == 0 {
		return
	}
	l.Subject = subject
	for i := range s.Is[0].Straps {
		force, in := worstOf(i, s.Is)
		l.add(fmt.Sprintf("hanging.%s.strap.%d", key, i+1), fmt.Sprintf("F_%d", i+1), fmt.Sprintf("greatest force of strap %d: %s", i+1, in.Words()),
			quantity.Force(force).Value(), v.From(), in.method()+but)
	}
}

// worstOf is the greatest force of one strap, counted from 0, and the case that has
// it; of several alike, the first.
func worstOf(strap int, cases []Case) (force float64, in *Case) {
	in = &cases[0]
	for k := range cases {
		if cases[k].Straps[strap] > in.Straps[strap]*(1+Alike) {
			in = &cases[k]
		}
	}
	return in.Straps[strap], in
}

// one adds a case that there may be.
func one(l lines, v Solved[*Case]) {
	if s := v.Get(); s.Err == nil && s.Is != nil && (s.Is.Straps != nil || s.Is.Lifts != nil) {
		l.table(s.Is, v.From)
	}
}

// many adds those of a list that the rib hangs in.
func many[T any](l lines, v Solved[T], list func(T) []Case) {
	s := v.Get()
	if s.Err != nil {
		return
	}
	for _, k := range pointers(list(s.Is)) {
		if k.Straps != nil {
			l.table(k, v.From)
		}
	}
}

// lines collects figures.
type lines struct {
	*calcs.Lines
	c *layout.Ceiling
}

// add puts a figure on the sheet, of a result that comes from some keys.
func (l lines) add(key, symbol, name string, v quantity.Value, from record.Set, method string) {
	l.Add(key, symbol, name, func(f *figure.Figure) figure.Measure {
		f.Method = method
		return calcs.Solved(l.c, v, from)
	})
}

// table is the figures of one case.
func (l lines) table(k *Case, keys func() record.Set) {
	l.Subject = "hanging: " + k.Words()
	from, plane := keys(), k.method()
	add := func(key, symbol, name string, v quantity.Value, method string) {
		l.add("hanging."+k.Key()+"."+key, symbol, name, v, from, method)
	}
	for i, f := range k.Straps {
		method := plane
		if k.Slack[i] {
			method += "; slack"
		}
		add(fmt.Sprintf("strap.%d", i+1), fmt.Sprintf("F_%d", i+1), fmt.Sprintf("force of strap %d", i+1), quantity.Force(f).Value(), method)
	}
	each := max(1, len(l.c.Lift.Stations.Get()))
	for i, f := range k.Lifts {
		name := fmt.Sprintf("force of lift %d, both ribs", i%each+1)
		if piece := k.Over(i, each); piece > 0 {
			name = fmt.Sprintf("force of lift %d under piece %d, both ribs", i%each+1, piece)
		}
		add(fmt.Sprintf("lift.%d", i+1), fmt.Sprintf("L_%d", i+1), name, quantity.Force(2*f).Value(), plane)
	}
	for i, f := range k.Free {
		add(fmt.Sprintf("free.%d", i+1), fmt.Sprintf("u_%d", i+1), fmt.Sprintf("rise of strap %d's point by the season alone", i+1), quantity.Length(f).Value(),
			"centre line of a rib that is free of its straps, relative to the line of the end straps; the strap becomes too long by this distance")
	}
	if k.Kind != InSeason { // whose shape is not that of the frame alone
		l.sags(k, add)
		add("feet", "f", "movement of each foot, + outward", quantity.Length(k.Feet).Value(), plane)
	}
	if k.hung() {
		add("margin", "m", "tipping margin", quantity.Share(k.Margin).Value(), "distance from the mass centre to the nearer outermost support that carries 0.5% of the weight or more, divided by the distance between these supports")
	}
	add("moment", "M", "greatest bending moment", quantity.Value{SI: k.Moment, Unit: quantity.NewtonMetre}, plane)
	stress := 0.0
	joints := l.c.Recorded(func() { stress = k.Stress(Jointed(l.c)) })
	if stress > 0 {
		l.add("hanging."+k.Key()+".stress", "σ", "greatest stress of the rib", quantity.Stress(stress).Value(), from.Or(joints), "|N|/A + |M|/S")
	}
	add("radial", "σ_r", "greatest tension across the grain", quantity.Stress(k.Radial).Value(), "3·M/(2·R·b·d), where the moment opens the curve")
}

// sags are the greatest, and that which is the greatest by its run, each with its
// run.
func (l lines) sags(k *Case, add func(key, symbol, name string, v quantity.Value, method string)) {
	const method, run = "drop below the chord between supports, plus 0.6 of it for creep", "between supports; twice the overhang past an end support"
	add("sag", "δ", "greatest sag of all runs, with long-term creep", quantity.Length(k.Sag.Drop).Value(), method)
	add("sag-run", "u", "the run with this sag", quantity.Length(k.Sag.Run).Value(), run)
	add("sag-by-run", "δ_u", "sag that is the greatest share of its run, with long-term creep", quantity.Length(k.ByRun.Drop).Value(), method)
	add("sag-by-run-run", "u_u", "the run with this sag", quantity.Length(k.ByRun.Run).Value(), run)
}

// worst is the greatest force of all cases, and of those with a strap lost.
func (h *Hanging) worst(l lines) {
	var cases []*Case
	var err error
	from := l.c.Recorded(func() { cases, err = h.Envelope() })
	if err == nil {
		force, n, in := Worst(cases)
		l.add("hanging.worst", "F_w", fmt.Sprintf("worst strap force: strap %d %s", n, in.Words()), quantity.Force(force).Value(), from, "the cases as first hung, with packed ledgers, with a strap set long or short, with moved framing, and in the seasons; moved framing and a season are not combined")
	}
	lost := h.Lost.Get()
	if force, n, in := Worst(pointers(lost.Is)); lost.Err == nil && in != nil {
		l.add("hanging.worst-lost", "F_l", fmt.Sprintf("worst strap force with one strap lost: strap %d %s", n, in.Words()), quantity.Force(force).Value(), h.Lost.From(), "each strap taken away in turn")
	}
}

// others are what setting does, and the thrust of feet that are held.
func (h *Hanging) others(l lines) {
	if s := h.Set.Get(); s.Err == nil {
		for i, change := range s.Is.Changes {
			l.setting(i+1, change, h.Set.From())
		}
		for i, change := range s.Is.Changes {
			l.settingRate(i+1, change, h.Set.From())
		}
	}
	if t := h.Thrust.Get(); t.Err == nil && t.Is != nil {
		l.add("hanging.feet-blocked.thrust", "H", "thrust of one edge rib on each wall, if the feet can't move; referred to the engineer", quantity.Force(*t.Is).Value(), h.Thrust.From(), "both feet held")
	}
}

// setting is what setting one strap does to its own force.
func (l lines) setting(strap int, change Change, from record.Set) {
	by := l.c.Units.Format(quantity.Length(l.c.Strap.Setting.Get()).Value())
	l.add("hanging.setting"+afterFirst(strap), fmt.Sprintf("ΔF_%d", strap), fmt.Sprintf("change of strap %d's force for %s of setting", strap, by),
		quantity.Force(change.Most).Value(), from, "solved with the strap set "+words[change.Way].strap)
}

// settingRate is that of the least setting.
func (l lines) settingRate(strap int, change Change, from record.Set) {
	l.add("hanging.setting-rate"+afterFirst(strap), fmt.Sprintf("s_%d", strap), fmt.Sprintf("change of strap %d's force per length of setting, near zero", strap),
		quantity.Value{SI: change.Rate, Unit: quantity.NewtonPerMetre}, from, "the tangent, before any strap goes slack or tight")
}

// afterFirst is the end of the key of a strap's figure, which the first goes without.
func afterFirst(strap int) string {
	if strap == 1 {
		return ""
	}
	return fmt.Sprintf(".%d", strap)
}

func pointers(list []Case) []*Case {
	out := make([]*Case, len(list))
	for i := range list {
		out[i] = &list[i]
	}
	return out
}
