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
	without := slices.Concat(outcome.NotChecked, outcome.Quiet)
	for _, key := range keysOf(without) {
		if f, found := o.unmet(key, without, all); found {
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

// keysOf are the keys that something hangs on, each once.
func keysOf(list []engine.NotChecked) (keys []string) {
	for _, n := range list {
		if !slices.Contains(keys, n.Key) {
			keys = append(keys, n.Key)
		}
	}
	return keys
}

// unmet is what one key keeps from being checked though it is required.
func (o Options) unmet(key string, list []engine.NotChecked, all []standards.Requirement) (engine.Finding, bool) {
	var ids []string
	why, by, severity := "", "", engine.Severity(0)
	for _, n := range list {
		i := slices.IndexFunc(all, func(need standards.Requirement) bool { return need.Names(n.Rule.ID) })
		if n.Key == key && i >= 0 && !n.Failed && !slices.Contains(ids, n.Rule.ID) { // a figure that failed fails the spec itself
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
