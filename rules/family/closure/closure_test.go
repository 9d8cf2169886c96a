package closure_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/closure"
)

func TestCases(t *testing.T) { ruletest.Run(t, closure.Family()) }
