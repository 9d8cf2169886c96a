// Package catalog is the list of all rules: the one place that names the
// families.
package catalog

import (
	"dryfit/rules/engine"
	"dryfit/rules/family/accept"
	"dryfit/rules/family/bend"
	"dryfit/rules/family/closure"
	"dryfit/rules/family/fitting"
	"dryfit/rules/family/grid"
	"dryfit/rules/family/install"
	"dryfit/rules/family/joint"
	"dryfit/rules/family/moisture"
	"dryfit/rules/family/raise"
	"dryfit/rules/family/require"
	"dryfit/rules/family/rib"
	"dryfit/rules/family/shop"
	"dryfit/rules/family/strap"
	"dryfit/rules/family/survey"
	"dryfit/rules/family/transit"
	"dryfit/rules/family/vault"
)

// Families lists the families in report order.
func Families() []engine.Family {
	return []engine.Family{
		grid.Family(),
		vault.Family(),
		bend.Family(),
		rib.Family(),
		strap.Family(),
		joint.Family(),
		shop.Family(),
		moisture.Family(),
		transit.Family(),
		install.Family(),
		raise.Family(),
		closure.Family(),
		survey.Family(),
		fitting.Family(),
		accept.Family(),
		require.Family(),
	}
}

// Rules lists the rules of all families.
func Rules() []*engine.Rule {
	var list []*engine.Rule
	for _, f := range Families() {
		list = append(list, f.List()...)
	}
	return list
}

// Find returns a rule and its family by the rule's id.
func Find(id string) (engine.Family, *engine.Rule, bool) {
	for _, f := range Families() {
		for _, r := range f.List() {
			if r.ID == id {
				return f, r, true
			}
		}
	}
	return engine.Family{}, nil, false
}
