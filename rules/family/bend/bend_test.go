package bend_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/bend"
)

func TestCases(t *testing.T) { ruletest.Run(t, bend.Family()) }
