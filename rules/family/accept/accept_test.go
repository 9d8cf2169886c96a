package accept_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/accept"
)

func TestCases(t *testing.T) { ruletest.Run(t, accept.Family()) }
