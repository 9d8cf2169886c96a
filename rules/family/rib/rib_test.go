package rib_test

import (
	"testing"

	"dryfit/rules/family/rib"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, rib.Family()) }
