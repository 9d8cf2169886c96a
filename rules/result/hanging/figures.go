package hanging

import (
	"fmt"

	"dryfit/rules/figure"
	"dryfit/rules/layout"
	"dryfit/spec/quantity"
)

// Figures are the straps' table of the calculation sheet: by case the force of
// each strap, the sag and the feet, and what governs.
func (h *Hanging) Figures(c *layout.Ceiling) []figure.Figure {
	var out []figure.Figure
	assumed := false
	for _, key := range []string{"strap.setting", "rail.depth", "skin.thickness", "climate.shop"} {
		_, a := c.AssumedAt(key)
		assumed = assumed || a
	}
	add := func(key, symbol, name, subject string, v quantity.Value, method string) {
		out = append(out, figure.Figure{Key: key, Symbol: symbol, Name: name, Subject: subject, Value: v, Method: method, Assumed: assumed})
	}
	const frame = "plane frame of one edge rib"
	table := func(k *Case) {
		subject := "hanging: " + k.Words()
		for i, f := range k.Straps {
			method := frame
			if k.Slack[i] {
				method += "; slack"
			}
			add(fmt.Sprintf("hanging.%s.strap.%d", k.Key(), i+1), fmt.Sprintf("F_%d", i+1), fmt.Sprintf("force of strap %d", i+1), subject, quantity.Force(f).Value(), method)
		}
		for i, f := range k.Lifts {
			add(fmt.Sprintf("hanging.%s.lift.%d", k.Key(), i+1), fmt.Sprintf("L_%d", i+1), fmt.Sprintf("force of lift %d, both ribs", i+1), subject, quantity.Force(2*f).Value(), frame)
		}
		add("hanging."+k.Key()+".sag", "δ", "greatest sag by its run, with the creep of years", subject, quantity.Length(k.Sag).Value(), "drop below the chord between supports, and 0.6 of it for creep")
		add("hanging."+k.Key()+".feet", "f", "movement of each foot, + outward", subject, quantity.Length(k.Feet).Value(), frame)
		add("hanging."+k.Key()+".moment", "M", "greatest bending moment", subject, quantity.Value{SI: k.Moment, Unit: quantity.NewtonMetre}, frame)
		add("hanging."+k.Key()+".stress", "σ", "greatest stress of the rib", subject, quantity.Stress(k.Stress).Value(), "|N|/A + |M|/S")
		add("hanging."+k.Key()+".radial", "σ_r", "greatest tension across the grain", subject, quantity.Stress(k.Radial).Value(), "3·M/(2·R·b·d), where the moment opens the curve")
	}
	for _, k := range h.all() {
		if k.Straps != nil || k.Lifts != nil {
			table(k)
		}
	}
	force, n, in := Worst(h.Envelope())
	add("hanging.worst", "F_w", fmt.Sprintf("worst strap force: strap %d %s", n, in.Words()), "hanging: what governs", quantity.Force(force).Value(), "first hung, packed, set, framing moved")
	if lost := pointers(h.Lost); len(lost) > 0 {
		if force, n, in := Worst(lost); in != nil {
			add("hanging.worst-lost", "F_l", fmt.Sprintf("worst with one lost: strap %d %s", n, in.Words()), "hanging: what governs", quantity.Force(force).Value(), "each strap taken away in turn")
		}
	}
	for i, f := range h.PerMM {
		key := fmt.Sprintf("hanging.setting.%d", i+1)
		if i == 0 {
			key = "hanging.setting"
		}
		add(key, fmt.Sprintf("s_%d", i+1), fmt.Sprintf("change of strap %d's force by each mm of setting", i+1), "hanging: what governs", quantity.Force(f).Value(), "the strap set long and short")
	}
	if h.Thrust != nil {
		add("hanging.feet-blocked.thrust", "H", "thrust of one edge rib on each wall, if the feet can't move: for the engineer", "hanging: what governs", quantity.Force(*h.Thrust).Value(), "both feet held")
	}
	return out
}

func pointers(list []Case) []*Case {
	out := make([]*Case, len(list))
	for i := range list {
		out[i] = &list[i]
	}
	return out
}

// all lists the cases in the order of the sheet.
func (h *Hanging) all() []*Case {
	var out []*Case
	if h.Raised != nil {
		out = append(out, h.Raised)
	}
	if h.Alone != nil {
		out = append(out, h.Alone)
	}
	out = append(out, &h.First)
	if h.Packed != nil {
		out = append(out, h.Packed)
	}
	for _, list := range [][]Case{h.Lost, h.LostPack, h.Set, h.Moved} {
		out = append(out, pointers(list)...)
	}
	return out
}
