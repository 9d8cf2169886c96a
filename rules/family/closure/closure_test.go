package closure_test

import (
	"testing"

	"dryfit/rules/family/closure"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, closure.Family()) }
