package require_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/require"
)

func TestCases(t *testing.T) { ruletest.Run(t, require.Family()) }
