package rib_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/rib"
)

func TestCases(t *testing.T) { ruletest.Run(t, rib.Family()) }
