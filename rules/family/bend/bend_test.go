package bend_test

import (
	"testing"

	"dryfit/rules/family/bend"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, bend.Family()) }
