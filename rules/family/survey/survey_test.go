package survey_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/survey"
)

func TestCases(t *testing.T) { ruletest.Run(t, survey.Family()) }
