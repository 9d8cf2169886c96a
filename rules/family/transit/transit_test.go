package transit_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/transit"
)

func TestCases(t *testing.T) { ruletest.Run(t, transit.Family()) }
