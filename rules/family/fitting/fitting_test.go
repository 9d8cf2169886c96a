package fitting_test

import (
	"testing"

	"dryfit/rules/family/fitting"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, fitting.Family()) }
