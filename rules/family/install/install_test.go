package install_test

import (
	"testing"

	"dryfit/rules/family/install"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, install.Family()) }
