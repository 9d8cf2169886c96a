package strap_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/strap"
)

func TestCases(t *testing.T) { ruletest.Run(t, strap.Family()) }
