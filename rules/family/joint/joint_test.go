package joint_test

import (
	"testing"

	"dryfit/rules/family/joint"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, joint.Family()) }
