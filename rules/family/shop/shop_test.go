package shop_test

import (
	"testing"

	"dryfit/rules/engine/ruletest"
	"dryfit/rules/family/shop"
)

func TestCases(t *testing.T) { ruletest.Run(t, shop.Family()) }
