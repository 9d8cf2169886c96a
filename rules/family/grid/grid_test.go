package grid_test

import (
	"testing"

	"dryfit/rules/family/grid"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, grid.Family()) }
