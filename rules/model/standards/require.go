package standards

import (
	"path"

	"dryfit/spec"
)

// Requirement is a rule that must be checked, or a key that must be given.
type Requirement struct {
	Rule    bool
	Pattern string // of rules, strap.*; or a key
	By      string // who requires it: the file and line, or the command
	Origin  Origin
}

// Names reports whether it is of rules, and names one.
func (n Requirement) Names(id string) bool {
	ok, err := path.Match(n.Pattern, id)
	return n.Rule && ok && err == nil
}

// RequirementOf is a pattern of rules or a key, as one names it, of some rules;
// ok is whether it is either.
func RequirementOf(pattern, by string, ids []string) (n Requirement, ok bool) {
	n = Requirement{Rule: true, Pattern: pattern, By: by}
	for _, id := range ids {
		if n.Names(id) {
			return n, true
		}
	}
	_, ok = spec.ID(pattern)
	n.Rule = false
	return n, ok
}

// readRequire takes the rules and keys that must not be left out. The schema has
// seen to the keys.
func (r *reader) readRequire(ids []string) {
	check, _ := r.table("check")
	require, _ := check["require"].(map[string]any)
	for _, name := range []string{"keys", "rules"} {
		for i, pattern := range list(require[name]) {
			key := spec.Key("check", "require", name, i+1)
			n, ok := RequirementOf(pattern.(string), r.origin(key).String(), ids)
			switch {
			case !ok || n.Rule != (name == "rules"):
				r.refuse(key, "%q names no %s", pattern, map[string]string{"rules": "rule", "keys": "key of a spec"}[name])
			default:
				n.Origin = r.origin(key)
				r.layer.Require = append(r.layer.Require, n)
			}
		}
	}
}
