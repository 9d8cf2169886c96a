package install_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/install"
)

func TestCases(t *testing.T) { ruletest.Run(t, install.Family()) }
