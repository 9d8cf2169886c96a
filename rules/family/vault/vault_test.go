package vault_test

import (
	"testing"

	"dryfit/rules/family/vault"
	"dryfit/rules/ruletest"
)

func TestCases(t *testing.T) { ruletest.Run(t, vault.Family()) }
