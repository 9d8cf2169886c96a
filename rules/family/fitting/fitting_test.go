package fitting_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/fitting"
)

func TestCases(t *testing.T) { ruletest.Run(t, fitting.Family()) }
