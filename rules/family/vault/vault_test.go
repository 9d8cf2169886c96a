package vault_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/vault"
)

func TestCases(t *testing.T) { ruletest.Run(t, vault.Family()) }
