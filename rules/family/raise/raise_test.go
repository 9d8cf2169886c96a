package raise_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/raise"
)

func TestCases(t *testing.T) { ruletest.Run(t, raise.Family()) }
