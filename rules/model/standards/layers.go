package standards

import (
	"cmp"
	"slices"
	"strings"

	"dryfit/rules/kernel/timber"
)

// With is the built-in standards under layers, the nearest first.
func With(layers ...*Layer) *Standards {
	s := BuiltIn()
	s.limits, s.severities = map[string]Limit{}, map[string]Severity{}
	s.holds, s.materials, s.beyond = map[string]Origin{}, map[string]Origin{}, map[string][]Beyond{}
	s.shop = map[string]Setting{}
	var names []string
	for _, l := range layers {
		s.Files = append(s.Files, l.File)
		names = append(names, l.Name)
		s.Exclude = append(s.Exclude, l.Exclude...)
		s.Require = append(s.Require, l.Require...)
		s.Docs = cmp.Or(s.Docs, l.Docs)
		s.order = cmp.Or(s.order, l.order)
		s.route = cmp.Or(s.route, l.route)
		keep(s.limits, l.limits)
		keep(s.severities, l.severities)
		keep(s.holds, l.holds)
		keep(s.shop, l.shop)
		for name := range l.materials {
			if _, had := s.materials[name]; !had {
				s.beyond[name] = l.beyond[name]
			}
		}
		keep(s.materials, l.materials)
		s.trials = cmp.Or(s.trials, l.trials)
		s.sheets = append(s.sheets, l.sheets...)
		s.species = append(s.species, l.species...)
	}
	if len(names) > 0 {
		s.Name = strings.Join(names, ", ")
	}
	s.defaults = mergedDefaults(layers, s.defaults)
	return s
}

// keep adds what is not there yet, so that the nearest layer wins.
func keep[V any](into, from map[string]V) {
	for k, v := range from {
		if _, had := into[k]; !had {
			into[k] = v
		}
	}
}

// mergedDefaults puts each key's nearest default where the built-in one stood,
// and further ones at the end, in the order of the layers.
func mergedDefaults(layers []*Layer, builtIn []Default) []Default {
	out := slices.Clone(builtIn)
	set := map[string]bool{}
	for _, l := range layers {
		for _, d := range l.defaults {
			if set[d.Key] {
				continue
			}
			set[d.Key] = true
			i := slices.IndexFunc(out, func(had Default) bool { return had.Key == d.Key })
			if i < 0 {
				out = append(out, d)
				continue
			}
			d.Where, d.Is = out[i].Where, out[i].Is
			out[i] = d
		}
	}
	return out
}

// Severity is the most that a rule may say, where a file sets it.
func (s *Standards) Severity(rule string) (Severity, bool) {
	v, ok := s.severities[rule]
	return v, ok
}

// MayAcceptHold reports whether a spec may accept a hold of the rule, and where
// that is set.
func (s *Standards) MayAcceptHold(rule string) (Origin, bool) {
	o, ok := s.holds[rule]
	return o, ok
}

// MayTry reports whether a trial lifts what is not decided, and where that is
// set.
func (s *Standards) MayTry() (Origin, bool) {
	if s.trials == nil || !s.trials.May {
		return Origin{}, false
	}
	return s.trials.Origin, true
}

// Material is where a material of a firm's own is set.
func (s *Standards) Material(name string) (Origin, bool) {
	o, ok := s.materials[materialName(name)]
	return o, ok
}

// BeyondPublished lists the figures of a firm's own material that are past all that
// is published of wood, on the side where more passes.
func (s *Standards) BeyondPublished(name string) []Beyond { return s.beyond[materialName(name)] }

// materialName is a name as materials are told apart by.
func materialName(name string) string { return strings.ToLower(strings.TrimSpace(name)) }

// Species finds a species by its name: a firm's own, or a built-in one.
func (s *Standards) Species(name string) (timber.Species, error) {
	for _, own := range s.species {
		if strings.EqualFold(own.Name, strings.TrimSpace(name)) {
			return own, nil
		}
	}
	return timber.Lookup(name)
}

// SheetMaterial finds a sheet material by its name: a firm's own, or a built-in one.
func (s *Standards) SheetMaterial(name string) (timber.SheetMaterial, error) {
	for _, own := range s.sheets {
		if strings.EqualFold(own.Name, strings.TrimSpace(name)) {
			return own, nil
		}
	}
	return timber.LookupSheet(name)
}

// SpeciesNames lists the species that there are data on, a firm's own first.
func (s *Standards) SpeciesNames() []string {
	var names []string
	for _, own := range s.species {
		names = append(names, own.Name)
	}
	return append(names, timber.Names()...)
}

// SheetNames lists the sheet materials that there are data on, a firm's own
// first.
func (s *Standards) SheetNames() []string {
	var names []string
	for _, own := range s.sheets {
		names = append(names, own.Name)
	}
	return append(names, timber.SheetNames()...)
}
