package accept_test

import (
	"testing"

	"dryfit/rules/family/accept"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, accept.Family()) }
