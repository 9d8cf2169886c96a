package transit_test

import (
	"testing"

	"dryfit/rules/family/transit"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, transit.Family()) }
