package moisture_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/moisture"
)

func TestCases(t *testing.T) { ruletest.Run(t, moisture.Family()) }
