package strap_test

import (
	"testing"

	"dryfit/rules/family/strap"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, strap.Family()) }
