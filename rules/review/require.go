package review

import (
	"slices"
	"strings"

	"dryfit/rules/engine"
	"dryfit/rules/model/standards"
	"dryfit/spec"
)

// checkedBy is the rule that speaks of what must be checked. The review applies
// it, since it looks at what the other rules could not check.
const checkedBy = "require.checked"

// required holds a spec for the keys that are required and not given, and for what
// keeps the required rules from being checked.
func required(tree map[string]any, outcome engine.Outcome, o Options) []engine.Finding {
	i := slices.IndexFunc(o.Rules, func(r *engine.Rule) bool { return r.ID == checkedBy })
	if i < 0 {
		return nil
	}
	all := slices.Concat(o.Require, o.Standards.Require)
	var out []engine.Finding
	for _, need := range all {
		if need.Rule {
			continue
		}
		if _, given := spec.Lookup(tree, need.Pattern); !given {
			out = append(out, engine.Finding{At: need.Pattern, Severity: o.holds(need), Text: need.Pattern + " is not given, and is required by " + need.By})
		}
	}
	keys, without := byKey(slices.Concat(outcome.NotChecked, outcome.Quiet))
	for _, key := range keys {
		if f, found := o.unmet(key, without[key], all); found {
			out = append(out, f)
		}
	}
	for k := range out {
		out[k].Rule = o.Rules[i]
	}
	return out
}

// holds is what the absence of what is required may say: the standards may set less
// for what standards require, and nothing less for what the command does.
func (o Options) holds(need standards.Requirement) engine.Severity {
	if set, given := o.Standards.Severity(checkedBy); given && !need.Origin.BuiltIn() {
		return engine.SeverityOf(set.Word)
	}
	return engine.Hold
}

// byKey is what hangs on each key, and the keys in their order.
func byKey(list []engine.NotChecked) (keys []string, of map[string][]engine.NotChecked) {
	of = map[string][]engine.NotChecked{}
	for _, n := range list {
		if of[n.Key] == nil {
			keys = append(keys, n.Key)
		}
		of[n.Key] = append(of[n.Key], n)
	}
	return keys, of
}

// unmet is what one key keeps from being checked though it is required, of what hangs on
// it.
func (o Options) unmet(key string, list []engine.NotChecked, all []standards.Requirement) (engine.Finding, bool) {
	var ids []string
	why, by, severity := "", "", engine.Severity(0)
	for _, n := range list {
		i := slices.IndexFunc(all, func(need standards.Requirement) bool { return need.Names(n.Rule.ID) })
		if i >= 0 && !n.Failed && !slices.Contains(ids, n.Rule.ID) { // a figure that failed fails the spec itself
			ids, why, by, severity = append(ids, n.Rule.ID), n.Why, all[i].By, max(severity, o.holds(all[i]))
		}
	}
	if len(ids) == 0 {
		return engine.Finding{}, false
	}
	text := key + " is not given"
	if why != "" {
		text = why
	}
	are := ", which is required by " + by + ", is not checked"
	if len(ids) > 1 {
		are = ", which are required by " + by + ", are not checked"
	}
	return engine.Finding{At: key, Severity: severity, Text: text + ", so that " + strings.Join(ids, ", ") + are}, true
}
