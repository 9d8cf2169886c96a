package moisture_test

import (
	"testing"

	"dryfit/rules/family/moisture"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, moisture.Family()) }
