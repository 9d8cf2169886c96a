package grid_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/grid"
)

func TestCases(t *testing.T) { ruletest.Run(t, grid.Family()) }
