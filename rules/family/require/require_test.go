package require_test

import (
	"testing"

	"dryfit/rules/family/require"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, require.Family()) }
