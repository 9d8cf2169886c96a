package joint_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/joint"
)

func TestCases(t *testing.T) { ruletest.Run(t, joint.Family()) }
